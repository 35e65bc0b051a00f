import {IDBFactory} from "fake-indexeddb"
import "fake-indexeddb/auto"
import {afterEach, expect, it, vi} from "vitest"
import {createAutosave} from "../../src/storage/autosave"
import {openDevice} from "../../src/storage/deviceStore"
import {seeded} from "../workbook/documents"
import {farm} from "./farm"

const KILLS = 300
afterEach(() => vi.restoreAllMocks())

const pause = (ms: number) => new Promise((done) => setTimeout(done, ms))

/** Lets everything that is under way on the device break off, as when its tab is killed. */
function killer() {
  const open: IDBTransaction[] = []
  const begin = IDBDatabase.prototype.transaction
  vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementation(function (this: IDBDatabase, ...given) {
    const begun = begin.apply(this, given)
    open.push(begun)
    return begun
  })
  return () => {
    let broken = 0
    for (const one of open.splice(0))
      try {
        one.abort()
        broken++
      } catch {
        // It had ended already.
      }
    return broken
  }
}

it(`loses the last act at most, and never the workbook, in ${KILLS} kills at random moments`, async () => {
  globalThis.indexedDB = new IDBFactory()
  const kill = killer()
  const random = seeded(11)
  let [acts, lost, broken] = [0, 0, 0]
  await (await openDevice()).save(farm("Hollow Brook", acts), new Date(2026, 4, 25))
  for (let i = 0; i < KILLS; i++) {
    const tab = createAutosave(await openDevice(), () => {})
    for (let n = Math.ceil(random() * 3); n > 0; n--) {
      await tab.flush() // a person acts more slowly than a write takes
      tab.changed(farm("Hollow Brook", ++acts))
    }
    await pause(random() * 4)
    broken += kill()
    const found = await (await openDevice()).latest()
    const read = found && "document" in found ? found : null
    expect(read?.notice, `kill ${i}`).toBeNull()
    const last = read!.document
    if (JSON.stringify(last) !== JSON.stringify(farm("Hollow Brook", acts))) {
      expect(last, `kill ${i}`).toEqual(farm("Hollow Brook", acts - 1))
      lost++
      acts-- // what is on the device is where the next tab goes on
    }
  }
  // Some came in the middle of a write, and some after it.
  expect(broken).toBeGreaterThan(KILLS / 10)
  expect(lost).toBeGreaterThan(KILLS / 20)
  expect(lost).toBeLessThan(KILLS)
})
