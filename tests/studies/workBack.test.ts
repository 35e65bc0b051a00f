import {describe, expect, it} from "vitest"
import {findInput, workBack} from "../../src/studies/workBack"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

describe("finding an input", () => {
  it.each<[string, (x: number) => number | null, number, number, number]>([
    ["a straight line", (x) => 3 * x + 2, 1, 17, 5],
    ["a falling line", (x) => 10 - x, 1, 4, 6],
    ["a square, on the side it starts from", (x) => x * x, 1, 49, 7],
    ["a curve that flattens", (x) => 100 * (1 - Math.exp(-x / 10)), 1, 90, 10 * Math.log(10)],
    ["a curve that turns steeply", (x) => Math.atan(50 * (x - 3)), 1, 1.2, 3 + Math.tan(1.2) / 50],
    ["from nought", (x) => x / 1000, 0, 5, 5000],
    ["with a gap where nothing can be worked out", (x) => (x < 0.5 ? null : Math.log(x)), 1, 2, Math.exp(2)],
  ])("of %s", (_, give, from, wanted, input) => {
    const found = findInput(give, from, wanted)!
    expect(found.isReached).toBe(true)
    expect(found.input).toBeCloseTo(input, 5)
    expect(found.tries).toBeLessThan(60)
  })
  it("stays between the least and the most", () => {
    const found = findInput((x) => 2 * x, 1, 100, 0, 20)!
    expect(found).toMatchObject({input: 20, gives: 40, isReached: false})
  })
  it("gives the nearest where the result moves in steps", () => {
    const found = findInput((x) => Math.floor(x) * 7, 1, 24)!
    expect([found.isReached, found.gives]).toEqual([false, 21])
  })
  it("finds nothing where nothing can be worked out", () => {
    expect(findInput(() => null, 1, 5)).toBeNull()
  })
})

describe("working back in a workbook", () => {
  const document = documentOf(
    sheet("Plan", ["Price", column("Income", {formula: "=A1*Rate-20"})], [[2, "="]]),
    sheet("Named values", ["Name", "Value"], [["Rate", 30]], {names: true}),
  )
  const ask = {document, result: cellAt("B1"), wanted: 100, least: null, most: null}
  it("changes a cell, or a named value", () => {
    expect(workBack({...ask, input: cellAt("A1")})).toMatchObject({isReached: true, gives: 100})
    expect(workBack({...ask, input: cellAt("A1")})!.input).toBeCloseTo(4, 6)
    expect(workBack({...ask, input: {sheet: 1, row: 0, col: 1}})!.input).toBeCloseTo(60, 6)
  })
  it("leaves the document as it is", () => {
    const before = structuredClone(document)
    workBack({...ask, input: cellAt("A1")})
    expect(document).toEqual(before)
  })
  it("needs a number to begin with", () => {
    expect(workBack({...ask, input: {sheet: 1, row: 0, col: 0}})).toBeNull()
  })
})
