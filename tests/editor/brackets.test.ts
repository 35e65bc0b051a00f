import {describe, expect, it} from "vitest"
import {bracketsIn, pairAt} from "../../src/editor/brackets"

describe("the brackets of a formula", () => {
  it("are paired by kind, from the inside out", () => {
    expect(bracketsIn("=IF((A1),{1,2})")).toEqual({
      pairs: [
        [4, 7],
        [9, 13],
        [3, 14],
      ],
      unclosed: [],
      extra: [],
    })
  })

  it.each([
    ["=SUM((A1)", [4], []],
    ["=SUM((A1", [4, 5], []],
    ["=A1)", [], [3]],
    ["=)(", [2], [1]],
    ["=({1)}", [1], [4]],
    ['=")"&(A1', [5], []],
    ["='Root (old'!A1", [], []],
  ])("stand alone where their fellow is missing: %s", (formula, unclosed, extra) =>
    expect(bracketsIn(formula)).toMatchObject({unclosed, extra}),
  )
})

describe("the pair at the caret", () => {
  /** The formula with the caret where "|" stands. */
  const pair = (marked: string) => pairAt(marked.replace("|", ""), marked.indexOf("|"))

  it.each([
    ["=SUM(|A1)", [4, 7]],
    ["=SUM|(A1)", [4, 7]],
    ["=SUM(A1)|", [4, 7]],
    ["=SUM(A1|)", [4, 7]],
    ["=((A1)|)", [2, 5]], // the bracket before the caret goes first
  ])("is that of %s", (marked, expected) => expect(pair(marked)).toEqual(expected))

  it.each(["=SUM(A|1)", "=SUM(|A1", "words (|like these)", "=A1)|"])("is none at %s", (marked) =>
    expect(pair(marked)).toBeNull(),
  )
})
