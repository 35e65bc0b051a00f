import {isoOf} from "../../../functions/calendar"
import {rowsOf} from "../season"
import {soughtAs} from "../plantingName"
import type {Checked} from "./checked"
import type {Finding} from "./finding"
import {pickingsByName} from "./pickingsByName"

/** Chosen: in a cool spring pickings lie 4 to 5 days apart, by the pages of Michigan State University and San Joaquin County. */
const LONGEST_GAP = 5

/** Chosen: pickings further from the opening than this belong to another season. */
const SEASON_DAYS = 200

/** Plantings whose first picking came before the opening of their plan, or long after it: what counts from the opening is off. */
export function openedOtherwise({workbook, words}: Checked): Finding[] {
  const pickings = pickingsByName(workbook)
  return rowsOf(workbook, "planting").flatMap((row): Finding[] => {
    const [name, opens, open] = [row.word("planting"), row.number("open"), row.cells.open]
    if (name === "" || opens === null || !open) return []
    const days = (pickings.get(soughtAs(name)) ?? []).map(({day}) => day)
    const near = days.filter((day) => Math.abs(day - opens) <= SEASON_DAYS)
    if (near.length === 0) return []
    const first = Math.min(...near)
    if (first >= opens && first <= opens + LONGEST_GAP) return []
    const [was, planned] = [words.shown(open, first), words.shown(open, opens)]
    return [
      {
        rule: "opened otherwise",
        cells: [open],
        sentence: `${name} was first picked on ${was} and opens on ${planned} by the plan: the limits that count from the opening are off`,
        fix: {words: `Put ${was} in`, edit: {type: "enter", cells: [{at: open, content: isoOf(first)}]}},
      },
    ]
  })
}
