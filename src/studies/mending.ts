import type {Edit} from "../workbook/edit"
import type {Document} from "../workbook/document"
import {planOf, type Plan} from "../workbook/plan"
import {Workbook} from "../workbook/workbook"

/** What is tried: edits that would each mend something in the workbook. */
export interface MendingInput {
  readonly document: Document
  readonly edits: readonly Edit[]
}

/** What one edit moves in the plan. Days as in functions/calendar.ts, crop in kg; null is not known, or not cut. */
export interface Moved {
  readonly closes: readonly {
    readonly planting: string
    readonly was: number | null
    readonly now: number | null
  }[]
  /** The crop of the farm. */
  readonly crop: {readonly was: number; readonly now: number}
}

/** Tries each edit by itself in a copy of the workbook, so that the open one is not touched. Null where the engine cannot. */
export function mending({document, edits}: MendingInput): readonly (Moved | null)[] {
  const workbook = new Workbook(document)
  const before = planOf(workbook)
  if (!before) return edits.map(() => null)
  return edits.map((edit) => {
    try {
      workbook.revise(edit, before.sheet)
      const after = planOf(workbook)
      return after && movedBetween(before, after)
    } catch {
      return null
    } finally {
      workbook.show(document, before.sheet)
    }
  })
}

/** The plan before and after, row by row: an edit of cells leaves the rows where they are. */
function movedBetween(before: Plan, after: Plan): Moved {
  const closes = before.rows.flatMap(({row, planting, closes: was}) => {
    const now = after.rows.find((one) => one.row === row)?.closes ?? null
    return was === now ? [] : [{planting, was, now}]
  })
  return {closes, crop: {was: cropOf(before), now: cropOf(after)}}
}

const cropOf = ({rows}: Plan) => rows.reduce((kg, {crop}) => kg + (crop ?? 0), 0)

/** Chosen: a close that comes to be known, or is no longer, weighs as a season of this many days. */
const SEASON = 60
/** Chosen: less than this share of the crop is no move. */
const LEAST_SHARE = 5e-4

/** By how many days the closes move in all; 0 where nothing moves. A move of the crop alone counts as less than a day. */
export function daysMoved({closes, crop}: Moved): number {
  const days = closes.reduce(
    (sum, {was, now}) => sum + (was === null || now === null ? SEASON : Math.abs(now - was)),
    0,
  )
  return days > 0 ? days : cropMoves(crop) ? Math.min(0.9, shareOf(crop)) : 0
}

export const cropMoves = (crop: Moved["crop"]) => shareOf(crop) >= LEAST_SHARE

const shareOf = ({was, now}: Moved["crop"]) => Math.abs(now - was) / Math.max(was, now, 1)
