import {isRangeNode, type FormulaNode, type Graph} from "./insides"

/** What was reached of a graph, each after what it rests on, and apart what rests on itself. */
export interface Reached {
  readonly sorted: FormulaNode[]
  readonly cycled: FormulaNode[]
}

const NONE: readonly number[] = []

/** How a walk over a graph may leave off before its end, to be gone on with by the next. */
export interface Pauses {
  /** Whether time is up; asked before a formula is worked out. */
  isLate(node: FormulaNode): boolean
  /** Takes what is left to work out, and says whether that is all that need be told: else it takes what rests on it too. */
  onLeft(node: FormulaNode): boolean
  /** Whether the graph is as it was left, so that the way need not be sought again. */
  goesOn(): boolean
}

const NEVER: Pauses = {isLate: () => false, onLeft: () => true, goesOn: () => false}

/** A way over the graph, each node after what it rests on, and how far it was gone. */
interface Way {
  readonly order: readonly number[]
  /** Ranges all of whose cells have come. */
  readonly ready: number[]
  at: number
}

/**
 * Does what the engine does to find its way after an edit, and to work along it: goes over all that rests on some nodes, by
 * Tarjan's algorithm (1972, Depth-first search and linear graph algorithms, SIAM J. Comput. 1), and works out each that has to
 * be, with `operate`, which says whether it changed. The engine makes three lists for each node that it passes; here what is
 * kept of a node stays from one edit to the next. Beyond a node that `isEnd` it does not go. Where time is up, what is left is
 * marked as dirty, so that it is worked out whether or not this way is gone on with.
 *
 * A range comes as soon as all that stands in it has come. What is kept with it is then forgotten before any formula reads it,
 * also one that rests on another range with the same cells, as a formula that looks up in the first column of a table does.
 */
export function sorterOf(graph: Graph, isEnd: (node: FormulaNode) => boolean, pauses = NEVER) {
  let room = 0
  const numbers = () => new Int32Array(room)
  const marks = () => new Uint8Array(room)
  let [entered, low, next, owed] = [numbers(), numbers(), numbers(), numbers()]
  let [isLast, isLeft, isKnotted, isDue, isTaken] = [marks(), marks(), marks(), marks(), marks()]
  let leftOff: Way | null = null
  const usersOf = (id: number) => graph.edgesSparseArray[id] ?? NONE

  const wayFrom = (starts: readonly number[]): Way => {
    const {nodesSparseArray: nodes} = graph
    const [way, open, order]: [number[], number[], number[]] = [[], [], []]
    let time = 0
    const enter = (id: number) => {
      entered[id] = low[id] = ++time
      if (isEnd(nodes[id]!)) isLast[id] = 1
      way.push(id)
      open.push(id)
    }
    /** The next node to go to from one on the way; none once all were looked at. */
    const further = (id: number): number | undefined => {
      const users = isLast[id] ? NONE : usersOf(id)
      while (next[id]! < users.length) {
        const to = users[next[id]!++]!
        const node = nodes[to]
        if (node === undefined) continue
        if (isRangeNode(node)) owed[to]!++
        if (entered[to] === 0) return to
        if (to === id) isKnotted[id] = 1
        if (!isLeft[to]) low[id] = Math.min(low[id]!, entered[to]!)
      }
      return undefined
    }
    const leave = (id: number) => {
      way.pop()
      const before = way.at(-1)
      if (before !== undefined) low[before] = Math.min(low[before]!, low[id]!)
      if (low[id] !== entered[id]) return
      const isAlone = open.at(-1) === id
      for (let one = -1; one !== id;) {
        one = open.pop()!
        isLeft[one] = 1
        if (!isAlone) isKnotted[one] = 1
        order.push(one)
      }
    }
    for (const start of starts.toReversed()) {
      if (entered[start] !== 0) continue
      enter(start)
      for (let id = way.at(-1); id !== undefined; id = way.at(-1)) {
        const to = further(id)
        if (to === undefined) leave(id)
        else enter(to)
      }
    }
    for (const start of starts) isDue[start] = 1
    return {order: order.toReversed(), ready: [], at: 0}
  }

  const forget = ({order}: Way) => {
    for (const id of order) {
      entered[id] = low[id] = next[id] = owed[id] = 0
      isLast[id] = isLeft[id] = isKnotted[id] = isDue[id] = isTaken[id] = 0
      for (const to of usersOf(id)) isDue[to] = owed[to] = 0
    }
  }

  const leaveOff = (way: Way) => {
    const {nodesSparseArray: nodes} = graph
    leftOff = way
    const further = new Set<number>()
    for (const id of way.order.slice(way.at)) {
      const node = nodes[id]!
      if (isTaken[id] || !(isDue[id] || further.has(id))) continue
      if (isDue[id]) graph.markNodeAsDirty(node)
      if (!pauses.onLeft(node)) for (const to of usersOf(id)) further.add(to)
    }
  }

  return (
    from: readonly FormulaNode[],
    operate: (node: FormulaNode) => boolean,
    onCycle: (node: FormulaNode) => void,
  ): Reached => {
    const {nodesSparseArray: nodes} = graph
    let way = leftOff
    leftOff = null
    if (way && !pauses.goesOn()) {
      forget(way)
      way = null
    }
    if (nodes.length > room) {
      room = Math.ceil(nodes.length * 1.5) // chosen
      ;[entered, low, next, owed] = [numbers(), numbers(), numbers(), numbers()]
      ;[isLast, isLeft, isKnotted, isDue, isTaken] = [marks(), marks(), marks(), marks(), marks()]
    }
    way ??= wayFrom(
      from.flatMap(({idInGraph}) => (idInGraph !== undefined && nodes[idInGraph] ? idInGraph : [])),
    )
    const {order, ready} = way
    const [sorted, cycled]: [FormulaNode[], FormulaNode[]] = [[], []]
    const take = (id: number) => {
      const node = nodes[id]!
      isTaken[id] = 1
      ;(isKnotted[id] ? cycled : sorted).push(node)
      if (isKnotted[id]) onCycle(node)
      const isChanged = isKnotted[id] || (isDue[id] && operate(node))
      for (const to of usersOf(id)) {
        if (nodes[to] === undefined) continue
        if (isChanged) isDue[to] = 1
        if (owed[to]! > 0 && !isLast[id] && --owed[to]! === 0 && !isKnotted[to]) ready.push(to)
      }
    }
    try {
      for (; way.at < order.length; way.at++) {
        const id = order[way.at]!
        if (!isTaken[id]) {
          if (isDue[id] && pauses.isLate(nodes[id]!)) {
            leaveOff(way)
            break
          }
          take(id)
        }
        for (let range = ready.pop(); range !== undefined; range = ready.pop()) take(range)
      }
    } finally {
      if (!leftOff) forget(way)
    }
    return {sorted, cycled}
  }
}
