import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {
  dateText,
  dayText,
  differenceText,
  numberText,
  shiftText,
  textOf,
  textWithUnit,
  percentText,
  sentenceText,
} from "../../src/editor/display"
import {column} from "../workbook/documents"

const APRIL_25 = dayOf("2026-04-25")!

describe("a date", () => {
  it("has its month in letters", () => {
    expect(dateText(APRIL_25)).toBe("25 Apr 2026")
    expect(dayText(APRIL_25)).toBe("25 Apr")
    expect(dateText(APRIL_25 + 0.75)).toBe("25 Apr 2026") // a part of a day is left off
    const months = Array.from({length: 12}, (_, i) =>
      dayText(dayOf(`2026-${String(i + 1).padStart(2, "0")}-01`)!),
    )
    expect(months.join(", ")).toBe(
      "1 Jan, 1 Feb, 1 Mar, 1 Apr, 1 May, 1 Jun, 1 Jul, 1 Aug, 1 Sep, 1 Oct, 1 Nov, 1 Dec",
    )
  })

  it("outside the calendar is the number that a formula gave", () => {
    expect(textOf(1e12, {format: "date"})).toBe("1\u202f000\u202f000\u202f000\u202f000")
    expect(textOf(-5, {format: "day"})).toBe("\u22125")
    expect(dateText(dayOf("9999-12-31")! + 1)).toBe("2\u202f958\u202f466")
    expect(textOf(dayOf("9999-12-31")!, {format: "date"})).toBe("31 Dec 9999")
    expect(textOf(0, {format: "date"})).toBe("30 Dec 1899")
  })
})

describe("a number", () => {
  it.each([
    [1234567.5, undefined, "1\u202f234\u202f567.5"],
    [1234, 2, "1\u202f234.00"],
    [0.005, 2, "0.01"],
    [-1234.56, 1, "\u22121\u202f234.6"],
    [-0.04, 1, "0.0"], // no nought below nought
    [-0.4, 0, "0"],
    [-0, undefined, "0"],
    [0.1 + 0.2, undefined, "0.3"],
    [1 / 3, undefined, "0.333333333"],
    [2.5e-8, undefined, "2.5e\u22128"],
    [-2.5e-8, undefined, "\u22122.5e\u22128"],
    [2.5e-8, 2, "0.00"],
  ])("%d with decimals %s is shown as %s", (value, decimals, text) =>
    expect(numberText(value, decimals)).toBe(text),
  )

  it("has the sign for decimals that is asked for, whichever was asked for before", () => {
    expect(([".", ",", "."] as const).map((sign) => numberText(8.5, 1, sign))).toEqual(["8.5", "8,5", "8.5"])
  })
})

it("writes a share as a percentage, and no confidence as more than it is", () => {
  expect(percentText(0.854)).toBe("85\u202f%")
  expect(percentText(0.854, 1, ",")).toBe("85,4\u202f%")
  expect(percentText(0.95, "needed")).toBe("95\u202f%")
  expect(percentText(0.9999, "needed")).toBe("99.99\u202f%")
})

describe("what a cell shows", () => {
  it("follows the format of its column", () => {
    expect(textOf(APRIL_25, {format: "date"})).toBe("25 Apr 2026")
    expect(textOf(APRIL_25, {format: "day"})).toBe("25 Apr")
    expect(textOf(APRIL_25, {format: "day"}, true)).toBe("25 Apr")
    expect(textOf(APRIL_25, undefined, true)).toBe("25 Apr 2026")
    expect(textOf(0.865, {format: "share"})).toBe("87\u202f%")
    expect(textOf(0.0525, {format: "share", unit: "share/year"})).toBe("5.25\u202f%")
    expect(textOf(0.068, {format: "share", unit: "share/year"})).toBe("6.8\u202f%")
    expect(textOf(6, {format: 1})).toBe("6.0")
    expect(textOf(2024, {format: "text"})).toBe("2024")
    expect(textOf(0.5, {format: "text"})).toBe("0.5")
  })

  it("is a word, a truth value, nothing, or the code of an error", () => {
    expect(textOf("Long Acre", {format: 1})).toBe("Long Acre")
    expect([textOf(true), textOf(false)]).toEqual(["TRUE", "FALSE"])
    expect(textOf(null, {format: "date"})).toBe("")
    expect(textOf({code: "#DIV/0!", reason: "", began: null}, {format: 1})).toBe("#DIV/0!")
  })

  it("says of a limit that lacks a measurement that it does, and of no other error", () => {
    const lacking = {code: "#N/A", reason: "", began: null}
    expect(textOf(lacking, {format: "day", part: "limit"})).toBe("not measured yet")
    expect(textOf(lacking, {format: "day", part: "limit by"})).toBe("not yet")
    expect(textOf(lacking, {format: "day", part: "close"})).toBe("#N/A")
    expect(textOf({...lacking, code: "#REF!"}, {format: "day", part: "limit"})).toBe("#REF!")
  })

  it("has its unit beside it in a sentence, where it is counted in one", () => {
    expect(textWithUnit(409, column("Sugar", {unit: "mg/g", format: 0}))).toBe("409\u00a0mg/g")
    expect(textWithUnit(409, column("Plants"))).toBe("409")
    expect(textWithUnit(APRIL_25, column("Close", {unit: "2026", format: "day"}))).toBe("25 Apr 2026")
    expect(textWithUnit(APRIL_25, column("Close", {unit: "2026"}), true)).toBe("25 Apr 2026")
    expect(textWithUnit(0.5, column("Alive", {unit: "share", format: "share"}))).toBe("50\u202f%")
    expect(textWithUnit("not cut", column("Sugar", {unit: "mg/g"}))).toBe("not cut")
    expect(textWithUnit(null, column("Sugar", {unit: "mg/g"}))).toBe("")
    expect(textWithUnit(5, undefined)).toBe("5")
  })
})

describe("how far two numbers lie apart", () => {
  it("has no zero of a scale in it", () => {
    const air = column("Air", {unit: "°C", format: 1})
    expect(differenceText(-10, air, {measures: "US"})).toBe("18.0\u00a0°F")
    expect(differenceText(-10, air, {})).toBe("10.0\u00a0°C")
    expect(differenceText(0.05, column("Share", {format: "share"}), {measures: "US"})).toBe("5\u202f%")
  })
})

it("tells a shift with its sign, and none that the decimals shown do not show", () => {
  const crop = column("Crop", {format: 1, unit: "t"})
  expect(shiftText(-1.2, false, crop, {})).toBe("\u22121.2\u00a0t")
  expect(shiftText(3, true, undefined, {})).toBe("+3\u202fd")
  expect(shiftText(-0.04, false, crop, {})).toBeNull()
  expect(shiftText(0, true, undefined, {})).toBeNull()
})

describe("a sentence of a formula", () => {
  const US = {measures: "US"} as const
  it.each([
    // 96.7 × 1000 / 907.18474 = 106.59; 28 × 10000 / 4046.8564224 = 69.19; 3.04 × 0.45359237 = 1.379
    ["96.7\u202ft planned on 28.0 ha.", US, "106.6\u202ftons planned on 69.2 ac."],
    [
      "It pays at 3.04 per packed kg, with 3.09 planned.",
      US,
      "It pays at 1.38 per packed lb, with 3.09 planned.",
    ],
    ["\u22121\u202f250.5 kg", US, "\u22122\u202f756.9 lb"], // 1250.5 / 0.45359237 = 2756.9
    ["2027: cover 1.14, 6\u202f% over it, \u221217\u202f286 in May, 14 days later", US, null],
    ["2027: cover 1.14, 28.0 ha.", {decimal: ","} as const, "2027: cover 1,14, 28,0 ha."],
    [
      "Version 2.1, with replanting Block 4.5 and a crop of 96.7 t",
      {decimal: ","} as const,
      "Version 2.1, with replanting Block 4.5 and a crop of 96,7 t",
    ],
    ["96.7 t", {}, null],
  ])("%s", (sentence, region, shown) => {
    expect(sentenceText(sentence, region)).toBe(shown ?? sentence)
    expect(textOf(sentence, {part: "page text"}, false, region)).toBe(shown ?? sentence)
    expect(textOf(sentence, {}, false, region)).toBe(sentence)
  })
})
