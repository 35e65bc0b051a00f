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
  for (let steps = 0; next.length && found.length < most && steps < MOST_STEPS; steps++) {
    const at = next.shift()!
    for (const {cells} of originOf(workbook, at).inputs) {
      if (cells.length > LARGEST_RANGE) continue
      for (const cell of cells) {
        const key = `${cell.sheet}:${cell.row}:${cell.col}`
        if (seen.has(key)) continue
        seen.add(key)
        if (workbook.formulaAt(cell) !== null) next.push(cell)
        else if (typeof workbook.valueAt(cell) === "number" && !workbook.isDateAt(cell)) found.push(cell)
      }
    }
  }
  return found.slice(0, most)
}
