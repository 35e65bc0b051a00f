import type {z} from "zod"
import {documentSchema, type Document, type Sheet} from "./document"
import {cellText} from "./formula"
import {whereJsonStops} from "./json"
import {tooLarge} from "./size"

/** The version of the file form that is written; older ones are brought up to it on reading. */
export const FILE_VERSION = 1

/** What reading a file gives: the document, or a sentence that says what is wrong and where. */
export type Reading = {readonly document: Document} | {readonly refused: string}

/** The text of a saved workbook: JSON with one row of a sheet on one line, so that two copies compare well. */
export function writeFile({sheets, ...rest}: Document): string {
  const head = JSON.stringify({fernledger: FILE_VERSION, ...rest}, null, 2).slice(0, -2)
  return `${head},\n  "sheets": [\n${sheets.map(sheetText).join(",\n")}\n  ]\n}\n`
}

/** Reads the text of a saved workbook. A damaged or foreign file is refused with a sentence that says where. */
export function readFile(text: string): Reading {
  let saved: unknown
  try {
    saved = JSON.parse(text.replace(/^\ufeff/, "")) // some editors begin a text with this mark
  } catch {
    return {refused: `This is not a Fernledger workbook, or it is damaged: ${placeInText(text)}`}
  }
  if (typeof saved !== "object" || saved === null || !("fernledger" in saved))
    return {
      refused:
        "This is not a Fernledger workbook: it does not begin with the word “fernledger” and a version",
    }
  const {fernledger: version, ...content} = saved
  if (!Number.isInteger(version) || (version as number) < 1)
    return {
      refused: `The version of this workbook is ${JSON.stringify(version)}; a whole number from 1 was expected`,
    }
  if ((version as number) > FILE_VERSION)
    return {
      refused: `This workbook was saved by a newer Fernledger (file version ${version}; this one reads up to ${FILE_VERSION})`,
    }
  const parsed = documentSchema.safeParse(content)
  if (!parsed.success) return {refused: `This workbook is damaged: ${whatIsWrong(parsed.error, content)}`}
  const large = tooLarge(parsed.data)
  return large === null ? (twins(parsed.data) ?? {document: parsed.data}) : {refused: large}
}

/** What was written of a part of a document, which never changes: from one save to the next most rows are the same. */
const written = new WeakMap<object, string>()

function once<T extends object>(part: T, write: (part: T) => string): string {
  const text = written.get(part) ?? write(part)
  written.set(part, text)
  return text
}

const line = (part: object) => once(part, (one) => `        ${JSON.stringify(one)}`)

const sheetText = (sheet: Sheet) => once(sheet, wholeSheet)

function wholeSheet({columns, rows, extras, ...rest}: Sheet): string {
  const head = JSON.stringify(rest, null, 2).slice(2, -2).replace(/^/gm, "    ")
  const carried = extras?.length ? `      "extras": [\n${extras.map(line).join(",\n")}\n      ],\n` : ""
  return (
    `    {\n${head},\n      "columns": [\n${columns.map(line).join(",\n")}\n      ],\n${carried}` +
    `      "rows": [${rows.length ? `\n${rows.map(line).join(",\n")}\n      ` : ""}]\n    }`
  )
}

function placeInText(text: string): string {
  if (text.trim() === "") return "it is empty"
  const at = whereJsonStops(text)
  if (at === text.length) return "its text breaks off"
  const before = text.slice(0, at).split("\n")
  return `line ${before.length}, character ${before.at(-1)!.length + 1} cannot be read`
}

function whatIsWrong(error: z.ZodError, content: object): string {
  const issue = error.issues[0]!
  return `${placeInDocument(issue.path, content)}: ${issue.message.replace(/^Invalid input: /, "").replace(/^./, (c) => c.toLowerCase())}`
}

/** "sheet 2 “Plantings”, cell C4" for a path such as ["sheets", 1, "rows", 3, 2]. */
function placeInDocument(path: readonly PropertyKey[], content: object): string {
  const [top, index, part, row, col, ...rest] = path
  if (top !== "sheets" || typeof index !== "number") return path.length ? `“${path.join(" ")}”` : "its head"
  const name = (content as {sheets: {name?: unknown}[]}).sheets[index]?.name
  const sheet = `sheet ${index + 1}${typeof name === "string" ? ` “${name}”` : ""}`
  if (part === "rows" && typeof row === "number")
    return typeof col === "number" ? `${sheet}, cell ${cellText(row, col)}` : `${sheet}, row ${row + 1}`
  if (part === "columns" && typeof row === "number")
    return [`${sheet}, column ${row + 1}`, ...[col, ...rest].filter((one) => one !== undefined)].join(", ")
  return part === undefined ? sheet : `${sheet}, “${String(part)}”`
}

/** Two sheets of one name cannot be told apart in a formula. */
function twins({sheets}: Document): {refused: string} | null {
  const names = sheets.map(({name}) => name.toLowerCase())
  const twin = names.findIndex((name, i) => names.indexOf(name) < i)
  return twin < 0 ? null : {refused: `This workbook is damaged: two sheets are named “${sheets[twin]!.name}”`}
}
