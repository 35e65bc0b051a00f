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
      // All that a formula rests on is told at once, so that its number is the last where it has been told.
      const users = this.graph.edgesSparseArray[id]
      if (users && users.at(-1) !== user.idInGraph) users.push(user.idInGraph)
      return false
    })
    connect.call(this, rest, user)
  }
}

const isRange = (one: unknown): one is {start: unknown; end: unknown} =>
  typeof one === "object" && one !== null && "start" in one && "end" in one
