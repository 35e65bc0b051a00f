import {IDBFactory} from "fake-indexeddb"
import "fake-indexeddb/auto"
import {afterEach, beforeEach, expect, it, vi} from "vitest"
import {openVersions} from "../../src/storage/versions"
import {farm} from "./farm"

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory()
})
afterEach(() => vi.restoreAllMocks())

const version = (name: string, workbook = "Hollow Brook") => ({
  workbook,
  name,
  by: "RT",
  reason: "first talk",
  at: new Date(2026, 4, 25, 14, 2),
})
const own = (name: string, workbook?: string) => ({...version(name, workbook), byItself: true as const})

it("gives back what was kept, the newest first, and drops what is dropped", async () => {
  const versions = openVersions()
  expect(await versions.keep(version("For the bank"), farm("Hollow Brook", 1))).toBeNull()
  expect(await versions.keep(own("before"), farm("Hollow Brook", 2))).toBeNull()
  const [newer, older] = await openVersions().of("Hollow Brook")
  expect([newer, older]).toEqual([
    {...own("before"), id: newer!.id},
    {...version("For the bank"), id: older!.id},
  ])
  expect(await versions.take(older!.id)).toEqual({document: farm("Hollow Brook", 1)})
  expect(await versions.drop(older!.id)).toBeNull()
  expect(await versions.take(older!.id)).toEqual({refused: "This version is gone or damaged"})
  expect(await versions.of("Another")).toEqual([])
})

it("tells when a file copy was last kept, whatever was kept after it", async () => {
  const versions = openVersions()
  expect(await versions.lastCopy("Hollow Brook")).toBeNull()
  const at = (day: number) => new Date(2026, 4, day, 8, 0)
  const copy = (day: number) => ({...own("copy"), copy: `c${day}`, at: at(day)})
  await versions.keep(copy(3), farm("Hollow Brook", 1))
  await versions.keep(copy(11), farm("Hollow Brook", 2))
  await versions.keep({...version("For the bank"), at: at(20)}, farm("Hollow Brook", 3))
  await versions.keep({...copy(25), workbook: "Sand Piece"}, farm("Sand Piece", 1))
  expect(await versions.lastCopy("Hollow Brook")).toEqual(at(11))
})

it("lets go of the oldest that it kept by itself, and of none that a person kept or another workbook has", async () => {
  const versions = openVersions()
  await versions.keep(version("For the bank"), farm("Hollow Brook", 0))
  await versions.keep(own("copy", "Sand Piece"), farm("Sand Piece", 0))
  const most = versions.keptByItself
  for (let n = 1; n <= most + 2; n++) await versions.keep(own(`copy ${n}`), farm("Hollow Brook", n))
  const names = (await versions.of("Hollow Brook")).map(({name}) => name)
  expect(names).toHaveLength(most + 1)
  expect(names.slice(-2)).toEqual(["copy 3", "For the bank"])
  expect(names[0]).toBe(`copy ${most + 2}`)
  for (let n = 1; n <= most + 2; n++) await versions.keep(version(`mine ${n}`), farm("Hollow Brook", n))
  expect(await versions.of("Hollow Brook")).toHaveLength(2 * most + 3)
  expect(await versions.of("Sand Piece")).toHaveLength(1)
})

it("says in a sentence why a version cannot be kept or dropped", async () => {
  const versions = openVersions()
  vi.spyOn(IDBObjectStore.prototype, "add").mockImplementation(() => {
    throw new DOMException("", "QuotaExceededError")
  })
  expect(await versions.keep(version("For the bank"), farm("Hollow Brook", 1))).toEqual({
    refused: "The version was not kept: storage is full",
  })
  // What failed holds the store no longer: else it could not be brought up to a newer form in another tab.
  const isBlocked = await new Promise((answer) => {
    const asked = globalThis.indexedDB.deleteDatabase("fernledger-versions")
    asked.addEventListener("blocked", () => answer(true))
    asked.addEventListener("success", () => answer(false))
  })
  expect(isBlocked).toBe(false)
  vi.spyOn(globalThis.indexedDB, "open").mockImplementation(() => {
    throw new DOMException("", "SecurityError")
  })
  expect(await versions.drop(1)).toEqual({
    refused: "The version was not dropped: this browser does not allow this page to store anything",
  })
  expect(await versions.of("Hollow Brook")).toEqual([])
})
