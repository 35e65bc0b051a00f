import type {Dependencies} from "./insides"

/**
 * Connects a range with its cells for the first formula that uses it: then it has a number in the graph. The engine would look
 * at each of its cells again for every further one.
 */
export function connectRangesOnce(dependencies: Dependencies) {
  const connect = dependencies.processCellDependencies
  if (!connect) return
  dependencies.processCellDependencies = function (on, user) {
    const rest = on.filter((one) => {
      const id = isRange(one) ? this.getRange(one.start, one.end)?.idInGraph : undefined
      if (id === undefined || user.idInGraph === undefined) return true
      this.graph.addEdge(id, user.idInGraph)
      return false
    })
    connect.call(this, rest, user)
  }
}

const isRange = (one: unknown): one is {start: unknown; end: unknown} =>
  typeof one === "object" && one !== null && "start" in one && "end" in one
