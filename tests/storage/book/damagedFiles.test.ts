import {strToU8, unzipSync, zipSync} from "fflate"
import {describe, expect, it} from "vitest"
import {bringingOf, matchesOf, readCsv} from "../../../src/editor/csvIn"
import {readWeather} from "../../../src/editor/weatherFile"
import {readBook} from "../../../src/storage/book/bookFile"
import {fullCopy} from "../../../src/storage/book/bookOf"
import {writeOds} from "../../../src/storage/book/odsOut"
import {writeXlsx} from "../../../src/storage/book/xlsxOut"
import {handedIn, pageWith} from "../../../src/handed"
import {createStore} from "../../../src/editor/store"
import {documentSchema, type Document} from "../../../src/workbook/document"
import {readFile, writeFile} from "../../../src/workbook/file"
import {Workbook} from "../../../src/workbook/workbook"
import {column, documentOf, seeded, sheet} from "../../workbook/documents"
import {knows} from "./parts"

const note = {text: "Measured again", by: "AB", written: "2026-05-01T10:00:00.000Z"}
const farm: Document = documentOf(
  sheet(
    "Plan",
    [
      column("Planting", {format: "text"}),
      column("Day", {format: "date", part: "record day"}),
      column("Yield", {unit: "kg/ha", format: 1}),
      column("Twice", {formula: "=SUM(C:C)*C1*Rate", format: 0}),
    ],
    [
      ["Long Acre", "2026-04-25", 4500, "="],
      ["Well <Field>", null, null, 7],
    ],
    {extras: [{row: 0, col: 2, note}]},
  ),
  sheet("Named values", ["Name", "Value"], [["Rate", 0.95]], {names: true}),
)
const {book} = fullCopy(new Workbook(farm))
const on = new Date("2026-05-25T12:00:00Z")
const whole = {
  xlsx: writeXlsx(book, on),
  ods: writeOds(book, on),
  json: strToU8(writeFile(farm)),
  csv: strToU8('Planting,Day,Yield (kg/ha)\r\nLong Acre,2026-04-25,4500\r\nWell Field,4/5/2026,"1,5"\r\n'),
}

/** Chosen: two seconds on a busy machine for what takes a few milliseconds. */
const WITHIN = 2000

/** The bytes with a few taken out, put in, doubled or changed, as the numbers come. */
function damaged(bytes: Uint8Array, next: () => number): Uint8Array {
  let made = bytes
  for (let n = Math.ceil(next() * 4); n > 0; n--) {
    const at = Math.floor(next() * made.length)
    const end = Math.min(made.length, at + Math.ceil(next() ** 3 * 60))
    const kind = next()
    if (kind < 0.2) made = made.slice(0, at)
    else if (kind < 0.4) made = Uint8Array.of(...made.slice(0, at), ...made.slice(end))
    else if (kind < 0.6) made = Uint8Array.of(...made.slice(0, end), ...made.slice(at))
    else made = made.map((byte, i) => (i >= at && i < end ? Math.floor(next() * 256) : byte))
  }
  return made
}

/** A text with numbers made large, words swapped and signs of markup put in. */
function garbled(text: string, next: () => number): string {
  const pieces = [
    "<",
    ">",
    '"',
    "&#0;",
    "&#x10ffff;",
    "]]>",
    "<!--",
    "=",
    "{",
    "'",
    "\u0000",
    "1e999",
    "-1",
    "99999999999",
    "A0",
    "ZZZ9999999",
    "#REF!",
  ]
  let made = text
  for (let n = Math.ceil(next() * 6); n > 0; n--) {
    const at = Math.floor(next() * made.length)
    const piece = pieces[Math.floor(next() * pieces.length)]!
    const kind = next()
    if (kind < 0.3) made = made.slice(0, at) + piece + made.slice(at)
    else if (kind < 0.7)
      made = made.slice(0, at) + made.slice(at).replace(/[\d.]+/, piece.replace(/[<>"&]/g, ""))
    else made = made.slice(0, at) + made.slice(at).replace(/"[^"]*"/, `"${piece.replace(/[<>"&]/g, "")}"`)
  }
  return made
}

/** A zip of the same parts, one of which is garbled before it is packed: the check of the bytes then holds. */
function repacked(bytes: Uint8Array, next: () => number): Uint8Array {
  const parts = unzipSync(bytes)
  const names = Object.keys(parts).filter((name) => /sheet|content|comments|styles|workbook/.test(name))
  const name = names[Math.floor(next() * names.length)]!
  const text = garbled(new TextDecoder().decode(parts[name]), next)
  return zipSync({...parts, [name]: strToU8(text)})
}

/** Whatever comes out is a sentence, or a workbook that could be saved and opens. */
function isSentenceOrWorkbook(read: {refused: string} | {document: Document}): boolean {
  if ("refused" in read) return read.refused.length > 8 && !read.refused.endsWith(".")
  if (!documentSchema.safeParse(read.document).success) return false
  return new Workbook(read.document).document === read.document
}

/** The runs that went wrong, by their seeds: those that threw, took too long or gave something else. */
function faultsIn(count: number, seed: number, act: (next: () => number) => boolean): string[] {
  return Array.from({length: count}, (_, n) => seed + n).flatMap((seed) => {
    const start = performance.now()
    try {
      if (!act(seeded(seed))) return [`${seed}: neither a sentence nor a workbook`]
    } catch (fault) {
      return [`${seed}: ${String(fault)}`]
    }
    const took = performance.now() - start
    return took > WITHIN ? [`${seed}: ${took} ms`] : []
  })
}

describe("files that are damaged", () => {
  it.each(["xlsx", "ods"] as const)("of .%s are refused or read, in bytes and in what is packed", (form) => {
    expect(
      faultsIn(150, 1000, (next) => isSentenceOrWorkbook(readBook(damaged(whole[form], next), "a", knows))),
    ).toEqual([])
    expect(
      faultsIn(150, 2000, (next) => isSentenceOrWorkbook(readBook(repacked(whole[form], next), "a", knows))),
    ).toEqual([])
  })

  it("of our own form are refused or read", () => {
    const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes)
    expect(
      faultsIn(150, 3000, (next) => isSentenceOrWorkbook(readFile(text(damaged(whole.json, next))))),
    ).toEqual([])
    expect(
      faultsIn(150, 4000, (next) => isSentenceOrWorkbook(readFile(garbled(text(whole.json), next)))),
    ).toEqual([])
  })

  it("of text are refused or read, as tables and as weather", () => {
    const faults = faultsIn(300, 5000, (next) => {
      const bytes = damaged(whole.csv, next)
      const table = readCsv(bytes)
      if (!("refused" in table))
        bringingOf(farm, 0, table, matchesOf(farm, 0, table), ["turn", "turn", "turn"])
      readWeather(new TextDecoder().decode(bytes), farm, 2026)
      return true
    })
    expect(faults).toEqual([])
  })

  it("of a page to read are refused or read", () => {
    const text = (bytes: Uint8Array) => new TextDecoder().decode(bytes)
    const page = pageWith('<!doctype html><script id="program">start()</script>', {
      look: null,
      workbook: text(whole.json),
    })
    const read = (page: string) => isSentenceOrWorkbook(readFile(handedIn(page)?.workbook ?? page))
    expect(faultsIn(150, 7000, (next) => read(text(damaged(strToU8(page), next))))).toEqual([])
    expect(faultsIn(150, 8000, (next) => read(garbled(page, next)))).toEqual([])
  })

  it("leave what is open as it was, and the other way to undo", () => {
    const store = createStore(farm)
    const faults = faultsIn(40, 6000, (next) => {
      const read = readBook(repacked(whole.xlsx, next), "a", knows)
      if ("refused" in read) return store.getState().document === farm
      store.open(read.document)
      return store.undo() && store.getState().document === farm
    })
    expect(faults).toEqual([])
  })

  it.each([
    "[".repeat(200_000),
    `{"fernledger":1,"a":${"[".repeat(100_000)}`,
    '{"fernledger":1,"sheets":[',
    "\u0000",
  ])("of our own form that lie deep in themselves are refused: %.20s", (text) =>
    expect(isSentenceOrWorkbook(readFile(text))).toBe(true),
  )
})
