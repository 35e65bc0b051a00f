import {HyperFormula} from "hyperformula"
import {describe, expect, it} from "vitest"
import {insidesOf, type FormulaNode, type Graph} from "../../../src/workbook/engine/insides"
import {sorterOf, type Reached} from "../../../src/workbook/engine/sortedFrom"
import {seeded} from "../documents"

const graphOf = (edges: number[][], gone: readonly number[] = [], ranges: readonly number[] = []): Graph => ({
  nodesSparseArray: edges.map((_, id) =>
    gone.includes(id)
      ? undefined
      : ({idInGraph: id, ...(ranges.includes(id) && {getFunctionValue() {}})} as FormulaNode),
  ),
  edgesSparseArray: edges,
  markNodeAsDirty() {},
})

type Sort = NonNullable<Graph["getTopSortedWithSccSubgraphFrom"]>

/** The engine's own, on the nodes of another graph. */
const {_dependencyGraph: dependencies} = insidesOf(HyperFormula.buildEmpty({licenseKey: "gpl-v3"}))
const engines = Object.getPrototypeOf(dependencies!.graph).getTopSortedWithSccSubgraphFrom as Sort

const ids = (nodes: readonly FormulaNode[]) => nodes.map(({idInGraph}) => idInGraph!)

/** Works along the graph from some nodes, of which only some say that they changed, and tells what was worked out and in which order. */
function walked(sort: Sort, graph: Graph, from: readonly number[], changes: (id: number) => boolean) {
  const worked: number[] = []
  const caught: number[] = []
  const {sorted, cycled} = sort.call(
    graph,
    from.map((id) => graph.nodesSparseArray[id]!),
    ({idInGraph}) => (worked.push(idInGraph!), changes(idInGraph!)),
    ({idInGraph}) => caught.push(idInGraph!),
  ) as Reached
  return {worked, caught, sorted: ids(sorted), cycled: ids(cycled)}
}

const inOrder = (all: readonly number[]) => all.toSorted((a, b) => a - b)

describe("a way over a graph", () => {
  it("passes what others rest on first, and works out only what rests on a change", () => {
    // 0 → 1 → 3 → 4, 0 → 2 → 3; 2 says that it stays what it was, and 1 as well.
    const graph = graphOf([[1, 2], [3], [3], [4], []])
    const sort = sorterOf(graph, () => false)
    const {worked, sorted} = walked(sort, graph, [0], (id) => id === 0)
    expect(inOrder(worked)).toEqual([0, 1, 2])
    expect(sorted.indexOf(3)).toBeGreaterThan(Math.max(sorted.indexOf(1), sorted.indexOf(2)))
    expect(inOrder(sorted)).toEqual([0, 1, 2, 3, 4])
  })

  it("keeps apart what rests on itself, alone or in a ring, and goes on behind it", () => {
    const graph = graphOf([[1], [2], [1, 3], [], [4]])
    const {worked, caught, cycled} = walked(
      sorterOf(graph, () => false),
      graph,
      [0, 4],
      () => true,
    )
    expect(inOrder(cycled)).toEqual([1, 2, 4])
    expect(inOrder(caught)).toEqual([1, 2, 4])
    expect(inOrder(worked)).toEqual([0, 3])
  })

  it("has a range come as soon as all that stands in it has come, one that grew out of another too", () => {
    // 0 is a cell in ranges 1 and 2; 3 rests on range 1, range 4 on range 2 and cell 5.
    for (const first of [
      [1, 2],
      [2, 1],
    ]) {
      const graph = graphOf([first, [3], [4], [], [], [4]], [], [1, 2, 4])
      const {worked} = walked(
        sorterOf(graph, () => false),
        graph,
        [5, 0],
        () => true,
      )
      expect(worked.indexOf(3)).toBeGreaterThan(Math.max(worked.indexOf(1), worked.indexOf(2)))
      expect(inOrder(worked)).toEqual([0, 1, 2, 3, 4, 5])
    }
    const chain = Array.from({length: 20_000}, (_, id) => (id < 19_999 ? [id + 1] : []))
    const long = graphOf(chain, [], [...chain.keys()])
    expect(
      walked(
        sorterOf(long, () => false),
        long,
        [0],
        () => true,
      ).worked,
    ).toHaveLength(20_000)
  })

  it("ends where it is told to, passes over nodes that are gone, and begins anew each time", () => {
    const graph = graphOf([[1, 2], [3], [], [], []], [2])
    const sort = sorterOf(graph, ({idInGraph}) => idInGraph === 1)
    for (let time = 0; time < 2; time++)
      expect(walked(sort, graph, [0], () => true)).toMatchObject({worked: [0, 1], sorted: [0, 1], cycled: []})
  })

  it("is as it was before when working out a node fails", () => {
    const graph = graphOf([[1], [2], []])
    const sort = sorterOf(graph, () => false)
    const fails = () => {
      throw new Error("cannot")
    }
    expect(() => walked(sort, graph, [0], fails)).toThrow("cannot")
    expect(walked(sort, graph, [0], () => true).worked).toEqual([0, 1, 2])
  })

  it("leaves off and goes on from there, or begins anew with what was left, ranges with it", () => {
    for (let seed = 1; seed <= 300; seed++) {
      const random = seeded(seed)
      const below = (most: number) => Math.floor(random() * most)
      const count = 2 + below(24)
      const ranges = Array.from({length: count}, (_, id) => id).filter(() => random() < 0.3)
      const edges = Array.from({length: count}, (_, id) =>
        Array.from({length: below(4)}, () => below(count)).filter((to) => to > id),
      )
      const dirty = new Set<number>()
      const left = new Set<number>()
      const graph = {
        ...graphOf(edges, [], ranges),
        markNodeAsDirty: ({idInGraph}: FormulaNode) => void dirty.add(idInGraph!),
      }
      let [rest, isUnchanged] = [0, true]
      const sort = sorterOf(graph, () => false, {
        isLate: ({idInGraph}) => !ranges.includes(idInGraph!) && rest-- <= 0,
        onLeft: ({idInGraph}) => !ranges.includes(idInGraph!) && !!left.add(idInGraph!),
        goesOn: () => isUnchanged,
      })
      const all = walked(
        sorterOf(graph, () => false),
        graph,
        [0, 1],
        () => true,
      ).worked
      let from = [0, 1]
      const worked: number[] = []
      for (let turns = 0; from.length && turns < 100; turns++) {
        dirty.clear()
        left.clear()
        ;[rest, isUnchanged] = [1 + below(3), random() < 0.5]
        const some = walked(sort, graph, from, () => true)
        worked.push(...some.worked)
        from = [...dirty]
        const due = from.flatMap((id) => (ranges.includes(id) ? edges[id]! : id))
        for (const id of due) if (!ranges.includes(id)) expect([...left], `seed ${seed}`).toContain(id)
      }
      // What was begun anew may be worked out twice; the last time is after all it rests on.
      expect(inOrder([...new Set(worked)]), `seed ${seed}`).toEqual(inOrder(all))
      for (const [id, to] of edges.flatMap((users, id) => users.map((to) => [id, to] as const)))
        if (worked.includes(id)) expect(worked.lastIndexOf(to)).toBeGreaterThan(worked.lastIndexOf(id))
    }
  })

  it("finds and works out what the engine's own does, in an order as good", () => {
    for (let seed = 1; seed <= 300; seed++) {
      const random = seeded(seed)
      const count = 1 + Math.floor(random() * 25)
      const below = (most: number) => Math.floor(random() * most)
      const graph = graphOf(
        Array.from({length: count}, () => Array.from({length: below(4)}, () => below(count))),
      )
      const sort = sorterOf(graph, () => false)
      for (let time = 0; time < 3; time++) {
        const from = [...new Set(Array.from({length: 1 + below(3)}, () => below(count)))]
        const still = below(5) // some nodes come out as they were
        const changes = (id: number) => id % 5 !== still
        const [own, other] = [walked(sort, graph, from, changes), walked(engines, graph, from, changes)]
        for (const part of ["worked", "caught", "sorted", "cycled"] as const)
          expect(inOrder(own[part]), `seed ${seed}, ${part}`).toEqual(inOrder(other[part]))
        for (const [at, id] of own.sorted.entries())
          for (const to of graph.edgesSparseArray[id]!)
            if (!own.cycled.includes(to)) expect(own.sorted.indexOf(to), `seed ${seed}`).toBeGreaterThan(at)
      }
    }
  })
})
