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
  const of = {register: async () => registration, getRegistration: async () => registration, controller}
  return {of: of as unknown as ServiceWorkerContainer, installs}
}

it("tells of a newer program that was kept while this one runs", async () => {
  const {of, installs} = container({controller: {}})
  const onNewer = vi.fn<() => void>()
  await keepProgram(address, onNewer, of)
  expect(onNewer).not.toHaveBeenCalled()
  installs()
  expect(onNewer).toHaveBeenCalledOnce()
})

it("tells of one that waits since an earlier start", async () => {
  const onNewer = vi.fn<() => void>()
  await keepProgram(address, onNewer, container({waiting: {}, controller: {}}).of)
  expect(onNewer).toHaveBeenCalledOnce()
})

it("does not call the first one that is kept newer", async () => {
  const {of, installs} = container()
  const onNewer = vi.fn<() => void>()
  await keepProgram(address, onNewer, of)
  installs()
  expect(onNewer).not.toHaveBeenCalled()
})

it.each([
  ["has none of this", undefined],
  ["refuses", {register: () => Promise.reject(new DOMException("no", "SecurityError"))}],
])("does nothing where the browser %s", async (_, of) => {
  const onNewer = vi.fn<() => void>()
  await keepProgram(address, onNewer, of as ServiceWorkerContainer | undefined)
  expect(onNewer).not.toHaveBeenCalled()
})
