import {dayOf} from "../../functions/calendar"
import {dateText} from "../editor/display"
import type {ReadingMark} from "../workbook/document"
import type {ReadingState} from "../workbook/reading"

/** "4f2a 91c0 7be3": enough of a digest to be told over the telephone. */
export const shortDigest = (digest: string) => digest.slice(0, 12).replace(/(.{4})(?=.)/g, "$1 ")

/** Who made a reading copy and when, and what became of it since. */
export function readingWords({madeBy, on, digest}: ReadingMark, state: ReadingState | null): string {
  const day = dayOf(on)
  const made = `A reading copy, made by ${madeBy}${day === null ? "" : ` on ${dateText(day)}`}.`
  return state === null ? made : `${made} ${STATES[state]} Digest ${shortDigest(digest)}.`
}

const STATES: Record<ReadingState, string> = {
  unchanged: "Unchanged since it was made.",
  changed: "Changed since it was made: what is written in it differs.",
  "other results":
    "What is written in it is unchanged, but this planner works out other results than the one that made it.",
  "not checked": "Whether it has changed cannot be checked on this page.",
}
