import {columnWith, sheetWith, type Part} from "../../workbook/document"
import type {Entry} from "../../workbook/edit"
import {chosenWord} from "../selection"
import type {Command} from "../store"

/** Puts the numbers and likely ranges of the chosen set into the sheet of crop values, by their names. */
export const bringValueSet: Command = (state) => {
  const {document, cell} = state
  const set = chosenWord(state, "set")
  const into = sheetWith(document, "value name")
  if (set === null || into < 0) return null
  const {rows} = document.sheets[into]!
  const nameAt = columnWith(document, into, "value name")
  const cells = document.sheets[cell.sheet]!.rows.flatMap((from): Entry[] => {
    const read = (part: Part) => from[columnWith(document, cell.sheet, part)] ?? null
    const row = read("set") === set ? rows.findIndex((one) => one[nameAt] === read("set name")) : -1
    if (row < 0) return []
    return PAIRS.flatMap(([part, target]): Entry[] => {
      const col = columnWith(document, into, target)
      const content = read(part)
      return col < 0 || rows[row]![col] === content ? [] : [{at: {sheet: into, row, col}, content}]
    })
  })
  return cells.length ? {type: "enter", cells, name: `the set “${set}” put in use`} : null
}

const PAIRS = [
  ["set value", "value"],
  ["set likely low", "value likely low"],
  ["set likely high", "value likely high"],
] as const
