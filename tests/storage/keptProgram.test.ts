import {expect, it, vi} from "vitest"
import {keepProgram} from "../../src/storage/keptProgram"

const address = new URL("https://farm.example/planner/service-worker.js")

function container({waiting = null as object | null, controller = null as object | null} = {}) {
  const registration = Object.assign(new EventTarget(), {waiting, installing: null as EventTarget | null})
  const installs = () => {
    const coming = Object.assign(new EventTarget(), {state: "installed"})
    registration.installing = coming
    registration.dispatchEvent(new Event("updatefound"))
    coming.dispatchEvent(new Event("statechange"))
  }
  const of = {
    register: async () => registration,
    getRegistration: async () => registration,
    controller,
    ready: Promise.resolve(registration),
  }
  return {of: of as unknown as ServiceWorkerContainer, installs}
}

const listener = () => ({onKept: vi.fn<() => void>(), onNewer: vi.fn<() => void>()})

it("tells of a newer program that was kept while this one runs", async () => {
  const {of, installs} = container({controller: {}})
  const told = listener()
  await keepProgram(address, told, of)
  expect(told.onNewer).not.toHaveBeenCalled()
  installs()
  expect(told.onNewer).toHaveBeenCalledOnce()
  expect(told.onKept).not.toHaveBeenCalled()
})

it("tells of one that waits since an earlier start", async () => {
  const told = listener()
  await keepProgram(address, told, container({waiting: {}, controller: {}}).of)
  expect(told.onNewer).toHaveBeenCalledOnce()
})

it("tells that the first one is kept, and does not call it newer", async () => {
  const {of, installs} = container()
  const told = listener()
  await keepProgram(address, told, of)
  installs()
  expect(told.onKept).toHaveBeenCalledOnce()
  expect(told.onNewer).not.toHaveBeenCalled()
})

it.each([
  ["has none of this", undefined],
  [
    "refuses",
    {
      register: () => Promise.reject(new DOMException("no", "SecurityError")),
      ready: new Promise(() => {}),
    },
  ],
])("does nothing where the browser %s", async (_, of) => {
  const told = listener()
  await keepProgram(address, told, of as ServiceWorkerContainer | undefined)
  expect(told.onKept).not.toHaveBeenCalled()
  expect(told.onNewer).not.toHaveBeenCalled()
})
