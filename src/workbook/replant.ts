import {sheetWith, type CellAddress, type Part, type Region} from "./document"
import {namesIn} from "./names"
import {regionOf} from "./region"
import {rowsOf} from "./season"
import type {Workbook} from "./workbook"

/** One year of a new planting's life, money/ha. */
export interface NewYear {
  readonly age: number
  /** Of its net cash, what comes and goes with the yield, and the rest. */
  readonly yielding: number
  readonly other: number
  /** Packed kg at the mean price; 0 where the net cash is typed. */
  readonly sales: number
  /** The cell of its net cash. */
  readonly at: CellAddress
}

/** One season of a standing field, money/ha. */
export interface FieldSeason {
  readonly year: number
  readonly cash: number
  /** What its crop leaves after harvest, and what its packed kg sell for; null where the net cash is typed. */
  readonly crop: {readonly leaves: number; readonly sells: number} | null
  /** The cell of the cash. */
  readonly at: CellAddress
}

/** One field that is weighed against a new planting on its ground. Money/ha, worths on 1 January of the first season. */
export interface ReplantField {
  readonly row: number
  readonly field: string
  readonly area: number | null
  readonly first: number
  readonly seasons: readonly FieldSeason[]
  /** Mean price of a packed kg in the first season; null where the net cash is typed. */
  readonly price: number | null
  readonly onOldGround: boolean
  readonly rest: number
  /** Seasons left of a lease, or null where it has no end. */
  readonly lease: number | null
  readonly leaseAct: string
  /** Seasons to keep it by the lease; null without one. */
  readonly leaseYears: number | null
  readonly ground: number
  /** What a season must bring to be kept. */
  readonly level: number
  readonly keepYears: number
  readonly keepLeast: number
  readonly keepMost: number
  readonly waitGain: number
  readonly earlyCost: number
  readonly warning: string
  readonly note: string
  readonly cells: Readonly<Partial<Record<Part, CellAddress>>>
}

/** What all fields share. */
export interface ReplantMoney {
  readonly rate: number
  readonly clear: number
  readonly restIncome: number
  readonly otherUse: number
  /** A sum today that does not matter. */
  readonly little: number
  readonly packout: number
  /** Share of yield lost on old ground after 0, 1, 2, ... years of rest. */
  readonly losses: readonly number[]
  /** Half width of the range about an expected crop. */
  readonly spread: number
}

export interface Replanting {
  readonly sheet: number
  /** How numbers are to be shown. */
  readonly region: Region
  readonly money: ReplantMoney
  readonly newYears: readonly NewYear[]
  readonly fields: readonly ReplantField[]
}

/** The fields of a workbook that are weighed, or null when it has no sheet for that or no rate. */
export function replantingOf(workbook: Workbook): Replanting | null {
  const sheet = sheetWith(workbook.document, "replant field")
  if (sheet < 0) return null
  const named = numbersNamed(workbook)
  const rate = named("Rate")
  if (rate === null) return null
  const money: ReplantMoney = {
    rate,
    clear: named("Clear_cost") ?? 0,
    restIncome: named("Rest_income") ?? 0,
    otherUse: named("Other_use") ?? 0,
    little: named("Little_sum") ?? 0,
    packout: named("Packout") ?? 0,
    losses: rowsOf(workbook, "rest loss").flatMap((row) => row.number("rest loss") ?? []),
    spread: named("Yield_spread") ?? 0,
  }
  const planned = rowsOf(workbook, "life year").map((row) => ({
    age: row.number("life age"),
    yielding: row.number("cash with yield"),
    other: row.number("other cash"),
    sales: row.number("new sales"),
    perKg: row.number("kg margin"),
    price: row.number("mean price"),
    isOwn: row.number("own net cash") !== null,
    at: row.cells["new cash"]!,
  }))
  const newYears = planned.flatMap(({age, yielding, other, sales, isOwn, at}): NewYear[] =>
    age === null || yielding === null || other === null
      ? []
      : [{age, yielding, other, sales: isOwn ? 0 : (sales ?? 0), at}],
  )
  const yearAt = (age: number) => planned.findLast((one) => one.age !== null && one.age <= age)
  const fieldCost = named("Field_cost") ?? 0
  const typed = new Set(rowsOf(workbook, "own field").map((row) => row.word("own field")))
  /** What the crop of a season leaves follows from its cash, and what it sells for from the prices of that age. */
  const cropOf = (field: string, age: number | null, cash: number): FieldSeason["crop"] => {
    if (typed.has(field) || age === null) return null
    const at = yearAt(age)
    if (!at || at.price === null) return null
    const leaves = cash + fieldCost
    return {leaves, sells: at.perKg ? (leaves / at.perKg) * money.packout * at.price : 0}
  }
  const {columns} = workbook.document.sheets[sheet]!
  const seasonCols = columns.flatMap(({part}, col) => (part === "season cash" ? [col] : []))
  const restYears = named("Rest_years") ?? 0
  const fields = rowsOf(workbook, "replant field").flatMap((row, at): ReplantField[] => {
    const field = row.word("replant field")
    const number = (part: Part) => row.number(part)
    const first = number("replant first")
    const [ground, level, keepYears] = [number("ground worth"), number("level"), number("keep years")]
    if (field === "" || first === null || ground === null || level === null || keepYears === null) return []
    const age = number("replant age")
    const seasons = seasonCols.flatMap((col, i): FieldSeason[] => {
      const cell = {sheet, row: at, col}
      const cash = workbook.valueAt(cell)
      return typeof cash === "number"
        ? [{year: first + i, cash, crop: cropOf(field, age === null ? null : age + i, cash), at: cell}]
        : []
    })
    return [
      {
        row: at,
        field,
        area: number("replant area"),
        first,
        seasons,
        price: age === null || typed.has(field) ? null : (yearAt(age)?.price ?? null),
        onOldGround: !["", "no"].includes(row.word("old ground").toLowerCase()),
        rest: number("replant rest") ?? restYears,
        lease: number("lease"),
        leaseAct: row.word("lease act"),
        leaseYears: number("lease years"),
        ground,
        level,
        keepYears,
        keepLeast: number("keep least") ?? keepYears,
        keepMost: number("keep most") ?? keepYears,
        waitGain: number("wait gain") ?? 0,
        earlyCost: number("early cost") ?? 0,
        warning: row.word("replant warning"),
        note: row.word("replant note"),
        cells: row.cells,
      },
    ]
  })
  return {sheet, region: regionOf(workbook.document), money, newYears, fields}
}

/** Named values that hold a number, by name. */
export function numbersNamed(workbook: Workbook): (name: string) => number | null {
  const names = new Map(namesIn(workbook.document).map(({name, at}) => [name.toLowerCase(), at]))
  return (name) => {
    const at = names.get(name.toLowerCase())
    const value = at ? workbook.valueAt(at) : null
    return typeof value === "number" ? value : null
  }
}
