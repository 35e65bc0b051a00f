import type {Document, ReadingMark} from "./document"
import {writeFile} from "./file"
import {isFault, type Value} from "./value"
import type {Workbook} from "./workbook"

/** The document without the mark of a reading copy. */
export function withoutReading(document: Document): Document {
  const {reading: _, ...rest} = document
  return rest
}

/** A copy for reading only, marked with who made it and the digests by which a later change shows. Null where the browser makes none. */
export async function readingCopy(workbook: Workbook, madeBy: string, on: string): Promise<Document | null> {
  const document = withoutReading(workbook.document)
  const digests = await digestsOf(workbook)
  if (!digests) return null
  const {sheets, ...rest} = document
  return {...rest, reading: {madeBy, on, ...digests}, sheets}
}

/** What became of a reading copy since it was made. */
export type ReadingState =
  | "unchanged"
  /** What is written in it differs. */
  | "changed"
  /** What is written is the same, but this program works out other results from it. */
  | "other results"
  /** The browser makes no digests here. */
  | "not checked"

export async function readingState(workbook: Workbook, mark: ReadingMark): Promise<ReadingState> {
  const digests = await digestsOf(workbook)
  if (!digests) return "not checked"
  if (digests.digest !== mark.digest) return "changed"
  return digests.results === mark.results ? "unchanged" : "other results"
}

async function digestsOf(workbook: Workbook) {
  const [text, out] = [writeFile(withoutReading(workbook.document)), resultsText(workbook)] // of one and the same state
  const [digest, results] = [await digestOf(text), await digestOf(out)]
  return digest === null || results === null ? null : {digest, results}
}

/** SHA-256 of a text, in hexadecimal digits; null where the page was not loaded safely, since browsers make none there. */
export async function digestOf(text: string): Promise<string | null> {
  const {subtle} = globalThis.crypto ?? {}
  if (!subtle) return null
  const bytes = new Uint8Array(await subtle.digest("SHA-256", new TextEncoder().encode(text)))
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("")
}

/** Digits of a result that count: the last ones may differ from one machine to the next. */
const DIGITS = 9

function resultsText(workbook: Workbook): string {
  return workbook.document.sheets
    .flatMap(({columns, rows}, sheet) =>
      rows.map((_, row) =>
        columns.map((_, col) => resultText(workbook.valueAt({sheet, row, col}))).join("\t"),
      ),
    )
    .join("\n")
}

function resultText(value: Value): string {
  if (isFault(value)) return value.code
  return typeof value === "number" ? String(Number(value.toPrecision(DIGITS))) : String(value ?? "")
}
