import {columnWith, sheetWith, type CellAddress, type Document, type Part, type Region} from "./document"
import {isFault, type Fault, type Value} from "./value"
import {numberNamed} from "./names"
import {saleableIn, type Saleable} from "./saleable"
import {type Workbook} from "./workbook"

/** One limit that could close a planting: its name and the last day of cutting it allows, or null when it is not known yet. */
export interface Limit {
  readonly name: string
  readonly day: number | null
  /** Why it has no day. */
  readonly why?: Fault
  readonly at: CellAddress
}

/** The season of one planting, read from the sheet that holds the season plan. Days as in functions/calendar.ts. */
export interface PlanRow {
  readonly row: number
  readonly planting: string
  readonly age: number | null
  readonly opens: number | null
  /** The last day of cutting; null when it is not cut, or not known. */
  readonly closes: number | null
  /** What holds it, or why it is not cut, in the sheet's own words. */
  readonly heldBy: string
  /** Whether somebody closed it: the sheet of plantings has the day on which cutting really ended. */
  readonly isClosed: boolean
  readonly slack: number | null
  readonly weeks: number | null
  /** Expected crop of the whole planting, kg. */
  readonly crop: number | null
  readonly cropLow: number | null
  readonly cropHigh: number | null
  /** What waits after spraying lose beside that crop, kg. */
  readonly lostInWaits: number
  readonly limits: readonly Limit[]
  /** Where each of these stands, by its part. */
  readonly cells: Readonly<Partial<Record<Part, CellAddress>>>
}

export interface Plan {
  readonly sheet: number
  readonly rows: readonly PlanRow[]
  /** The day on which the plan stands, from the named value As_of. */
  readonly asOf: number | null
  /**
   * Expected crop of the farm by day, kg: each planting's crop as the daily balance of its crowns cuts it, as on the sheets of
   * weeks and days; evenly over its days of cutting where its crowns are not known, and nothing of what waits lose.
   */
  readonly daily: readonly {readonly day: number; readonly kg: number}[]
  /** How its numbers are shown. */
  readonly region?: Region | undefined
}

/** The sheet of the season plan: the one that has a close. */
export const planSheet = (document: Document) => sheetWith(document, "close")

/** The season plan of a workbook, or null when it has none; read once for each document. */
export function planOf(workbook: Workbook): Plan | null {
  const {document} = workbook
  if (!plans.has(document)) plans.set(document, readPlan(workbook))
  return plans.get(document)!
}
const plans = new WeakMap<Document, Plan | null>()

function readPlan(workbook: Workbook): Plan | null {
  const {document} = workbook
  const sheet = planSheet(document)
  if (sheet < 0) return null
  const {columns, rows} = document.sheets[sheet]!
  const closed = closedIn(workbook)
  const saleable = saleableIn(workbook)
  const read = (row: number): PlanRow => {
    const cells: Partial<Record<Part, CellAddress>> = {}
    const limits: Limit[] = []
    for (const [col, {part, heading}] of columns.entries()) {
      const at = {sheet, row, col}
      if (part === "limit") limits.push(limitOf(heading, workbook.valueAt(at), at))
      else if (part) cells[part] = at
    }
    const value = (part: Part) => (cells[part] ? workbook.valueAt(cells[part]) : null)
    const number = (part: Part) => numberOf(value(part))
    const kg = (part: Part) => {
      const crop = number(part)
      const inTonnes = cells[part] && columns[cells[part].col]?.unit === "t"
      return crop === null ? null : inTonnes ? crop * 1000 : crop
    }
    const cut = {
      planting: wordOf(value("planting")),
      opens: number("open"),
      closes: number("close"),
      crop: kg("crop"),
    }
    return {
      row,
      ...cut,
      age: number("age"),
      heldBy: wordOf(value("held by")),
      isClosed: closed.has(cut.planting),
      slack: number("slack"),
      weeks: number("weeks"),
      cropLow: kg("crop low"),
      cropHigh: kg("crop high"),
      lostInWaits: lostIn(cut, saleable),
      limits,
      cells,
    }
  }
  const plan = rows.map((_, row) => read(row)).filter(({planting}) => planting !== "")
  return {
    sheet,
    rows: plan,
    asOf: numberNamed(workbook, "As_of"),
    daily: dailyCrop(plan, saleable),
    ...(document.region ? {region: document.region} : {}),
  }
}

/** What a row says of its cutting. */
type Cut = Pick<PlanRow, "planting" | "opens" | "closes" | "crop">

/** The plantings whose sheet has the day on which cutting really ended. */
function closedIn(workbook: Workbook): ReadonlySet<string> {
  const {document} = workbook
  const sheet = sheetWith(document, "closed")
  if (sheet < 0) return new Set()
  const [name, day] = [columnWith(document, sheet, "name of planting"), columnWith(document, sheet, "closed")]
  const rows = document.sheets[sheet]!.rows.keys()
  const valueAt = (row: number, col: number) => (col < 0 ? null : workbook.valueAt({sheet, row, col}))
  return new Set(
    [...rows].filter((row) => numberOf(valueAt(row, day)) !== null).map((row) => wordOf(valueAt(row, name))),
  )
}

/** The crop of each row by day: what waits after spraying lose stands on no day, and the days come to the row's crop. */
function dailyCrop(rows: readonly Cut[], saleable: Saleable): Plan["daily"] {
  const byDay = new Map<number, number>()
  for (const {planting, opens, closes, crop} of rows) {
    if (opens === null || closes === null || crop === null || closes < opens) continue
    const by = saleable(planting, opens, closes)
    const perShare = by(closes) > 0 ? crop / by(closes) : 0
    let before = 0
    for (let day = opens; day <= closes; day++) {
      const share = by(day)
      byDay.set(day, (byDay.get(day) ?? 0) + perShare * (share - before))
      before = share
    }
  }
  return [...byDay].map(([day, kg]) => ({day, kg})).sort((a, b) => a.day - b.day)
}

/** What waits after spraying lose of a row, kg, beside its crop. */
function lostIn({planting, opens, closes, crop}: Cut, saleable: Saleable): number {
  if (opens === null || closes === null || crop === null || closes < opens) return 0
  const share = saleable(planting, opens, closes)(closes)
  return share > 0 ? crop * (1 / share - 1) : 0
}

const limitOf = (name: string, value: Value, at: CellAddress): Limit => ({
  name,
  day: numberOf(value),
  ...(isFault(value) && {why: value}),
  at,
})

const numberOf = (value: Value) => (typeof value === "number" ? value : null)
const wordOf = (value: Value) => (typeof value === "string" || typeof value === "number" ? String(value) : "")
