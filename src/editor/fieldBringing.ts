import {dayOf} from "../../functions/calendar"
import {columnWith, sheetWith, type Document, type FieldEntry, type Part} from "../workbook/document"
import {landed, type Landing} from "../workbook/fieldActs"
import {hasPlace, isSameRow, kindOf, type FieldContents} from "../workbook/fieldRows"
import {FIELD_PARTS} from "../workbook/parts"
import {regionOf} from "../workbook/region"
import type {Workbook} from "../workbook/workbook"
import {dateText, measuredText} from "./display"
import {fitting} from "./editing"
import {fieldPlantings, pickingRefused} from "./field"
import type {FieldFile} from "./fieldFile"
import {measureOf} from "./measures"

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
  const {landings} = landed(document, taken, "elsewhere")
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
  stays: "; its row is gone, was changed since, or stood there before: nothing goes",
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
  const next = document.sheets[sheet]!.rows.length
  for (const [part, content] of Object.entries(row)) {
    const at = {sheet, row: next, col: columnWith(document, sheet, part as Part)}
    const entry = fitting(document, at, content)
    if ("refused" in entry) return entry.refused
  }
  return kind === "picking" ? pickingRefused(workbook, planting, String(row[dayPart])) : null
}

/** "Long Acre, 25 May 2026: 1160 kg; Phone", with the day on which it was entered where that is another. */
function entryWords(document: Document, {row, device, entered}: FieldEntry): string {
  const on = dayOf(entered.slice(0, 10))!
  const kind = row && kindOf(row)
  if (!row || !kind) return `takes a row back; ${device}, ${dateText(on)}`
  const [plantingPart, dayPart] = FIELD_PARTS[kind]
  const sheet = sheetWith(document, plantingPart)
  const numbers = FIELD_PARTS[kind].slice(2).flatMap((part) => {
    const number = row[part]
    if (typeof number !== "number") return []
    const column = sheet < 0 ? undefined : document.sheets[sheet]!.columns[columnWith(document, sheet, part)]
    const measure = measureOf(column?.unit, regionOf(document))
    const text = measuredText(number, measure, undefined, regionOf(document))
    return [measure.unit ? `${text} ${measure.unit}` : `${(column?.heading ?? part).toLowerCase()} ${text}`]
  })
  const day = dayOf(String(row[dayPart]))
  const by = day === on ? device : `${device}, ${dateText(on)}`
  return `${row[plantingPart]}, ${day === null ? row[dayPart] : dateText(day)}: ${numbers.join(", ")}; ${by}`
}
