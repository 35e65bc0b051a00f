import {expect, it} from "vitest"
import {column, documentOf, sheet} from "../documents"
import {inWords, mended, told} from "./looking"

const trial = (content: string, more = {}) =>
  documentOf(sheet("Prices", [column("Week"), column("Price", {unit: "money/kg", ...more})], [[1, content]]))

it("tells a text that reads as a number where the column means numbers, and reads a plain one as what it is", () => {
  expect(inWords(trial("3.2"), "number as text")).toEqual([
    "B1: Price of 1: “3.2” is text, a number is needed",
  ])
  expect(mended(trial("3.2"), "number as text").sheets[0]!.rows[0]![1]).toBe(3.2)
  expect(mended(trial("\u22123.2", {format: 2}), "number as text").sheets[0]!.rows[0]![1]).toBe(-3.2)
})

it("does not read a comma, which may mean two things, by itself", () => {
  expect(inWords(trial("9,8"), "number as text")).toEqual([
    "B1: Price of 1: “9,8” is text, a number is needed; a decimal point and no other signs make it one",
  ])
  expect(told(trial("9,8"), "number as text")[0]!.fix).toBeUndefined()
})

it("leaves words alone, and numbers that name something in a column of text", () => {
  expect(inWords(trial("not agreed"), "number as text")).toEqual([])
  expect(inWords(trial("007", {format: "text"}), "number as text")).toEqual([])
})
