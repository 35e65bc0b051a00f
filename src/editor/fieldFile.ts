import Papa from "papaparse"
import {dayOf} from "../../functions/calendar"
import {
  columnWith,
  FIELD_PARTS,
  isFieldEntry,
  sheetWith,
  type Document,
  type FieldEntry,
  type Part,
} from "../workbook/document"
import {
  hasPlace,
  isSameRow,
  kindOf,
  landed,
  type FieldContents,
  type FieldKind,
  type Landing,
} from "../workbook/fieldRows"
import type {Workbook} from "../workbook/workbook"
import type {CsvTable} from "./csvIn"
import {guarded} from "./csvOut"
import {dateText, measuredText} from "./display"
import {fieldPlantings, pickingRefused} from "./field"
import {measureOf} from "./measures"
import {regionOf} from "../workbook/region"

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
] as const

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
  const missing = HEADINGS.filter((_, i) => places[i]! < 0)
  if (missing.length)
    return {
      entries: [],
      left: [`the first line lacks ${missing.map((one) => `\u201c${one}\u201d`).join(", ")}`],
    }
  const entries: FieldEntry[] = []
  const not = [...left]
  for (const [i, fields] of lines.entries()) {
    const read = entryIn(places.map((place) => fields[place]!.trim()))
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
  if (by.length > LONGEST_DEVICE) return "its device has a name of more than 40 letters"
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
  const read = row as FieldContents
  return unlikely(read, day, entered) ?? {...mark, row: read}
}

/** Why a row cannot have been entered like this, or null. */
function unlikely(row: FieldContents, day: string, entered: string): string | null {
  const ago = dayOf(entered.slice(0, 10))! - dayOf(day)!
  // A day may have begun elsewhere already.
  if (ago < -1 || ago > 366) return `its day is ${day}, and it was entered on ${entered.slice(0, 10)}`
  const {"sample plant": plant, "spears counted": count} = row
  if (row["sample planting"] !== undefined) {
    if (typeof plant !== "number" || !Number.isInteger(plant)) return "it has no whole number of its plant"
    if (row["sample reading"] === undefined && row["sample sugar"] === undefined) return "it holds no reading"
  }
  if (row["spear planting"] === undefined) return null
  return row["spear mean"] === undefined || !Number.isInteger(count)
    ? "it has no mean or no count of spears"
    : null
}

const isMark = (text: string) => /^[0-9a-f]{32}$/.test(text)
const unguarded = (text: string) => text.replace(/^'(?=[=+\-@\t\r'])/, "")

const LONGEST_DEVICE = 40

/** What would come of acts of the field that were read. */
export interface FieldBringing {
  /** Those that can be taken and are not here, each once. */
  readonly entries: readonly FieldEntry[]
  /** What becomes of each, in words, newest first. */
  readonly told: readonly string[]
  /** How many rows come, and how many go. */
  readonly added: number
  readonly takenOut: number
  /** How many acts are here already. */
  readonly here: number
  /** Those that are left out, each with the reason. */
  readonly left: readonly string[]
}

/** Holds acts of the field against a workbook: the union of both comes out, in whatever order files are read. */
export function fieldBringing(workbook: Workbook, {entries, left}: FieldFile): FieldBringing {
  const {document} = workbook
  const known = new Map((document.field ?? []).map((one) => [one.id, one]))
  const plantings = new Set(fieldPlantings(workbook).map(({name}) => name))
  const taken: FieldEntry[] = []
  const not = [...left]
  let here = 0
  for (const entry of entries) {
    const twin = known.get(entry.id)
    const refused = !twin && entry.row ? rowRefused(workbook, entry.row, plantings) : null
    if (twin && isSameAct(twin, entry)) here++
    else if (twin)
      not.push(`${entryWords(document, entry)}: another act has the same mark, and stays as it is`)
    else if (refused) not.push(`${entryWords(document, entry)}: ${refused}`)
    else {
      known.set(entry.id, entry)
      taken.push(entry)
    }
  }
  const {landings} = landed(document, taken)
  const told = taken.map((entry, i) => {
    const takes = entry.takesBack === undefined ? undefined : known.get(entry.takesBack)
    return `${takes ? `takes back ${entryWords(document, takes)}` : entryWords(document, entry)}${LANDINGS[landings[i]!]}`
  })
  const comes = new Set(taken.filter((_, i) => landings[i] === "added").map(({id}) => id))
  const goes = new Set(taken.filter((_, i) => landings[i] === "taken out").map(({takesBack}) => takesBack!))
  return {
    entries: taken,
    told: told.toReversed(),
    added: [...comes].filter((id) => !goes.has(id)).length,
    takenOut: [...goes].filter((id) => !comes.has(id)).length,
    here,
    left: not,
  }
}

const LANDINGS: Readonly<Record<Landing, string>> = {
  added: "",
  stood: "; such a row stands there, and is taken for it",
  "taken back": "; it was taken back",
  "taken out": "; its row goes",
  stays: "; its row was changed since, or stood there before: it stays",
  "to come": "; its row has not come yet",
  nothing: "",
}

const isSameAct = (one: FieldEntry, other: FieldEntry) =>
  one.takesBack === other.takesBack && isSameRow(one.row ?? {}, other.row ?? {})

function rowRefused(workbook: Workbook, row: FieldContents, plantings: ReadonlySet<string>): string | null {
  const {document} = workbook
  const kind = kindOf(row)
  if (!kind || !hasPlace(document, row)) return "this workbook has no sheet for it"
  const [plantingPart, dayPart] = FIELD_PARTS[kind]
  const planting = String(row[plantingPart])
  if (!plantings.has(planting)) return `\u201c${planting}\u201d is no planting of this workbook`
  const sheet = sheetWith(document, plantingPart)
  for (const [part] of NUMBERS[kind]) {
    const column = document.sheets[sheet]!.columns[columnWith(document, sheet, part)]
    const number = row[part as keyof FieldContents]
    const {least, most} = column?.rule ?? {}
    if (typeof number !== "number") continue
    if (least !== undefined && number < least) return `${column!.heading} must be at least ${least}`
    if (most !== undefined && number > most) return `${column!.heading} must be at most ${most}`
  }
  return kind === "picking" ? pickingRefused(workbook, planting, String(row[dayPart])) : null
}

/** "Long Acre, 25 May 2026: 1160 kg; Phone 7f, 25 May 2026" */
function entryWords(document: Document, {row, device, entered}: FieldEntry): string {
  const by = `${device}, ${dateText(dayOf(entered.slice(0, 10))!)}`
  const kind = row && kindOf(row)
  if (!row || !kind) return `takes a row back; ${by}`
  const [plantingPart, dayPart] = FIELD_PARTS[kind]
  const sheet = sheetWith(document, plantingPart)
  const numbers = NUMBERS[kind].flatMap(([part]) => {
    const number = row[part as keyof FieldContents]
    if (typeof number !== "number") return []
    const column = sheet < 0 ? undefined : document.sheets[sheet]!.columns[columnWith(document, sheet, part)]
    const measure = measureOf(column?.unit, regionOf(document))
    const text = measuredText(number, measure, undefined, regionOf(document))
    return [measure.unit ? `${text} ${measure.unit}` : `${(column?.heading ?? part).toLowerCase()} ${text}`]
  })
  const day = dayOf(String(row[dayPart]))
  return `${row[plantingPart]}, ${day === null ? row[dayPart] : dateText(day)}: ${numbers.join(", ")}; ${by}`
}
