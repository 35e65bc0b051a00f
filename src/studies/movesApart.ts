import {isoOf} from "../../functions/calendar"
import type {CellAddress, Document} from "../workbook/document"
import {pickedOn, type PlantingPicking} from "../workbook/pickingPlan"
import {planOf, type PlanRow} from "../workbook/plan"
import {rowsOf} from "../workbook/season"
import {Workbook} from "../workbook/workbook"

/** How short the days to come are of people and of cold, and what the farm brings. */
export interface Needs {
  /** People missing on the worst day, null where that is not known of some day; and that day, null where none are missing. */
  readonly short: number | null
  readonly shortOn: number | null
  /** kW over what is fitted on the worst day, and that day, likewise. */
  readonly over: number | null
  readonly overOn: number | null
  /** Crop of the farm, kg. */
  readonly crop: number
}

/** One opening or close moved to another day, and what the days to come then need. */
export interface Move extends Needs {
  readonly planting: string
  readonly what: "open" | "close"
  readonly was: number
  readonly to: number
  /** The cell of the date. */
  readonly at: CellAddress
}

export interface MovesApart {
  /** The worst day to come, and the plantings that are picked together on it. */
  readonly day: number
  readonly together: readonly PlantingPicking[]
  readonly asPlanned: Needs
  /** What was tried, the move that leaves least missing first. */
  readonly moves: readonly Move[]
}

/** Chosen: so many of the plantings that make the worst day are moved, the heaviest first. */
const MOST_MOVED = 6

/**
 * Moves the plantings that make the worst day to come, each by itself, in a copy of the workbook: an opening that lies
 * ahead a day earlier, one or two days later; else the close a day earlier, or to the day before. Null where no day to
 * come is known to be short of people or of cold.
 */
export function movesApart(document: Document): MovesApart | null {
  const workbook = new Workbook(document)
  const plan = planOf(workbook)
  if (!plan) return null
  const from = plan.asOf ?? -Infinity
  const asPlanned = needsFrom(workbook, from)
  const day = asPlanned.shortOn ?? asPlanned.overOn
  if (day === null) return null
  const together = pickedOn(workbook, day)
  const moves = together.slice(0, MOST_MOVED).flatMap(({planting}) => {
    const row = plan.rows.find((one) => one.planting === planting)
    return row ? movesOf(row, day, from) : []
  })
  const tried = moves.flatMap((move): Move[] => {
    try {
      workbook.revise({type: "enter", cells: [{at: move.at, content: isoOf(move.to)}]})
      return [{...move, ...needsFrom(workbook, from)}]
    } finally {
      workbook.show(document)
    }
  })
  return {day, together, asPlanned, moves: tried.toSorted(byNeeds)}
}

function movesOf(
  {planting, opens, closes, cells}: PlanRow,
  day: number,
  from: number,
): Omit<Move, keyof Needs>[] {
  const move = (what: Move["what"], was: number, to: number) => {
    const at = cells[what]
    return at && to >= from && to !== was ? [{planting, what, was, to, at}] : []
  }
  if (opens === null || closes === null) return []
  if (opens > from)
    return [-1, 1, 2].flatMap((days) => (opens + days <= closes ? move("open", opens, opens + days) : []))
  return [...new Set([closes - 1, day - 1])].flatMap((to) =>
    to >= opens && to < closes ? move("close", closes, to) : [],
  )
}

function needsFrom(workbook: Workbook, from: number): Needs {
  const days = rowsOf(workbook, "cutting day").filter(
    (row) => (row.number("cutting day") ?? -Infinity) >= from,
  )
  const worst = (part: "day short" | "day over") => {
    const lacks = days.map((row) => row.number(part))
    if (lacks.includes(null)) return [null, null] as const
    const most = Math.max(0, ...(lacks as number[]))
    return [most, most > 0 ? days[lacks.indexOf(most)]!.number("cutting day") : null] as const
  }
  const [[short, shortOn], [over, overOn]] = [worst("day short"), worst("day over")]
  const crop = planOf(workbook)!.rows.reduce((kg, row) => kg + (row.crop ?? 0), 0)
  return {short, shortOn, over, overOn, crop}
}

/** Fewer people missing first, then less cold missing, then more crop. */
const byNeeds = (a: Needs, b: Needs) =>
  (a.short ?? 0) - (b.short ?? 0) || (a.over ?? 0) - (b.over ?? 0) || b.crop - a.crop
