import {IDBFactory} from "fake-indexeddb"
import "fake-indexeddb/auto"
import {afterEach, beforeEach, describe, expect, it, vi} from "vitest"
import {createAutosave, type SavingState} from "../../src/storage/autosave"
import {openDevice, type Device} from "../../src/storage/deviceStore"
import {farm} from "./farm"

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory()
})
afterEach(() => vi.unstubAllGlobals())

/** The device behind a gate: each write waits until the test lets it through. */
function slow(device: Device) {
  const gates: (() => void)[] = []
  let underWay = 0
  let mostUnderWay = 0
  const save: Device["save"] = async (document, at) => {
    mostUnderWay = Math.max(mostUnderWay, ++underWay)
    await new Promise<void>((open) => gates.push(open))
    const result = await device.save(document, at)
    underWay--
    return result
  }
  const letThrough = async () => {
    await vi.waitUntil(() => gates.length > 0)
    gates.shift()!()
  }
  return {save, letThrough, mostUnderWay: () => mostUnderWay}
}

const kinds = (states: readonly SavingState[]) => states.map(({kind}) => kind)

describe("createAutosave", () => {
  it("saves a change at once and says when", async () => {
    const device = await openDevice()
    const states: SavingState[] = []
    const autosave = createAutosave(device, (state) => states.push(state))
    autosave.changed(farm("Hollow Brook", 1))
    expect(states).toEqual([{kind: "saving"}])
    await autosave.flush()
    expect(kinds(states)).toEqual(["saving", "saved"])
    const found = await device.latest()
    expect(found).toMatchObject({document: farm("Hollow Brook", 1), savedAt: (states[1] as {at: Date}).at})
  })

  it("writes the newest of the changes that came during a slow write, one write at a time", async () => {
    const device = await openDevice()
    const {save, letThrough, mostUnderWay} = slow(device)
    const states: SavingState[] = []
    const autosave = createAutosave({save}, (state) => states.push(state))
    for (let n = 1; n <= 5; n++) autosave.changed(farm("Hollow Brook", n))
    const flushed = autosave.flush()
    await letThrough()
    await letThrough()
    await flushed
    const kept = (await device.earlier()) as readonly {id: number}[]
    const documents = await Promise.all(kept.map(({id}) => device.take(id)))
    expect(documents).toEqual([{document: farm("Hollow Brook", 5)}, {document: farm("Hollow Brook", 1)}])
    expect(mostUnderWay()).toBe(1)
    expect(kinds(states)).toEqual(["saving", "saving", "saved"])
  })

  it("takes a change that comes just as a write ends", async () => {
    const device = await openDevice()
    const autosave = createAutosave(device, ({kind}) => {
      if (kind === "saved" && !hasFollowed) void Promise.resolve().then(follow)
    })
    let hasFollowed = false
    const follow = () => {
      hasFollowed = true
      autosave.changed(farm("Hollow Brook", 2))
    }
    autosave.changed(farm("Hollow Brook", 1))
    await vi.waitUntil(() => hasFollowed)
    await autosave.flush()
    expect(await device.latest()).toMatchObject({document: farm("Hollow Brook", 2)})
  })

  it("says why nothing is saved, and saves once it can", async () => {
    const factory = globalThis.indexedDB
    vi.stubGlobal("indexedDB", undefined)
    const device = await openDevice()
    const states: SavingState[] = []
    const autosave = createAutosave(device, (state) => states.push(state))
    autosave.changed(farm("Hollow Brook", 1))
    await vi.waitUntil(() => states.length === 2)
    expect(states[1]).toEqual({kind: "not saved", reason: "this browser offers no storage"})
    vi.stubGlobal("indexedDB", factory)
    await autosave.flush()
    expect(states.at(-1)).toMatchObject({kind: "saved"})
    expect(await device.latest()).toMatchObject({document: farm("Hollow Brook", 1)})
    const before = states.length
    await autosave.flush()
    expect(states.length, "nothing is left to write").toBe(before)
  })

  it.each([
    ["granted", {storage: {persist: async () => true}}, true],
    ["denied", {storage: {persist: async () => false}}, false],
    ["unknown", {}, null],
    ["failing", {storage: {persist: () => Promise.reject(new Error("no"))}}, null],
  ])("asks once for lasting storage after the first change: %s", async (_, navigator, answer) => {
    vi.stubGlobal("navigator", navigator)
    const answers: (boolean | null)[] = []
    const autosave = createAutosave(
      await openDevice(),
      () => {},
      (isLasting) => answers.push(isLasting),
    )
    await autosave.flush()
    expect(answers).toEqual([])
    autosave.changed(farm("Hollow Brook", 1))
    autosave.changed(farm("Hollow Brook", 2))
    await autosave.flush()
    expect(answers).toEqual([answer])
  })
})
