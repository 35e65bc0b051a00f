/**
 * What can be done in each state of a decision that comes back every year, and where each act leads. One state after another,
 * one act after another, in flat arrays: there may be hundreds of thousands.
 */
export interface Acts {
  /** The acts of state s are those from `first[s]` up to but not including `first[s + 1]`. */
  readonly first: Int32Array
  /** The leads of act a are those from `leads[a]` up to but not including `leads[a + 1]`. */
  readonly leads: Int32Array
  /** A lead's state of next year and its weight: a chance, or a share of the way between two nodes. */
  readonly to: Int32Array
  readonly weight: Float64Array
}

/** A state of next year and its weight. */
export type Lead = readonly [state: number, weight: number]

/** Acts from a list of states, each a list of acts, each a list of leads. */
export function actsOf(states: readonly (readonly (readonly Lead[])[])[]): Acts {
  const acts = states.flat()
  const leads = acts.flat()
  return {
    first: ends(states),
    leads: ends(acts),
    to: Int32Array.from(leads, ([state]) => state),
    weight: Float64Array.from(leads, ([, weight]) => weight),
  }
}

function ends(lists: readonly (readonly unknown[])[]): Int32Array {
  const at = new Int32Array(lists.length + 1)
  for (const [i, {length}] of lists.entries()) at[i + 1] = at[i]! + length
  return at
}

/**
 * One year back (Bellman's equation): for each state the most that an act pays at once and, times `factor`, in what it leads to.
 * `pays` holds one sum for each act, -Infinity where it is not allowed; a state without acts is worth -Infinity. Writes into
 * `worth`, which may be `next` itself where the problem has no end, and into `best` the number of the act within its state.
 */
export function improve(
  {first, leads, to, weight}: Acts,
  pays: Float64Array,
  factor: number,
  next: Float64Array,
  worth: Float64Array,
  best: Int32Array | null = null,
): void {
  for (let state = 0; state < first.length - 1; state++) {
    let most = -Infinity
    let chosen = -1
    for (let act = first[state]!; act < first[state + 1]!; act++) {
      let then = 0
      for (let lead = leads[act]!; lead < leads[act + 1]!; lead++) then += weight[lead]! * next[to[lead]!]!
      const sum = pays[act]! + factor * then
      if (sum > most) {
        most = sum
        chosen = act - first[state]!
      }
    }
    worth[state] = most
    if (best) best[state] = chosen
  }
}

/** A place between nodes that lie at equal distances from `low` to `high`: the node below it and the share of the way on. */
export interface Place {
  readonly node: number
  readonly share: number
}

/** Where a value lies among nodes; a value beyond the ends counts as the end. */
export function placeAmong(value: number, low: number, high: number, nodes: number): Place {
  const place = Math.min(Math.max(((value - low) / (high - low)) * (nodes - 1), 0), nodes - 1)
  const node = Math.min(Math.floor(place), nodes - 2)
  return {node, share: place - node}
}
