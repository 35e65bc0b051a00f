import {rowsOf} from "../season"
import {soughtAs} from "../plantingName"
import type {Checked} from "./checked"
import type {Finding} from "./finding"
import {pickingsByName} from "./pickingsByName"

/** Pickings of a planting on days after the one on which it was closed to fern. */
export function pickedAfterClose({workbook, words}: Checked): Finding[] {
  const pickings = pickingsByName(workbook)
  return rowsOf(workbook, "name of planting").flatMap((row): Finding[] => {
    const [name, closed, close] = [row.word("name of planting"), row.number("closed"), row.cells.closed]
    if (name === "" || closed === null || !close) return []
    const later = (pickings.get(soughtAs(name)) ?? []).filter(({day}) => day > closed)
    const last = later.toSorted((a, b) => b.day - a.day)[0]
    if (!last) return []
    const [was, ended] = [words.shown(last.at, last.day), words.shown(close, closed)]
    const sentence = `${name} was closed to fern on ${ended} and picked on ${was}: one of the two is off`
    return [{rule: "picked after its close", cells: [close, ...later.map(({at}) => at)], sentence}]
  })
}
