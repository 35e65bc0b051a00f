import {originOf} from "../workbook/trace"
import type {CellAddress} from "../workbook/document"
import type {Workbook} from "../workbook/workbook"

/** Chosen: ranges larger than this are tables, whose single cells nobody works back. */
const LARGEST_RANGE = 12
const MOST_STEPS = 400

/** The cells with a typed or measured number that a cell rests on, those nearest to it first. */
export function inputsBehind(workbook: Workbook, of: CellAddress, most = 60): readonly CellAddress[] {
  const found: CellAddress[] = []
  const seen = new Set<string>()
  const next = [of]
  const isWorkedOut = (cell: CellAddress) => workbook.formulaAt(cell) !== null
  for (let steps = 0; next.length && found.length < most && steps < MOST_STEPS; steps++) {
    const at = next.shift()!
    for (const {cells} of originOf(workbook, at).inputs) {
      const isTable = cells.length > LARGEST_RANGE
      for (const cell of isTable ? ends(cells.filter(isWorkedOut)) : cells) {
        const key = `${cell.sheet}:${cell.row}:${cell.col}`
        if (seen.has(key)) continue
        seen.add(key)
        if (isWorkedOut(cell)) next.push(cell)
        else if (typeof workbook.valueAt(cell) === "number" && !workbook.isDateAt(cell)) found.push(cell)
      }
    }
  }
  return found.slice(0, most)
}

/** The first and the last: the rows of a worked-out column rest on the same inputs, but for those of their own row. */
const ends = (cells: readonly CellAddress[]) => [...cells.slice(0, 1), ...cells.slice(1).slice(-1)]
