import type {Dependencies, RangeNode} from "./insides"

/**
 * Connects a range with its cells for the first formula that uses it. The engine would look at each of its cells again for
 * every further one.
 */
export function connectRangesOnce(dependencies: Dependencies) {
  const connect = dependencies.processCellDependencies
  if (!connect) return
  /** Ranges and the number under which they were connected: one that left the graph comes back under another. */
  const connected = new WeakMap<RangeNode, number>()
  dependencies.processCellDependencies = function (on, user) {
    const nodesOf = (one: unknown) => (isRange(one) ? this.getRange(one.start, one.end) : undefined)
    const rest = on.filter((one) => {
      const node = nodesOf(one)
      const id = node?.idInGraph
      if (!node || id === undefined || user.idInGraph === undefined || connected.get(node) !== id) return true
      this.graph.addEdge(id, user.idInGraph)
      return false
    })
    connect.call(this, rest, user)
    for (const one of rest) {
      const node = nodesOf(one)
      if (node?.idInGraph !== undefined) connected.set(node, node.idInGraph)
    }
  }
}

const isRange = (one: unknown): one is {start: unknown; end: unknown} =>
  typeof one === "object" && one !== null && "start" in one && "end" in one
