import type {Dependencies, RangeNode} from "./insides"

/**
 * Connects a range with its cells for the first formula that uses it. The engine would look at each of its cells again for
 * every further one.
 */
export function connectRangesOnce(dependencies: Dependencies) {
  const connect = dependencies.processCellDependencies
  if (!connect) return
  const connected = new WeakSet<RangeNode>()
  dependencies.processCellDependencies = function (on, user) {
    const nodesOf = (one: unknown) => (isRange(one) ? this.getRange(one.start, one.end) : undefined)
    const rest = on.filter((one) => {
      const node = nodesOf(one)
      const id = node?.idInGraph
      // One that left the graph has no number there.
      if (!node || id === undefined || user.idInGraph === undefined || !connected.has(node)) return true
      this.graph.addEdge(id, user.idInGraph)
      return false
    })
    connect.call(this, rest, user)
    for (const one of rest) {
      const node = nodesOf(one)
      if (node) connected.add(node)
    }
  }
}

const isRange = (one: unknown): one is {start: unknown; end: unknown} =>
  typeof one === "object" && one !== null && "start" in one && "end" in one
