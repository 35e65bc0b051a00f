import {sheetWith, type CellAddress, type Part, type Region} from "./document"
import {sentenceOf} from "./faults"
import {valueNamed} from "./names"
import {regionOf} from "./region"
import {rowsOf, type Row} from "./season"
import {isFault, type Value} from "./value"
import type {Workbook} from "./workbook"

/** One year of cash and debt, money. */
export interface CashYear {
  readonly year: number
  readonly capacity: number
  readonly due: number
  /** Capacity for each 1.00 due; null where nothing is due. */
  readonly cover: number | null
  readonly short: number
  /** What presses on the year, in words; "" for nothing. */
  readonly cause: string
  readonly breakPrice: number | null
  readonly price: number | null
  /** Cover of the same year under the stress that is shown. */
  readonly stressed: number | null
  readonly cells: Row["cells"]
}

export interface RecordedYield {
  readonly age: number
  readonly kg: number
  /** The year was marked as struck by a disaster. */
  readonly isDisaster: boolean
  /** The cell of its crop. */
  readonly at?: CellAddress | undefined
}

/** What a planting has borne and is to bear, kg/ha. Shares are of the record. */
export interface YieldEvidence {
  readonly planting: string
  readonly age: number | null
  /** The youngest age first. */
  readonly record: readonly RecordedYield[]
  /** Mean of the last three years; null with fewer. */
  readonly mean: number | null
  readonly atThisAge: number | null
  readonly projection: number | null
  readonly low: number | null
  readonly high: number | null
  readonly gap: number | null
  readonly gapAtThisAge: number | null
  readonly reason: string
  readonly cells: Row["cells"]
}

export interface AgeShare {
  readonly age: number
  readonly share: number
}

/** What the page for the lender shows. */
export interface LenderPage {
  readonly lines: readonly {readonly name: string; readonly text: string; readonly at: CellAddress}[]
  readonly years: readonly CashYear[]
  /** Years of which it cannot be worked out what there is to pay debt, or what is due; they are not among the years. */
  readonly unknown: readonly number[]
  readonly yields: readonly YieldEvidence[]
  readonly curve: readonly AgeShare[]
  /** Mean of the farm's records at full bearing, kg/ha, by which the curve is drawn. */
  readonly fullBearing: number | null
  /** How far a year's yield may lie off, as an assumed share. */
  readonly spread: number | null
  readonly published: {readonly place: string; readonly low: number; readonly high: number} | null
  /** The cover that the farm wants to keep. */
  readonly wanted: number | null
  /** "yields −20 %, prices −10 %" */
  readonly stress: string
  readonly region: Region
  /** Who made the plan, as they sign; "" for nobody. */
  readonly preparedBy: string
}

/** The page for the lender, or null when the workbook has no sheet of it. */
export function lenderOf(workbook: Workbook): LenderPage | null {
  if (sheetWith(workbook.document, "page line") < 0) return null
  const record = rowsOf(workbook, "record planting")
  const full = record.flatMap((row) => row.number("recorded full") ?? [])
  const cash = rowsOf(workbook, "cash year")
  const years = cash.flatMap(cashYear)
  const known = new Set(years.map(({year}) => year))
  return {
    lines: rowsOf(workbook, "page line").map((row) => ({
      name: row.word("page line"),
      text: lineText(workbook.valueAt(row.cells["page text"]!)),
      at: row.cells["page text"]!,
    })),
    years,
    unknown: cash.flatMap((row) => {
      const year = row.number("cash year")
      return year === null || known.has(year) || row.number("due") === 0 ? [] : [year]
    }),
    yields: rowsOf(workbook, "evidence planting").flatMap((row) => evidence(row, record)),
    curve: rowsOf(workbook, "table age").flatMap((row) => {
      const [age, share] = [row.number("table age"), row.number("table factor")]
      return age === null || share === null ? [] : [{age, share}]
    }),
    fullBearing: full.length ? full.reduce((sum, kg) => sum + kg, 0) / full.length : null,
    spread: numberOf(valueNamed(workbook, "Yield_spread")),
    published: publishedIn(workbook),
    wanted: numberOf(valueNamed(workbook, "Wanted_cover")),
    stress: wordOf(valueNamed(workbook, "Stress_words")),
    region: regionOf(workbook.document),
    preparedBy: wordOf(valueNamed(workbook, "Prepared_by")),
  }
}

/** A line of the page; where it cannot be worked out, why not. */
const lineText = (value: Value) => (isFault(value) ? `Not known. ${sentenceOf(value)}.` : wordOf(value))
const numberOf = (value: Value) => (typeof value === "number" ? value : null)
const wordOf = (value: Value) => (typeof value === "string" ? value : "")

function cashYear(row: Row): readonly CashYear[] {
  const [year, capacity, due] = [row.number("cash year"), row.number("capacity"), row.number("due")]
  if (year === null || capacity === null || due === null) return []
  return [
    {
      year,
      capacity,
      due,
      cover: row.number("cover"),
      short: row.number("short") ?? 0,
      cause: row.word("cause"),
      breakPrice: row.number("break price"),
      price: row.number("cash price"),
      stressed: row.number("cover under stress"),
      cells: row.cells,
    },
  ]
}

function evidence(row: Row, record: readonly Row[]): readonly YieldEvidence[] {
  const planting = row.word("evidence planting")
  if (planting === "") return []
  const number = (part: Part) => row.number(part)
  return [
    {
      planting,
      age: number("evidence age"),
      record: record
        .flatMap((one) => {
          const [age, kg] = [one.number("recorded age"), one.number("record crop")]
          if (one.word("record planting") !== planting || age === null || kg === null) return []
          const isDisaster = one.word("recorded disaster") !== ""
          return [{age, kg, isDisaster, at: one.cells["record crop"]}]
        })
        .toSorted((a, b) => a.age - b.age),
      mean: number("three-year mean"),
      atThisAge: number("record at this age"),
      projection: number("projection"),
      low: number("projection low"),
      high: number("projection high"),
      gap: number("gap"),
      gapAtThisAge: number("gap at this age"),
      reason: row.word("reason"),
      cells: row.cells,
    },
  ]
}

function publishedIn(workbook: Workbook): LenderPage["published"] {
  const [first] = rowsOf(workbook, "published place")
  const [low, high] = [first?.number("published low") ?? null, first?.number("published high") ?? null]
  return first && low !== null && high !== null ? {place: first.word("published place"), low, high} : null
}
