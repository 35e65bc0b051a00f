import {columnWith, partsOf, sheetWith, type CellAddress, type Part, type Region} from "./document"
import {planOf} from "./plan"
import {soughtAs} from "./plantingName"
import {saleableIn} from "./saleable"
import type {Value} from "./value"
import type {Workbook} from "./workbook"

/** Weight on a day, or up to it, kg. */
export interface DayWeight {
  readonly day: number
  readonly kg: number
}

/** One planting in the week before the day on which the plan stands. Weights in kg as harvested. */
export interface PlantingWeek {
  readonly planting: string
  readonly area: number | null
  /** What came in on each of the seven days. */
  readonly days: readonly number[]
  readonly picked: number | null
  readonly planned: number | null
  /** Picked over planned since the opening. */
  readonly pace: number | null
  readonly pickedSoFar: readonly DayWeight[]
  /** The plan as agreed, summed up by day; as it stands where none is agreed. */
  readonly plannedSoFar: readonly DayWeight[]
  readonly closeLastWeek: number | null
  readonly heldByLastWeek: string
  readonly close: number | null
  readonly heldBy: string
  readonly moved: number | null
  /** Packed kg/ha that one more day brings, what it is worth, money/ha, and until when its price pays. */
  readonly daySells: number | null
  readonly dayWorth: number | null
  readonly paysUntil: number | null
  readonly toDo: string
  readonly why: string
  /** Where each of these stands, by its part. */
  readonly cells: Readonly<Partial<Record<Part, CellAddress>>>
}

export interface SeasonWeek {
  /** The sheet of the week. */
  readonly sheet: number
  /** The day on which the plan stands: the week ends the day before. */
  readonly asOf: number
  readonly plantings: readonly PlantingWeek[]
  /** How its numbers are shown. */
  readonly region?: Region | undefined
}

/** The week of a workbook, or null when it has no sheet of it or no day on which the plan stands. */
export function weekOf(workbook: Workbook): SeasonWeek | null {
  const {document} = workbook
  const sheet = sheetWith(document, "to do")
  const plan = planOf(workbook)
  if (sheet < 0 || plan === null || plan.asOf === null) return null
  const {asOf} = plan
  const pickings = pickingsIn(workbook)
  const agreed = agreedIn(workbook)
  const saleable = saleableIn(workbook)
  const areas = new Map(
    rowsOf(workbook, "name of planting").map((row) => [row.word("name of planting"), row.number("area")]),
  )
  const plantings = rowsOf(workbook, "week planting").flatMap((row): PlantingWeek[] => {
    const planting = row.word("week planting")
    if (planting === "") return []
    const own = pickings.filter((one) => one.planting === planting)
    const planned = plan.rows.find((one) => one.planting === planting)
    const season = agreed.get(planting) ?? {
      open: planned?.opens ?? null,
      close: planned?.closes ?? null,
      crop: (planned?.crop ?? 0) + (planned?.lostInWaits ?? 0),
    }
    const {open, close} = season
    return [
      {
        planting,
        area: areas.get(planting) ?? null,
        days: Array.from({length: 7}, (_, i) => sumOf(own.filter(({day}) => day === asOf - 7 + i))),
        picked: row.number("picked in week"),
        planned: row.number("planned in week"),
        pace: row.number("pace"),
        pickedSoFar: running(own.filter(({day}) => day < asOf)),
        plannedSoFar:
          open === null || close === null
            ? []
            : daysOf(open, close, season.crop, saleable(planting, open, close)),
        closeLastWeek: row.number("close last week"),
        heldByLastWeek: row.word("held by last week"),
        close: planned?.closes ?? null,
        heldBy: planned?.heldBy ?? "",
        moved: row.number("moved"),
        daySells: row.number("day sells"),
        dayWorth: row.number("day worth"),
        paysUntil: row.number("pays until"),
        toDo: row.word("to do"),
        why: row.word("why"),
        cells: row.cells,
      },
    ]
  })
  return {sheet, asOf, plantings, ...(document.region ? {region: document.region} : {})}
}

interface Picking extends DayWeight {
  readonly planting: string
}

/** The pickings on record, in the order of their days. */
const pickingsIn = (workbook: Workbook): readonly Picking[] =>
  rowsOf(workbook, "picking planting")
    .flatMap((row) => {
      const [day, kg] = [row.number("picking day"), row.number("picking weight")]
      return day === null || kg === null ? [] : [{planting: row.word("picking planting"), day, kg}]
    })
    .sort((a, b) => a.day - b.day)

/** What was agreed of each planting: its days, and what it grows in them, kg, with what waits known then lose of it. */
const agreedIn = (workbook: Workbook) =>
  new Map(
    rowsOf(workbook, "agreed planting").map((row) => [
      row.word("agreed planting"),
      {
        open: row.number("agreed open"),
        close: row.number("agreed close"),
        crop: ((row.number("agreed crop") ?? 0) + (row.number("agreed lost") ?? 0)) * 1000,
      },
    ]),
  )

const sumOf = (weights: readonly DayWeight[]) => weights.reduce((sum, {kg}) => sum + kg, 0)

function running(pickings: readonly DayWeight[]): readonly DayWeight[] {
  let kg = 0
  return pickings.map((one) => ({day: one.day, kg: (kg += one.kg)}))
}

function daysOf(
  open: number,
  close: number,
  crop: number,
  by: (day: number) => number,
): readonly DayWeight[] {
  const days = Array.from({length: Math.min(366, Math.max(0, close - open + 2))}, (_, i) => open - 1 + i)
  return days.map((day) => ({day, kg: crop * by(day)}))
}

/**
 * The last day of cutting of a planting that is to be closed now: its close, where that is past, or its last picking, where
 * that came after it.
 */
export const lastDayCut = ({close, pickedSoFar}: Pick<PlantingWeek, "close" | "pickedSoFar">, asOf: number) =>
  Math.min(asOf, Math.max(close ?? asOf, pickedSoFar.at(-1)?.day ?? 0))

export interface Row {
  readonly cells: Readonly<Partial<Record<Part, CellAddress>>>
  number(part: Part): number | null
  word(part: Part): string
}

/**
 * The rows of the sheet that has a column of a part, each read by the parts of its columns. The name of a planting is given as
 * the sheet of plantings spells it, since formulas find it without regard to capitals.
 */
export function rowsOf(workbook: Workbook, part: Part): readonly Row[] {
  const {document} = workbook
  const sheet = sheetWith(document, part)
  if (sheet < 0) return []
  const cols = partsOf(document.sheets[sheet]!)
  const spelled = spellingOf(workbook)
  return document.sheets[sheet]!.rows.map((_, row) => {
    const value = (of: Part): Value => {
      const col = cols.get(of) ?? -1
      return col < 0 ? null : workbook.valueAt({sheet, row, col})
    }
    return {
      cells: Object.fromEntries([...cols].map(([of, col]) => [of, {sheet, row, col}])),
      number(of) {
        const held = value(of)
        return typeof held === "number" ? held : null
      },
      word(of) {
        const held = value(of)
        if (typeof held !== "string") return ""
        return NAMES_PLANTING.test(of) ? (spelled.get(soughtAs(held)) ?? held) : held
      },
    }
  })
}

/** The parts that hold the name of a planting. */
const NAMES_PLANTING = /planting$|^stand ground$|^replant field$/

/** The names of plantings as their own sheet spells them, by how they are sought; of two alike the first, which is found. */
function spellingOf(workbook: Workbook): ReadonlyMap<string, string> {
  const {document} = workbook
  const sheet = sheetWith(document, "name of planting")
  if (sheet < 0) return new Map()
  const col = columnWith(document, sheet, "name of planting")
  const names = document.sheets[sheet]!.rows.flatMap((_, row) => {
    const name = workbook.valueAt({sheet, row, col})
    return typeof name === "string" ? [[soughtAs(name), name] as const] : []
  })
  return new Map(names.toReversed())
}

/** One week of cutting: the people and the cold it needs on its busiest day; null where that is not known. */
export interface WeekNeeds {
  readonly from: number
  readonly week: number
  readonly cutters: number | null
  readonly booked: number | null
  readonly short: number | null
  readonly busiest: number | null
  readonly heaviest: number | null
  readonly load: number | null
  readonly fitted: number | null
  readonly over: number | null
  readonly cells: Row["cells"]
}

/** The needs of each week of cutting, or null when the workbook has no sheet of them. */
export function needsOf(workbook: Workbook): readonly WeekNeeds[] | null {
  if (sheetWith(workbook.document, "need from") < 0) return null
  return rowsOf(workbook, "need from").flatMap((row): WeekNeeds[] => {
    const from = row.number("need from")
    if (from === null) return []
    return [
      {
        from,
        week: row.number("need week") ?? 0,
        cutters: row.number("cutters needed"),
        booked: row.number("cutters booked"),
        short: row.number("cutters short"),
        busiest: row.number("busiest day"),
        heaviest: row.number("heaviest"),
        load: row.number("load needed"),
        fitted: row.number("load fitted"),
        over: row.number("load over"),
        cells: row.cells,
      },
    ]
  })
}
