import Papa from "papaparse"
import {contentAt, type Column, type Content, type Document, type Region} from "../workbook/document"
import type {Edit, Entry} from "../workbook/edit"
import {decimalOf, regionOf, type Decimal} from "../workbook/region"
import {unguarded} from "./csvOut"
import {cellColumn} from "./cellColumn"
import {readText} from "./clipboard"
import {yearOf} from "./editing"
import {readEntry} from "./entry"
import {measureOf, turned} from "./measures"
import type {PastePiece} from "./store"
import {otherDecimal, withOwnDecimal} from "./tableDecimals"
import {dayOrder, inOrder} from "./weatherFile"

/** A table of text that was read and not brought in yet. */
export interface CsvTable {
  readonly headings: readonly string[]
  /** As many fields as there are headings in each. */
  readonly lines: readonly (readonly string[])[]
  /** Lines that cannot be lined up with the headings, each with the reason. */
  readonly left: readonly string[]
  /** What is to be known of how it was read. */
  readonly notice: string
}

/** Chosen: more than a season of pickings on a large farm, and little enough for a preview at once. */
export const MOST_LINES = 20_000
const MOST_FIELDS = 200
const LONGEST_TEXT = 20_000_000

/**
 * Reads CSV (RFC 4180, or parted by ";" or tabs) with headings in its first line. UTF-8, or UTF-16 by its byte-order
 * mark; what is neither is read as Windows-1252, and that is said.
 */
export function readCsv(bytes: Uint8Array): CsvTable | {readonly refused: string} {
  if (bytes.length > LONGEST_TEXT)
    return {
      refused: `It is ${inMegabytes(bytes.length)}; the most for a table is ${inMegabytes(LONGEST_TEXT)}`,
    }
  const {text, notice} = decoded(bytes)
  if (text.includes("\0")) return {refused: "It is no table in text: it holds signs that no text has"}
  if (text.trim() === "") return {refused: "It is empty"}
  if (text.trimStart().startsWith("{"))
    return {refused: "It is no table; a copy of a workbook of this program is opened by “Open a file copy”"}
  const {data} = Papa.parse<string[]>(text, {
    delimiter: delimiterOf(text),
    skipEmptyLines: "greedy",
    preview: MOST_LINES + 2,
  })
  const [first = [], ...rest] = data
  if (rest.length > MOST_LINES) return {refused: `It has more than ${MOST_LINES} lines: bring it in by parts`}
  const headings = withoutBlankEnd(first).map((one) => unguarded(one).trim())
  if (headings.length > MOST_FIELDS)
    return {refused: `Its first line has ${headings.length} fields, and a sheet takes ${MOST_FIELDS}`}
  if (!rest.length)
    return {refused: "It has one line alone: headings were expected in the first, and lines below"}
  const lines: string[][] = []
  const left: string[] = []
  for (const [i, line] of rest.entries()) {
    const fields = withoutBlankEnd(line)
    if (fields.length > headings.length)
      left.push(`line ${i + 2}: it has ${fields.length} fields, and the headings are ${headings.length}`)
    else lines.push(Array.from(headings, (_, col) => fields[col] ?? ""))
  }
  return {headings, lines, left, notice}
}

export const inMegabytes = (bytes: number) => `${Math.ceil(bytes / 100_000) / 10} MB`

function decoded(bytes: Uint8Array): {text: string; notice: string} {
  const mark = bytes[0]! * 256 + bytes[1]!
  if (mark === 0xfffe) return {text: new TextDecoder("utf-16le").decode(bytes), notice: ""}
  if (mark === 0xfeff) return {text: new TextDecoder("utf-16be").decode(bytes), notice: ""}
  try {
    return {text: new TextDecoder("utf-8", {fatal: true}).decode(bytes), notice: ""}
  } catch {
    const text = new TextDecoder("windows-1252").decode(bytes)
    return {
      text,
      notice: "It is not UTF-8: its letters are read as Windows-1252, so look at those with accents.",
    }
  }
}

/** What parts the fields: the sign that gives the most lines as many fields as there are headings. */
function delimiterOf(text: string): string {
  const start = text.slice(0, LOOKED_AT)
  const scores = [",", ";", "\t"].map((delimiter) => {
    const {data} = Papa.parse<string[]>(start, {delimiter, skipEmptyLines: "greedy", preview: 50})
    const width = data[0]?.length ?? 0
    const fitting = data.filter((line) => line.length === width).length
    return {delimiter, width, fitting: width > 1 ? fitting : 0}
  })
  return scores.toSorted((a, b) => b.fitting - a.fitting || b.width - a.width)[0]!.delimiter
}

const LOOKED_AT = 100_000

function withoutBlankEnd(fields: readonly string[]): readonly string[] {
  const last = fields.findLastIndex((field) => field.trim() !== "")
  return fields.slice(0, last + 1)
}

/** What becomes of a column of the table. */
export interface Match {
  readonly heading: string
  /** The column of the sheet it goes to, or null. */
  readonly to: number | null
  /** Why it stays out, where it does. */
  readonly why: string | null
  /**
   * A unit that its numbers may be in though the column shows another; to be asked about. It is the one that the heading names or,
   * where it names none, the one of the other measures.
   */
  readonly named: string | null
  /** Whether what stands in the unit named can be turned into that of the column. */
  readonly turns: boolean
}

/** Finds the column of a sheet for each column of a table, by heading, without regard to case and unit. */
export function matchesOf(document: Document, sheet: number, {headings, lines}: CsvTable): readonly Match[] {
  const {columns} = document.sheets[sheet]!
  const region = regionOf(document)
  const taken = new Set<number>()
  return headings.map((heading, i): Match => {
    const stays = (why: string): Match => ({heading, to: null, why, named: null, turns: false})
    const read = withUnit(heading)
    const unitOf = ({unit}: Column) => measureOf(unit, region).unit
    const free = columns.flatMap((column, col) => {
      const isIt = [heading, read.heading].some((one) => one.toLowerCase() === column.heading.toLowerCase())
      return isIt && !taken.has(col) ? [{column, col}] : []
    })
    const same = free.find(({column}) => [unitOf(column), column.unit ?? ""].includes(read.unit ?? ""))
    const found = same ?? free[0]
    if (!found) return stays("no column of the sheet is called so")
    taken.add(found.col)
    if (found.column.formula !== undefined) return stays("it is worked out here")
    const isWhole = found.column.heading.toLowerCase() === heading.toLowerCase()
    const hasNumbers = lines.some((line) => isBareNumber(line[i]!))
    const stated = read.unit ?? (hasNumbers ? otherUnit(found.column, region) : null)
    const named = (isWhole && read.unit !== null) || stated === unitOf(found.column) ? null : stated
    const turns = named !== null && turned(1, named, found.column.unit ?? "") !== null
    return {heading, to: found.col, why: null, named, turns}
  })
}

/** The unit of a column in the measures that the region does not use. */
function otherUnit({unit}: Column, {measures, ...others}: Region): string | null {
  return measureOf(unit, measures === "US" ? others : {...others, measures: "US"}).unit || null
}

/** "Area (ac)", "Area [ac]" and "Area, ac" name a unit. */
function withUnit(text: string): {heading: string; unit: string | null} {
  const found = /^(.*?)\s*(?:\(([^()]+)\)|\[([^[\]]+)\]|,\s*([^,]+))$/.exec(text)
  return found
    ? {heading: found[1]!, unit: (found[2] ?? found[3] ?? found[4])!.trim()}
    : {heading: text, unit: null}
}

/** What a person said of a column that is asked about; null while it is not said. */
export type UnitSaid = "turn" | "as shown" | "leave out" | null

export interface Bringing {
  /** Null where nothing can be brought in. */
  readonly edit: Edit | null
  readonly rows: number
  readonly pieces: readonly PastePiece[]
  /** Lines that stay out, each with its number and the reason. */
  readonly left: readonly string[]
  /** How many lines stand on the sheet already. */
  readonly twins: number
  /** The sign before decimals of the table, where it was taken though it is not that of the workbook. */
  readonly taken: Decimal | null
}

/** What the lines of a table would add below the last row of a sheet; a line with a field that cannot stand there stays out. */
export function bringingOf(
  document: Document,
  sheet: number,
  table: CsvTable,
  matches: readonly Match[],
  said: readonly UnitSaid[],
): Bringing {
  const {rows, name} = document.sheets[sheet]!
  const region = regionOf(document)
  const used = matches.flatMap(({to, named, turns}, i) => {
    const answer = named === null ? "as shown" : (said[i] ?? null)
    return to === null || answer === "leave out" || answer === null
      ? []
      : [{i, to, unit: answer === "turn" && turns ? named : null}]
  })
  const taken = otherDecimal(
    table.lines.map((line) => used.map(({i}) => line[i]!)),
    decimalOf(document),
  )
  const orders = new Map(used.map(({i}) => [i, dayOrder(table.lines.map((line) => line[i]!))]))
  const standing = new Set(
    rows.map((_, row) => keyOf(used.map(({to}) => contentAt(document, {sheet, row, col: to})))),
  )
  const year = yearOf(document)
  const cells: Entry[] = []
  const pieces: PastePiece[] = []
  const left = [...table.left]
  let twins = 0
  let next = rows.length
  for (const [line, fields] of table.lines.entries()) {
    const entries: Entry[] = []
    const read: PastePiece[] = []
    const faults: string[] = []
    for (const {i, to, unit} of used) {
      const at = {sheet, row: next, col: to}
      const column = cellColumn(document, at)!
      const written = fields[i]!
      const isDay = column.format === "date" || column.format === "day"
      const text = isDay ? inOrder(written.trim(), orders.get(i)!) : numberAs(written, taken, unit)
      const entry = text.trim().startsWith("=")
        ? {refused: `“${short(text)}” is a formula of elsewhere`}
        : readEntry(text, column, year, () => null, {region})
      if ("refused" in entry) {
        faults.push(entry.refused)
        continue
      }
      const {content} = entry
      read.push({at, copied: written, reads: readText(document, at, content), why: null})
      if (content !== null) entries.push({at, content})
    }
    const contents = used.map(({to}) => entries.find(({at}) => at.col === to)?.content ?? null)
    if (faults.length) left.push(`line ${line + 2}: ${faults[0]}`)
    else if (!entries.length) left.push(`line ${line + 2}: it holds nothing for this sheet`)
    else if (standing.has(keyOf(contents))) twins++
    else {
      cells.push(...entries)
      pieces.push(...read)
      next++
    }
  }
  const count = next - rows.length
  const edit: Edit | null = cells.length
    ? {type: "enter", cells, name: `${count} ${count === 1 ? "row" : "rows"} brought into ${name}`}
    : null
  return {edit, rows: count, pieces, left, twins, taken}
}

const keyOf = (contents: readonly Content[]) => JSON.stringify(contents)

const short = (text: string) => (text.length > 40 ? `${text.slice(0, 40)}…` : text)

/** A field as it would be typed here, with the unit it stands in where that is to be turned. */
function numberAs(written: string, taken: Decimal | null, unit: string | null): string {
  const text = withOwnDecimal(written.trim(), taken) ?? written
  return unit !== null && isBareNumber(text) ? `${text.trim()} ${unit}` : text
}

/** Whether a field is a number without a unit behind it. */
const isBareNumber = (text: string) => /^\s*[-+\u2212]?[\d.,\s'\u2019]+$/.test(text) && /\d/.test(text)
