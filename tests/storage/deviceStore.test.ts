import {IDBFactory} from "fake-indexeddb"
import "fake-indexeddb/auto"
import {openDB} from "idb"
import {afterEach, beforeEach, describe, expect, it, vi} from "vitest"
import {isRefused, openDevice, type KeptState, type Refused} from "../../src/storage/deviceStore"
import {farm} from "./farm"

const minute = (n: number) => new Date(2026, 4, 25, 9, n)
const day = (n: number) => new Date(2026, 4, n, 12)

/** Puts a record on the device behind the store's back. */
async function damage(change: (states: {add(record: unknown): Promise<unknown>}) => Promise<unknown>) {
  const database = await openDB("fernledger")
  await change({add: (record) => database.add("states", record)})
  database.close()
}

function kept(result: readonly KeptState[] | Refused): readonly KeptState[] {
  if (isRefused(result)) throw new Error(result.refused)
  return result
}

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory()
})
afterEach(() => {
  vi.restoreAllMocks()
  vi.unstubAllGlobals()
})

describe("openDevice", () => {
  it("gives back the last saved state, to a page opened afresh too", async () => {
    const device = await openDevice()
    expect(await device.latest()).toBeNull()
    expect(await device.save(farm("Hollow Brook", 1), minute(1))).toBeNull()
    expect(await device.save(farm("Hollow Brook", 2), minute(2))).toBeNull()
    const found = {document: farm("Hollow Brook", 2), savedAt: minute(2), notice: null}
    expect(await device.latest()).toEqual(found)
    expect(await (await openDevice()).latest()).toEqual(found)
  })

  it("lists what is kept, the newest first, even when the clock was put back", async () => {
    const device = await openDevice()
    await device.save(farm("Hollow Brook", 1), minute(5))
    await device.save(farm("Sand Piece", 2), minute(3))
    await device.save(farm("Hollow Brook", 3), minute(4))
    const list = kept(await device.earlier())
    expect(list.map(({name, savedAt}) => [name, savedAt.getMinutes()])).toEqual([
      ["Hollow Brook", 4],
      ["Sand Piece", 3],
      ["Hollow Brook", 5],
    ])
    expect(await device.take(list[1]!.id)).toEqual({document: farm("Sand Piece", 2)})
    expect(await device.take(99)).toEqual({refused: "This state is no longer kept on this device"})
  })

  it("reads what was kept before states were kept as text", async () => {
    const older = await openDB("fernledger", 1, {
      upgrade(database) {
        const states = database.createObjectStore("states", {autoIncrement: true})
        states.createIndex("by workbook", ["name", "savedAt"])
      },
    })
    await older.add("states", {name: "Sand Piece", savedAt: minute(1), document: farm("Sand Piece", 1)})
    older.close()
    const device = await openDevice()
    expect(await device.latest()).toMatchObject({document: farm("Sand Piece", 1), savedAt: minute(1)})
    await device.save(farm("Sand Piece", 2), minute(2))
    const list = kept(await device.earlier())
    expect(await device.take(list[0]!.id)).toEqual({document: farm("Sand Piece", 2)})
    expect(await device.take(list[1]!.id)).toEqual({document: farm("Sand Piece", 1)})
  })

  it("passes over a damaged newest state and says so", async () => {
    const device = await openDevice()
    await device.save(farm("Hollow Brook", 1), minute(7))
    await damage((states) =>
      states.add({name: "Hollow Brook", savedAt: minute(8), document: {name: "Hollow Brook"}}),
    )
    expect(await device.latest()).toEqual({
      document: farm("Hollow Brook", 1),
      savedAt: minute(7),
      notice:
        "The newest state on this device was damaged and passed over: this is the one of 2026-05-25 09:07",
    })
    await damage((states) =>
      states.add({name: "Hollow Brook", savedAt: minute(9), text: '{"fernledger": 1, "na'}),
    )
    const found = await device.latest()
    expect(found).toMatchObject({
      notice: expect.stringMatching(/^The 2 newest states on this device were damaged/),
    })
    const damagedOne = kept(await device.earlier())[0]!
    expect(await device.take(damagedOne.id)).toEqual({refused: "This state is damaged and cannot be read"})
  })

  it("says so when everything that was kept is damaged", async () => {
    const device = await openDevice()
    await damage((states) => states.add({name: "Hollow Brook", savedAt: minute(1), document: null}))
    await damage((states) => states.add({document: "torn"}))
    expect(await device.latest()).toEqual({
      refused: "What was kept on this device is damaged and cannot be read",
    })
  })

  it("keeps the 20 newest states of a day's work", async () => {
    const device = await openDevice()
    for (let n = 1; n <= 25; n++) await device.save(farm("Hollow Brook", n), minute(n))
    const minutes = kept(await device.earlier()).map(({savedAt}) => savedAt.getMinutes())
    expect(minutes).toEqual(Array.from({length: 20}, (_, i) => 25 - i))
  })

  it("keeps the last state of each of 14 days besides", async () => {
    const device = await openDevice()
    // Twice a day from 1 to 20 May, then 20 times on 21 May, which fill the places of the newest.
    for (let n = 1; n <= 20; n++) {
      await device.save(farm("Hollow Brook", n), new Date(2026, 4, n, 8))
      await device.save(farm("Hollow Brook", n + 0.5), day(n))
    }
    for (let n = 0; n < 20; n++) await device.save(farm("Hollow Brook", n), new Date(2026, 4, 21, 9, n))
    const days = kept(await device.earlier()).map(({savedAt}) => savedAt.getDate())
    // Less than 14 times 24 hours before 21 May, 9:19, is from 7 May, 12:00; each of these days once.
    expect(days).toEqual([...Array(20).fill(21), ...Array.from({length: 14}, (_, i) => 20 - i)])
    const hours = kept(await device.earlier())
      .slice(20)
      .map(({savedAt}) => savedAt.getHours())
    expect(new Set(hours)).toEqual(new Set([12]))
  })

  it("loses nothing that was open when another workbook is opened and worked on for weeks", async () => {
    const device = await openDevice()
    await device.save(farm("Sand Piece", "precious"), new Date(2026, 2, 1))
    for (let n = 1; n <= 25; n++) await device.save(farm("Hollow Brook", n), day(n))
    const old = kept(await device.earlier()).at(-1)!
    expect(old.name).toBe("Sand Piece")
    expect(await device.take(old.id)).toEqual({document: farm("Sand Piece", "precious")})
    expect(await device.latest()).toMatchObject({document: farm("Hollow Brook", 25)})
  })

  it("says so where the browser offers no storage", async () => {
    vi.stubGlobal("indexedDB", undefined)
    const device = await openDevice()
    const refused = {refused: "This browser offers no storage"}
    expect(await device.save(farm("Hollow Brook", 1), minute(1))).toEqual(refused)
    expect(await device.latest()).toEqual(refused)
    expect(await device.earlier()).toEqual(refused)
    expect(await device.take(1)).toEqual(refused)
  })

  it("says so where the browser blocks the storage, and when it is full", async () => {
    vi.spyOn(IDBFactory.prototype, "open").mockImplementationOnce(() => {
      throw new DOMException("denied", "SecurityError")
    })
    const blocked = await openDevice()
    expect(await blocked.latest(), "once it is allowed").toBeNull()
    vi.spyOn(IDBFactory.prototype, "open").mockImplementation(() => {
      throw new DOMException("denied", "SecurityError")
    })
    const refused = {refused: "This browser does not allow this page to store anything"}
    expect(await (await openDevice()).save(farm("Hollow Brook", 1), minute(1))).toEqual(refused)
    vi.restoreAllMocks()

    const device = await openDevice()
    await device.save(farm("Hollow Brook", 1), minute(1))
    vi.spyOn(IDBObjectStore.prototype, "add").mockImplementationOnce(() => {
      throw new DOMException("quota", "QuotaExceededError")
    })
    expect(await device.save(farm("Hollow Brook", 2), minute(2))).toEqual({refused: "Storage is full"})
    expect(await device.latest(), "what was there is still there").toMatchObject({savedAt: minute(1)})
    expect(await device.save(farm("Hollow Brook", 3), minute(3)), "and there is room again").toBeNull()
  })

  it("makes way for a newer version of the program and says so", async () => {
    const device = await openDevice()
    await device.save(farm("Hollow Brook", 1), minute(1))
    const newer = await openDB("fernledger", 3) // would wait for ever if the device held on
    expect(await device.save(farm("Hollow Brook", 2), minute(2))).toEqual({
      refused: "A newer version of the program is open in another tab: load this page again",
    })
    newer.close()
  })
})
