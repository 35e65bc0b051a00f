import Papa from "papaparse"
import {dayOf} from "../../functions/calendar"
import {isRefusal} from "../../functions/refusal"
import {readTally} from "../../functions/spear/tally"
import {isFieldEntry, LONGEST_DEVICE, type Document, type FieldEntry, type Part} from "../workbook/document"
import {kindOf, type FieldContents, type FieldKind} from "../workbook/fieldRows"
import {FIELD_PARTS} from "../workbook/parts"
import type {CsvTable} from "./csvIn"
import {guarded, unguarded} from "./csvOut"

const HEADINGS = [
  "Fernledger field row",
  "Device",
  "Entered",
  "Takes back",
  "Planting",
  "Day",
  "Weight (kg)",
  "Diameter (mm)",
  "Spears",
  "Plant",
  "Reading (\u00b0Brix)",
  "Sugar (mg/g)",
  "By size",
] as const

/** Spears by size, as SPEAR.TALLY reads them. Files from before they were kept have no such column. */
const BY_SIZE = 12

/** Where the numbers of each kind stand in a line of the file. */
const NUMBERS: Readonly<Record<FieldKind, readonly (readonly [Part, number])[]>> = {
  picking: [["picking weight", 6]],
  spears: [
    ["spear mean", 7],
    ["spears counted", 8],
  ],
  sample: [
    ["sample plant", 9],
    ["sample reading", 10],
    ["sample sugar", 11],
  ],
}

/**
 * All that was entered in the field, as a table in text (RFC 4180) that any program shows: a line for each act, with its mark,
 * metric, decimals after a point. Words that another program could take for a formula begin with an apostrophe.
 */
export function fieldCsv({field = []}: Document): string {
  const lines = field.map(({id, device, entered, takesBack, row}) => {
    const line = [id, guarded(device), entered, takesBack ?? "", ...HEADINGS.slice(4).map(() => "")]
    const kind = row && kindOf(row)
    if (!row || !kind) return line
    const [planting, day] = FIELD_PARTS[kind]
    line[4] = guarded(String(row[planting] ?? ""))
    line[5] = String(row[day] ?? "")
    for (const [part, at] of NUMBERS[kind]) line[at] = String(row[part as keyof FieldContents] ?? "")
    line[BY_SIZE] = String(row["spears by size"] ?? "")
    return line
  })
  return `\ufeff${Papa.unparse([[...HEADINGS], ...lines], {newline: "\r\n"})}\r\n`
}

/** Acts of the field that were read from a file, and the lines that are none, each with the reason. */
export interface FieldFile {
  readonly entries: readonly FieldEntry[]
  readonly left: readonly string[]
}

/** The acts of the field in a table; null where the table is another. */
export function fieldFileIn({headings, lines, left}: CsvTable): FieldFile | null {
  if (headings[0] !== HEADINGS[0]) return null
  const places = HEADINGS.map((heading) => headings.indexOf(heading))
  const missing = HEADINGS.filter((_, i) => i !== BY_SIZE && places[i]! < 0)
  if (missing.length)
    return {
      entries: [],
      left: [`the first line lacks ${missing.map((one) => `\u201c${one}\u201d`).join(", ")}`],
    }
  const entries: FieldEntry[] = []
  const not = [...left]
  for (const [i, fields] of lines.entries()) {
    const read = entryIn(places.map((place) => fields[place]?.trim() ?? ""))
    if (typeof read === "string") not.push(`line ${i + 2}: ${read}`)
    else entries.push(read)
  }
  return {entries, left: not}
}

/** An act, or why a line is none. */
function entryIn(fields: readonly string[]): FieldEntry | string {
  const [id = "", device = "", entered = "", takesBack = "", planting = "", day = ""] = fields
  if (!isMark(id)) return "it has no mark of its own"
  const by = unguarded(device)
  if (by === "") return "it does not say on which device it was entered"
  if (by.length > LONGEST_DEVICE) return `its device has a name of more than ${LONGEST_DEVICE} letters`
  if (!isFieldEntry({id, device: by, entered}))
    return `it was entered on \u201c${entered}\u201d, which is no day and time`
  const mark = {id, device: by, entered}
  if (takesBack !== "") return isMark(takesBack) ? {...mark, takesBack} : "what it takes back has no mark"
  const kinds = (Object.keys(NUMBERS) as FieldKind[]).filter((kind) =>
    NUMBERS[kind].some(([, at]) => fields[at] !== ""),
  )
  if (kinds.length !== 1) return kinds.length ? "it holds rows of two kinds" : "it holds no number"
  if (planting === "") return "it names no planting"
  if (dayOf(day) === null) return `its day is \u201c${day}\u201d; a day such as 2026-05-25 was expected`
  const [plantingPart, dayPart] = FIELD_PARTS[kinds[0]!]
  const row: Partial<Record<Part, string | number>> = {[plantingPart]: unguarded(planting), [dayPart]: day}
  for (const [part, at] of NUMBERS[kinds[0]!]) {
    if (fields[at] === "") continue
    const number = /^\d+(\.\d+)?$/.test(fields[at]!) ? Number(fields[at]) : NaN
    if (!Number.isFinite(number)) return `${HEADINGS[at]} is \u201c${fields[at]}\u201d, which is no number`
    row[part] = number
  }
  if (fields[BY_SIZE]) row["spears by size"] = fields[BY_SIZE]
  const read = row as FieldContents
  return unlikely(read, day, entered) ?? {...mark, row: read}
}

/** Why a row cannot have been entered like this, or null. */
function unlikely(row: FieldContents, day: string, entered: string): string | null {
  const ago = dayOf(entered.slice(0, 10))! - dayOf(day)!
  // A day may have begun elsewhere already.
  if (ago < -1 || ago > 366) return `its day is ${day}, and it was entered on ${entered.slice(0, 10)}`
  const {"sample plant": plant, "spears counted": count, "spears by size": bySize} = row
  if (row["sample planting"] !== undefined) {
    if (typeof plant !== "number" || !Number.isInteger(plant)) return "it has no whole number of its plant"
    if (row["sample reading"] === undefined && row["sample sugar"] === undefined) return "it holds no reading"
  }
  if (row["spear planting"] === undefined) return bySize === undefined ? null : "only spears have sizes"
  if (bySize !== undefined && isRefusal(readTally(String(bySize))))
    return `its spears by size are “${bySize}”; a text such as 8×3 9×12 was expected`
  return row["spear mean"] === undefined || !Number.isInteger(count)
    ? "it has no mean or no count of spears"
    : null
}

const isMark = (text: string) => /^[0-9a-f]{32}$/.test(text)
