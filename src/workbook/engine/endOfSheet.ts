import type {HyperFormula} from "hyperformula"
import {insidesOf, isRangeNode, type Dependencies} from "./insides"

/**
 * Ends a sheet of the engine after so many rows, where it has more, no formula spills into one of them and none points at one. By
 * itself it never does, though cells are emptied: whole columns would go on below the last row with blanks that they do not have
 * when the sheet is opened afresh.
 */
export function endSheetAfter(engine: HyperFormula, sheet: number, rows: number) {
  const {_dependencyGraph: dependencies} = insidesOf(engine)
  const held = dependencies?.addressMapping?.mapping?.get(sheet)
  if (!dependencies || !held) return
  while (held.height > rows && !isTaken(dependencies, sheet, held.height - 1, held.width)) held.height--
}

/** Whether a formula spills into a row, or anything but whole columns takes a cell of it. */
function isTaken({addressMapping, graph}: Dependencies, sheet: number, row: number, width: number) {
  return Array.from({length: width}, (_, col) => addressMapping?.getCell?.({sheet, row, col})).some(
    (cell) =>
      cell?.array !== undefined ||
      (graph.edgesSparseArray[cell?.idInGraph ?? -1] ?? []).some((user) => {
        const node = graph.nodesSparseArray[user]
        return node !== undefined && !(isRangeNode(node) && node.range?.end.row === Infinity)
      }),
  )
}
