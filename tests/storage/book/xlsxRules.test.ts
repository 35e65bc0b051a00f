import {expect, it} from "vitest"
import {xlsxRules} from "../../../src/storage/book/xlsxRules"

const rules = [null, {least: 0, most: null, isDay: false}]
const cellsOf = (rows: number) =>
  /sqref="(.*?)"/.exec(xlsxRules({rules, rows: Array.from({length: rows}, () => [])}))?.[1]

it("ends a rule's column where a program that goes through each of its cells comes to an end", () => {
  expect(cellsOf(7)).toBe("B2:B10000")
  expect(cellsOf(4_999)).toBe("B2:B10000")
  expect(cellsOf(5_000)).toBe("B2:B100000")
  expect(cellsOf(60_000)).toBe("B2:B1048576")
})
