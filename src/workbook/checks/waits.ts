import {sheetWith} from "../document"
import {rowsOf} from "../season"
import type {Checked} from "./checked"
import type {Finding} from "./finding"

/** Pickings on a day on which the wait after spraying, typed from the product's label, was not over. */
export function pickedInWait({document, workbook, words}: Checked): Finding[] {
  if (sheetWith(document, "wait planting") < 0) return []
  const waits = rowsOf(workbook, "wait planting").flatMap((row) => {
    const [name, from, until] = [row.word("wait planting"), row.number("sprayed"), row.number("pick again")]
    return name === "" || from === null || until === null
      ? []
      : [{name, from, until, at: row.cells["pick again"]!}]
  })
  return rowsOf(workbook, "picking planting").flatMap((row): Finding[] => {
    const [name, day, at] = [
      row.word("picking planting"),
      row.number("picking day"),
      row.cells["picking day"],
    ]
    if (day === null || at === undefined) return []
    const wait = waits.find((one) => one.name === name && one.from <= day && day < one.until)
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
