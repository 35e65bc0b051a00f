import {afterEach, describe, expect, it, vi} from "vitest"
import {copyName, keepFileCopy, openFileCopy, openForeign, sendFile} from "../../src/storage/fileCopy"
import {readFile} from "../../src/workbook/file"
import {farm} from "./farm"

afterEach(() => vi.unstubAllGlobals())

describe("copyName", () => {
  it.each([
    ["Hollow Brook Farm", "hollow-brook-farm-2026-05-05.json"],
    ["Müller's  field / 2", "müller-s-field-2-2026-05-05.json"],
    ["***", "workbook-2026-05-05.json"],
  ])("names a copy of %s", (name, expected) => {
    expect(copyName(name, new Date(2026, 4, 5, 23, 59))).toBe(expected)
  })
})

/** What a browser's dialogs give: one file that can be written and read. */
function stubPickers() {
  let text = ""
  const file = {
    name: "chosen.json",
    createWritable: async () => ({write: async (more: string) => void (text += more), close: async () => {}}),
    getFile: async () => new File([text], "chosen.json"),
  }
  vi.stubGlobal("showSaveFilePicker", async () => file)
  vi.stubGlobal("showOpenFilePicker", async () => [file])
}

describe("keepFileCopy and openFileCopy", () => {
  it("write a workbook that reads back the same", async () => {
    stubPickers()
    const workbook = farm("Hollow Brook", "=1+1")
    expect(await keepFileCopy(workbook, "hollow-brook.json")).toEqual({name: "chosen.json"})
    const opened = (await openFileCopy()) as {text: string; name: string}
    expect(opened.name).toBe("chosen.json")
    expect(readFile(opened.text)).toEqual({document: workbook})
  })

  it("give null when the person changes their mind", async () => {
    const cancel = () => Promise.reject(new DOMException("The user aborted a request.", "AbortError"))
    vi.stubGlobal("showSaveFilePicker", cancel)
    vi.stubGlobal("showOpenFilePicker", cancel)
    expect(await keepFileCopy(farm("Hollow Brook", 1), "hollow-brook.json")).toBeNull()
    expect(await openFileCopy()).toBeNull()
  })

  it("say why a file cannot be written or read", async () => {
    const fail = () => Promise.reject(new DOMException("The disk is gone.", "NotReadableError"))
    vi.stubGlobal("showSaveFilePicker", fail)
    vi.stubGlobal("showOpenFilePicker", fail)
    expect(await keepFileCopy(farm("Hollow Brook", 1), "a.json")).toEqual({
      refused: "The file could not be written: The disk is gone",
    })
    expect(await openFileCopy()).toEqual({refused: "The file could not be read: The disk is gone"})
  })
})

describe("sendFile and openForeign", () => {
  it("write bytes that read back the same", async () => {
    let kept: Uint8Array = new Uint8Array()
    const file = {
      name: "a.xlsx",
      createWritable: async () => ({
        write: async (data: Uint8Array) => void (kept = data),
        close: async () => {},
      }),
      getFile: async () => new File([kept as BlobPart], "a.xlsx"),
    }
    const asked: unknown[] = []
    vi.stubGlobal("showSaveFilePicker", async (options: unknown) => (asked.push(options), file))
    vi.stubGlobal("showOpenFilePicker", async () => [file])
    expect(await sendFile(Uint8Array.of(80, 75, 0, 255), "a.xlsx")).toEqual({name: "a.xlsx"})
    expect(JSON.stringify(asked)).toContain("spreadsheetml.sheet")
    expect(await openForeign(100)).toEqual({name: "a.xlsx", bytes: Uint8Array.of(80, 75, 0, 255)})
  })

  it("refuse a file that is too large before it is read", async () => {
    const huge = {name: "a.xlsx", size: 20_000_001, arrayBuffer: () => Promise.reject(new Error("read"))}
    vi.stubGlobal("showOpenFilePicker", async () => [{getFile: async () => huge}])
    expect(await openForeign(20_000_000)).toEqual({
      refused: "The file could not be read: it is 20.1 MB; the most is 20 MB",
    })
  })
})
