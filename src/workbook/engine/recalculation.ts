import type {HyperFormula} from "hyperformula"
import {insidesOf, type FormulaNode} from "./insides"
import {sorterOf} from "./sortedFrom"

/** What the engine works out after an edit, and when. */
export interface Recalculation {
  /** The sheets, by the engine's numbers, whose formulas keep their values until `settle`. Nothing else may rest on them. */
  letWait(sheets: ReadonlySet<number>): void
  /** The sheets, by the engine's numbers, on which something is left to work out. What rests on them is not among them. */
  readonly owing: ReadonlySet<number>
  /**
   * From here on nothing waits: the engine's next batch works out what is owed. With a time, ms, it leaves off once it has worked
   * so long, and what is left stays owed.
   */
  settle(time?: number): void
}

/**
 * Takes three liberties with the engine's way of working out an edit. An engine without these parts calculates the same,
 * more slowly.
 *
 * It stops at a cell whose new value is the old one, but it compares objects, and makes a new one for each date and each
 * error: all that rests on a date would be worked out anew each time, changed or not. The old object is put back where the
 * new one says the same.
 *
 * A new engine has worked everything out, and yet holds what it met before its names were known for owed: its first edit would
 * work out the whole workbook again. That is struck off.
 *
 * And it works out everything at once. What nobody looks at can wait: such a formula keeps its value, which stops the engine
 * there, and is marked as one that the next batch has to begin with. Beyond it no way is looked for. And once time is up it
 * leaves off, and the next batch goes on from there, where nothing is edited in between.
 */
export function recalculationOf(engine: HyperFormula): Recalculation {
  const {_evaluator: evaluator, _dependencyGraph: dependencies} = insidesOf(engine)
  const graph = dependencies?.graph
  const work = evaluator?.recomputeFormulaVertexValue
  dependencies?.clearDirtyVertices?.()
  let waiting: ReadonlySet<number> = new Set()
  let owing = new Set<number>()
  let time = Infinity
  let isSettling = false // nothing was edited since the batch before
  let ends: number | null = null // when time is up: the engine first looks for its way, however long that takes
  const isLate = (node: FormulaNode) => {
    if (time === Infinity || !isInCell(node) || !node.isComputed()) return false
    const now = performance.now()
    ends ??= now + time
    return now > ends
  }
  if (evaluator && work)
    evaluator.recomputeFormulaVertexValue = (vertex) => {
      const before = vertex.isComputed() ? vertex.getCellValue() : undefined
      const sheet = vertex.cellAddress?.sheet ?? -1
      if (before !== undefined && graph && waiting.has(sheet)) {
        graph.markNodeAsDirty(vertex)
        owing.add(sheet)
        return before
      }
      const now = work.call(evaluator, vertex)
      return !vertex.array && saysTheSame(before, now) ? vertex.setCellValue(before) : now
    }
  if (graph?.getTopSortedWithSccSubgraphFrom && graph.nodesSparseArray && graph.edgesSparseArray)
    graph.getTopSortedWithSccSubgraphFrom = sorterOf(
      graph,
      (node) =>
        node.cellAddress !== undefined &&
        waiting.has(node.cellAddress.sheet) &&
        node.isComputed() &&
        node.getCellValue() !== undefined,
      {
        isLate,
        onLeft(node) {
          if (isInCell(node)) owing.add(node.cellAddress!.sheet)
          return isInCell(node)
        },
        goesOn: () => isSettling,
      },
    )
  return {
    letWait(sheets) {
      waiting = sheets
      time = Infinity
      isSettling = false
    },
    get owing() {
      return owing
    },
    settle(given = Infinity) {
      isSettling = owing.size > 0
      waiting = new Set()
      owing = new Set()
      time = given
      ends = null
    },
  }
}

/** Names are on no sheet, and soon read. */
const isInCell = ({cellAddress}: FormulaNode) => (cellAddress?.sheet ?? -1) >= 0

function saysTheSame(one: unknown, other: unknown): boolean {
  if (one === other || !isObject(one) || !isObject(other) || one.constructor !== other.constructor)
    return false
  const parts = Object.keys(other)
  return (
    parts.length > 0 &&
    parts.length === Object.keys(one).length &&
    parts.every((part) => Object.is(one[part], other[part]))
  )
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null
