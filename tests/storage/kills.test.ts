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

/** Lets nothing more begin on the device for the tabs that are open, as when they are killed. */
function killer() {
  const [open, dead] = [new Set<IDBDatabase>(), new WeakSet<IDBDatabase>()]
  const begin = IDBDatabase.prototype.transaction
  vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementation(function (this: IDBDatabase, ...given) {
    if (dead.has(this)) throw new DOMException("The tab was killed", "InvalidStateError")
    open.add(this)
    return begin.apply(this, given)
  })
  return () => {
    for (const one of open) dead.add(one)
    open.clear()
  }
}

it(`loses the last act at most, and never the workbook, in ${KILLS} kills at random moments`, async () => {
  globalThis.indexedDB = new IDBFactory()
  const kill = killer()
  const random = seeded(11)
  let [acts, lost] = [0, 0]
  await (await openDevice()).save(farm("Hollow Brook", acts), new Date(2026, 4, 25))
  for (let i = 0; i < KILLS; i++) {
    const tab = createAutosave(await openDevice(), () => {})
    for (let n = Math.ceil(random() * 3); n > 0; n--) {
      await tab.flush() // a person acts more slowly than a write takes
      tab.changed(farm("Hollow Brook", ++acts))
    }
    // A state is handed over whole, in one step: a kill comes before that or after it.
    if (random() < 0.5) await pause(random() * 4)
    kill()
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
  expect(lost).toBeGreaterThan(KILLS / 20)
  expect(lost).toBeLessThan(KILLS)
})
