import type {FormulaNode, Graph} from "./insides"
import {sorterOf} from "./sortedFrom"

/**
 * A new engine puts its formulas in the order in which they are worked out, and the ranges between them: it would sort all
 * numbers and words among them, which rest on nothing.
 */
export function sortFormulasAlone(graph: Graph) {
  if (!graph.topSortWithScc) return
  graph.topSortWithScc = function () {
    const formulas = this.nodesSparseArray.filter((node) => node !== undefined && "isComputed" in node)
    return sorterOf(this, () => false)(
      formulas as FormulaNode[],
      () => true,
      () => {},
    )
  }
}
