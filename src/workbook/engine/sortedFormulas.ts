import {isRangeNode, type FormulaNode, type Graph} from "./insides"
import {sorterOf} from "./sortedFrom"

/**
 * A new engine puts its formulas and ranges in the order in which they are worked out, and nothing else: it would sort all
 * numbers and words among them, which rest on nothing.
 */
export function sortFormulasAlone(graph: Graph) {
  if (!graph.topSortWithScc) return
  graph.topSortWithScc = function () {
    const restingOnOthers = this.nodesSparseArray.filter((node) => node !== undefined && rests(node))
    return sorterOf(this, () => false)(
      restingOnOthers as FormulaNode[],
      () => true,
      () => {},
    )
  }
}

const rests = (node: FormulaNode) => "isComputed" in node || isRangeNode(node)
