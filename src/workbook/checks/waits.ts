import {rowsOf} from "../season"
import {isSameName} from "../plantingName"
import {waitsIn} from "../waits"
import type {Checked} from "./checked"
import type {Finding} from "./finding"

/** Pickings on a day on which the wait after spraying, typed from the product's label, was not over. */
export function pickedInWait({workbook, words}: Checked): Finding[] {
  const waits = waitsIn(workbook)
  return rowsOf(workbook, "picking planting").flatMap((row): Finding[] => {
    const [name, day, at] = [
      row.word("picking planting"),
      row.number("picking day"),
      row.cells["picking day"],
    ]
    if (day === null || at === undefined) return []
    const wait = waits.find((one) => isSameName(one.planting, name) && one.from <= day && day < one.until)
    if (!wait) return []
    const [was, again] = [words.shown(at, day), words.shown(wait.at, wait.until)]
    return [
      {
        rule: "picked in a wait",
        cells: [at, wait.at],
        sentence: `${name} was picked on ${was}, and by the wait of its label may be picked again from ${again}: ask before it is sold`,
      },
    ]
  })
}
