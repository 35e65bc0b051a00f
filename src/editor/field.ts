import {dayOf, isoOf} from "../../functions/calendar"
import {columnWith, sheetWith, type Document, type Region} from "../workbook/document"
import {dayText, quantityText, shownIn} from "./display"
import type {FieldMark} from "../workbook/fieldActs"
import {hasPlace, type FieldContents} from "../workbook/fieldRows"
import {addFieldRow} from "./commands/season"
import {pickingDoubt} from "./pickingDoubts"
import type {Command} from "./store"
import {questionedAt} from "../workbook/questioned"
import {PLAIN_REGION, regionOf} from "../workbook/region"
import {rowsOf} from "../workbook/season"
import {waitOn} from "../workbook/waits"
import type {Workbook} from "../workbook/workbook"

/** What the field page knows of a planting. */
export interface FieldPlanting {
  readonly name: string
  readonly area: number | null
  /** Its last picking on record. */
  readonly last: {readonly day: number; readonly kg: number} | null
  /** The middle of its last five pickings, kg; null where there are fewer than three. */
  readonly usual: number | null
}

/** The plantings of a workbook, for the field page. */
export function fieldPlantings(workbook: Workbook): readonly FieldPlanting[] {
  const pickings = rowsOf(workbook, "picking planting").flatMap((row) => {
    const [day, kg] = [row.number("picking day"), row.number("picking weight")]
    return day === null || kg === null ? [] : [{planting: row.word("picking planting"), day, kg}]
  })
  return rowsOf(workbook, "name of planting").flatMap((row): FieldPlanting[] => {
    const name = row.word("name of planting")
    const own = pickings
      .flatMap(({planting, day, kg}) => (planting === name ? [{day, kg}] : []))
      .toSorted((a, b) => a.day - b.day)
    const recent = own.slice(-5).toSorted((a, b) => a.kg - b.kg)
    const usual = recent.length < 3 ? null : (recent[Math.floor(recent.length / 2)]?.kg ?? null)
    return name ? [{name, area: row.number("area"), last: own.at(-1) ?? null, usual}] : []
  })
}

/** Why a planting may not be picked on a day: a wait after spraying, typed from the product's label, is not over. Null when it may. */
export function pickingRefused(workbook: Workbook, planting: string, day: string): string | null {
  const on = dayOf(day)
  if (on === null) return "Choose the day of the picking"
  return waitOn(workbook, planting, on) && withoutStop(pickingDoubt(workbook, planting, on)!.told)
}

const withoutStop = (sentence: string) => sentence.slice(0, -1)

/** What to ask of a picking after the planting's close, or of one that was closed to fern, before it is added; "" when nothing. */
export function pickingLate(workbook: Workbook, planting: string, day: string): string {
  const on = dayOf(day)
  if (on === null) return ""
  const doubt = pickingDoubt(workbook, planting, on)
  if (doubt) return `${doubt.told} ${doubt.asks}`
  const close = rowsOf(workbook, "close")
    .find((one) => one.word("planting") === planting)
    ?.number("close")
  return close !== undefined && close !== null && on > close
    ? `${planting} closes on ${dayText(close)} by the plan. Was it picked on ${dayText(on)}?`
    : ""
}

/**
 * What to tell of a picking before it is added, or "": its weight is more than a hectare brings, or far from what the
 * planting brought of late.
 */
export function pickingOdd(
  {area, name, usual}: FieldPlanting,
  kg: number,
  region: Region = PLAIN_REGION,
): string {
  const weight = (one: number) => quantityText(one, 0, "kg", region)
  const asks = `Is it ${weight(kg)}?`
  if (area !== null && area > 0 && kg / area > MOST_KG_HA)
    return `${quantityText(kg / area, 0, "kg/ha", region)} in one picking of ${name} is more than fields give. ${asks}`
  if (usual === null || (kg < MANY_TIMES * usual && kg * FEW_TIMES > usual)) return ""
  return `${weight(kg)} is far from the last pickings of ${name}, about ${weight(usual)} each. ${asks}`
}

const MOST_KG_HA = 1500 // chosen: some five times a heavy picking
// Chosen: a digit too many or too few is told, a frost night or the first picking after a gap is not.
const MANY_TIMES = 4
const FEW_TIMES = 8

/** What to ask of a root sample that is outside the usual of its column, before it is added; "" when nothing. */
export function sampleOdd(
  document: Document,
  measured: "sample reading" | "sample sugar",
  value: number,
): string {
  const sheet = sheetWith(document, measured)
  if (sheet < 0) return ""
  const at = {sheet, row: document.sheets[sheet]!.rows.length, col: columnWith(document, sheet, measured)}
  const odd = questionedAt(document, at, value)
  if (!odd) return ""
  const {text, unit} = shownIn(measured === "sample reading" ? "°Brix" : "mg/g", regionOf(document))
  const told = `${text(value)} ${unit} is outside the usual ${text(odd.from)} to ${text(odd.to)}.`
  return `${told} ${odd.meant === null ? `Is it ${text(value)}` : `Was ${text(odd.meant)} meant`}?`
}

export const addPicking = (planting: string, day: string, kg: number, mark: FieldMark): Command =>
  addFieldRow(
    {"picking planting": planting, "picking day": day, "picking weight": kg},
    mark,
    `picking of ${planting}`,
  )

/** Spears counted by their diameters, mm. */
export type SpearCounts = Readonly<Record<number, number>>

/** The diameters that can be tapped, mm: whole millimetres, or sixteenths of an inch where measures are of the US. */
export const spearSizes = ({measures}: Region): readonly number[] =>
  measures === "US"
    ? Array.from({length: 19}, (_, i) => ((i + 2) * 25.4) / 16)
    : Array.from({length: 28}, (_, i) => i + 3)

/** A diameter as it stands on its button: "9", or "5/16". */
export const spearSizeText = (mm: number, {measures}: Region) =>
  measures === "US" ? `${Math.round((mm * 16) / 25.4)}/16` : String(mm)

/** How many spears were counted, their mean, and how many are thinner than a limit. The mean is null without any. */
export function spearsCounted(counts: SpearCounts, limit: number | null) {
  const sizes = sizesOf(counts)
  const count = sizes.reduce((sum, [, n]) => sum + n, 0)
  const total = sizes.reduce((sum, [size, n]) => sum + size * n, 0)
  const thinner = limit === null ? 0 : sizes.reduce((sum, [size, n]) => sum + (size < limit ? n : 0), 0)
  return {count, mean: count ? total / count : null, thinner}
}

/** Spears counted by diameter, as SPEAR.TALLY reads them: "8×3 9×12"; sixteenths of an inch stay fractions. */
export const tallyText = (counts: SpearCounts): string =>
  sizesOf(counts)
    .filter(([, count]) => count > 0)
    .toSorted(([a], [b]) => a - b)
    .map(([size, count]) => `${sixteenths(size) ?? size}×${count}`)
    .join(" ")

const sizesOf = (counts: SpearCounts) =>
  Object.entries(counts).map(([size, count]) => [Number(size), count] as const)

/** "6/16" of 9.525 mm; null of what is no whole number of sixteenths. */
function sixteenths(mm: number): string | null {
  const parts = (mm * 16) / 25.4
  return Math.abs(parts - Math.round(parts)) < 1e-9 ? `${Math.round(parts)}/16` : null
}

/** Adds a count of spears: its mean and number and, where the workbook has a column for them, the spears by size. */
export const addSpears =
  (planting: string, day: string, counts: SpearCounts, mark: FieldMark): Command =>
  (state) => {
    const {count, mean} = spearsCounted(counts, null)
    if (mean === null) return null
    const row = {
      "spear planting": planting,
      "spear day": day,
      "spear mean": Number(mean.toFixed(2)),
      "spears counted": count,
    }
    const bySize = {...row, "spears by size": tallyText(counts)}
    return addFieldRow(hasPlace(state.document, bySize) ? bySize : row, mark, `spears of ${planting}`)(state)
  }

/** The number that the next plant sampled in a planting on a day has. */
export function nextPlant(workbook: Workbook, planting: string, day: string): number {
  const on = dayOf(day)
  const taken = rowsOf(workbook, "sample planting").flatMap((row) =>
    row.word("sample planting") === planting && row.number("sample day") === on
      ? [row.number("sample plant") ?? 0]
      : [],
  )
  return Math.max(0, ...taken) + 1
}

export const addSample = (
  planting: string,
  day: string,
  plant: number,
  measured: "sample reading" | "sample sugar",
  value: number,
  mark: FieldMark,
): Command =>
  addFieldRow(
    {"sample planting": planting, "sample day": day, "sample plant": plant, [measured]: value},
    mark,
    `root sample of ${planting}`,
  )

/** What a row of the field holds, in words: "Sand Piece 1 160 kg", "Sand Piece 30 spears, 10.7 mm", "Sand Piece plant 2, 18.5 °Brix". */
export function fieldRowText(row: FieldContents, region: Region): string {
  const shown = (part: keyof FieldContents, unit: string, decimals?: number) => {
    const {text, unit: shownUnit} = shownIn(unit, region)
    return `${text(Number(row[part]), decimals)} ${shownUnit}`
  }
  if (row["picking planting"] !== undefined)
    return `${row["picking planting"]} ${shown("picking weight", "kg")}`
  if (row["spear planting"] !== undefined)
    return `${row["spear planting"]} ${row["spears counted"]} spears, ${shown("spear mean", "mm", 1)}`
  const measured =
    row["sample sugar"] === undefined ? shown("sample reading", "°Brix") : shown("sample sugar", "mg/g")
  return `${row["sample planting"]} plant ${row["sample plant"]}, ${measured}`
}

/** The days that can be chosen: today and the six before it, in ISO form. */
export function lastDays(today: string): readonly string[] {
  const day = dayOf(today)!
  return Array.from({length: 7}, (_, i) => isoOf(day - i))
}
