import {expect, it, vi} from "vitest"
import type {KeptState} from "../../src/storage/deviceStore"
import {createLead, savedByLeader, type Place} from "../../src/storage/lead"
import {farm} from "./farm"

const at = (minute: number) => new Date(2026, 4, 25, 14, minute)

/** Node has these since version 24; here is what the tests use of them (Web Locks, W3C). */
function browserLocks() {
  const queues = new Map<string, (() => void)[]>()
  const next = (name: string) => {
    const [first] = queues.get(name)!
    first?.()
  }
  const request = (name: string, options: LockOptions, act: (lock: object | null) => unknown) => {
    const queue = queues.get(name) ?? []
    queues.set(name, queue)
    if (options.ifAvailable && queue.length > 0) return Promise.resolve(act(null))
    return new Promise((finish, fail) => {
      const leave = () => {
        queue.splice(queue.indexOf(begin), 1)
        next(name)
      }
      let hasBegun = false
      const begin = () => {
        if (hasBegun) return
        hasBegun = true
        void Promise.resolve(act({name})).then((value) => {
          leave()
          finish(value)
        })
      }
      options.signal?.addEventListener("abort", () => {
        if (hasBegun) return
        leave()
        fail(new DOMException("given up", "AbortError"))
      })
      queue.push(begin)
      if (queue.length === 1) begin()
    })
  }
  return {request} as unknown as Pick<LockManager, "request">
}

/** Tabs of one browser: they share its locks and what is kept on the device. */
function browser() {
  const locks = browserLocks()
  const kept: KeptState[] = []
  const device = {earlier: async () => [...kept].reverse()}
  return {
    keep: (name: string, savedAt: Date) => void kept.push({id: kept.length + 1, name, savedAt}),
    forget: () => void kept.splice(0),
    kept: device.earlier,
    tab() {
      const told: Place[] = []
      return {lead: createLead(device, (place) => told.push(place), locks), told}
    },
  }
}

it("lets the first tab lead and the second follow", async () => {
  const {tab} = browser()
  const [first, second] = [tab(), tab()]
  await first.lead.take("Hollow Brook", [])
  await second.lead.take("Hollow Brook", [])
  expect([first.told, second.told]).toEqual([["leads"], ["follows"]])
})

it("lets both lead in workbooks of different names", async () => {
  const {tab} = browser()
  const [first, second] = [tab(), tab()]
  await first.lead.take("Hollow Brook", [])
  await second.lead.take("Blank", [])
  expect(second.told).toEqual(["leads"])
})

it("hands the lead on when the first goes to another workbook and saved nothing", async () => {
  const {keep, kept, tab} = browser()
  keep("Hollow Brook", at(1))
  const [first, second] = [tab(), tab()]
  await first.lead.take("Hollow Brook", kept())
  await second.lead.take("Hollow Brook", kept())
  await first.lead.take("Blank", kept())
  await vi.waitUntil(() => second.told.length === 2)
  expect(second.told).toEqual(["follows", "leads"])
})

it("hands the lead on where what was kept is gone: there is nothing that the next could write over", async () => {
  const {keep, kept, forget, tab} = browser()
  keep("Hollow Brook", at(1))
  const [first, second] = [tab(), tab()]
  await first.lead.take("Hollow Brook", kept())
  await second.lead.take("Hollow Brook", kept())
  forget()
  await first.lead.take("Blank", kept())
  await vi.waitUntil(() => second.told.length === 2)
  expect(second.told).toEqual(["follows", "leads"])
})

it.each([
  ["", at(2)],
  [", with the clock put back meanwhile too", at(0)],
])("leaves the second behind when the first saved something before it went%s", async (_, then) => {
  const {keep, kept, tab} = browser()
  keep("Hollow Brook", at(1))
  const [first, second] = [tab(), tab()]
  await first.lead.take("Hollow Brook", kept())
  await second.lead.take("Hollow Brook", kept())
  keep("Hollow Brook", then)
  keep("Blank", at(3))
  await first.lead.take("Blank", kept())
  await vi.waitUntil(() => second.told.length === 2)
  expect(second.told).toEqual(["follows", "behind"])
})

it("does not come back to a workbook that it let go of while it waited", async () => {
  const {tab} = browser()
  const [first, second, third] = [tab(), tab(), tab()]
  await first.lead.take("Hollow Brook", [])
  await second.lead.take("Hollow Brook", [])
  await second.lead.take("Blank", [])
  await third.lead.take("Hollow Brook", [])
  await first.lead.take("Another", [])
  await vi.waitUntil(() => third.told.length === 2)
  expect(third.told).toEqual(["follows", "leads"])
  expect(second.told).toEqual(["follows", "leads"])
})

it.each([
  ["has no locks", undefined],
  ["allows none", {request: () => Promise.reject(new DOMException("no", "SecurityError"))}],
])("leads where the browser %s", async (_, locks) => {
  const lead = createLead(
    {earlier: async () => []},
    () => {},
    locks as Pick<LockManager, "request"> | undefined,
  )
  await lead.take("Hollow Brook", [])
  expect(lead.place()).toBe("leads")
})

it("saves what the leader has, and says why it does not save for the others", async () => {
  const save = vi.fn<() => Promise<null>>(async () => null)
  const saveAs = (place: Place) =>
    savedByLeader({save}, {settled: async () => place}).save(farm("Hollow Brook", 1), at(1))
  expect(await saveAs("follows")).toMatchObject({refused: expect.stringMatching(/^Another tab shows this/)})
  expect(await saveAs("behind")).toMatchObject({refused: expect.stringMatching(/^Another tab has changed/)})
  expect(save).not.toHaveBeenCalled()
  expect(await saveAs("leads")).toBeNull()
  expect(save).toHaveBeenCalledOnce()
})

it("does not save into a workbook before it is known who leads there", async () => {
  const {tab} = browser()
  const [first, second] = [tab(), tab()]
  await first.lead.take("Hollow Brook", [])
  await second.lead.take("Blank", [])
  const save = vi.fn<() => Promise<null>>(async () => null)
  void second.lead.take("Hollow Brook", [])
  await savedByLeader({save}, second.lead).save(farm("Hollow Brook", 1), at(1))
  expect(save).not.toHaveBeenCalled()
})
