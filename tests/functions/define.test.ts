import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {valuesOf} from "../../functions/cropValues"
import {answer, defineFunction, outcomeOf, unitGiven, type FormulaFunction} from "../../functions/define"
import {dates, measured, optional, quantity, words} from "../../functions/parameters"
import {outOfRange} from "../../functions/refusal"
import {SEASON_PACE} from "../../functions/season/pace"
import {SEASON_SLACK} from "../../functions/season/slack"
import {SPEAR_HEAT} from "../../functions/spear/heat"
import {cell} from "./cell"
import {column, DIV, NA, read, weight, weights} from "./probe"

describe("the number of arguments", () => {
  it.each([
    [{a: weight}, [], "SPEAR.PROBE takes 1 argument, not 0"],
    [{a: weight}, [1, 2], "SPEAR.PROBE takes 1 argument, not 2"],
    [{a: weight, b: weight}, [1], "SPEAR.PROBE takes 2 arguments, not 1"],
    [{a: weight, b: optional(weight, 5)}, [1, 2, 3], "SPEAR.PROBE takes 1 to 2 arguments, not 3"],
  ])("is kept to (case %#)", (parameters, given, refused) => {
    expect(read(parameters, given)).toEqual({refused, code: "#VALUE!"})
  })
  it("is looked at before what the arguments hold", () => {
    expect(read({a: weight}, [NA, NA])).toMatchObject({code: "#VALUE!"})
  })
  it("may be the least or the most, and anything between", () => {
    const parameters = {a: weight, b: optional(weight, 5), c: optional(weight, 6)}
    expect(read(parameters, [1])).toEqual({a: 1, b: 5, c: 6})
    expect(read(parameters, [1, 2])).toEqual({a: 1, b: 2, c: 6})
    expect(read(parameters, [1, 2, 3])).toEqual({a: 1, b: 2, c: 3})
  })
})

describe("an error that comes in", () => {
  it("goes out as it came, the leftmost argument first", () => {
    expect(read({a: weight, b: weight}, [NA, DIV])).toBe(NA)
    expect(read({a: weight, b: weight}, [DIV, NA])).toBe(DIV)
  })
  it("goes out from anywhere in a range, the first row by row", () => {
    expect(read({a: weights}, [column(1, null, DIV, NA)])).toBe(DIV)
    const square = [
      [1, DIV],
      [NA, 1],
    ]
    expect(read({a: weights}, [square])).toBe(DIV)
    expect(read({a: weights, b: weight}, [column(1, NA), DIV])).toBe(NA)
  })
  it("goes before a wrong value, wherever that stands: the first mistake is upstream", () => {
    expect(read({a: weight, b: weight}, [200, DIV])).toBe(DIV)
    expect(read({a: weight, b: weight}, ["text", DIV])).toBe(DIV)
  })
  it("in an optional argument is no blank", () => {
    expect(read({a: weight, b: optional(weight, 5)}, [1, NA])).toBe(NA)
  })
  it("among crop values goes out too", () => {
    expect(read({values: valuesOf("Stretch_rate")}, [[["Stretch_rate", DIV]]])).toBe(DIV)
  })
})

describe("wrong values in several arguments", () => {
  it("are answered for the leftmost", () => {
    const parameters = {a: weight, b: quantity("Length", "cm", {above: 0})}
    expect(read(parameters, [101, -1])).toEqual({
      refused: "Weight must be from 0 to 100 kg, not 101 kg",
      code: "#NUM!",
    })
    expect(read(parameters, [100, -1])).toEqual({
      refused: "Length must be above 0 cm, not -1 cm",
      code: "#NUM!",
    })
  })
  it("are answered before sizes that differ and before the calculation", () => {
    const parameters = {a: weights, b: weights}
    expect(read(parameters, [column(1, 101), column(1)], ["a", "b"])).toMatchObject({code: "#NUM!"})
  })
})

describe("outcomes by their names", () => {
  const named = {
    picked: {label: "Crop picked", unit: "kg/ha"},
    "lowest date": {label: "Day of the lowest sugar", unit: "date"},
  } as const
  const what = outcomeOf(named)
  const returns = {label: "The outcome named", unit: "as named", named} as const

  it("are taken as they are written, and refused with the list otherwise", () => {
    expect(read({what}, ["lowest date"])).toEqual({what: "lowest date"})
    for (const wrong of ["Picked", "", "constructor"])
      expect(read({what}, [wrong])).toEqual({
        refused: `What is asked for must be one of "picked", "lowest date", not the text "${wrong}"`,
        code: "#VALUE!",
      })
    expect(read({what}, [null])).toEqual({refused: "What is asked for is blank", code: "#N/A"})
  })
  it("have each their own unit; a function with one outcome has its own", () => {
    const asked = {...SPEAR_HEAT, returns} as FormulaFunction
    expect(unitGiven(asked, "picked")).toBe("kg/ha")
    expect(unitGiven(asked, "lowest date")).toBe("date")
    expect(unitGiven(asked, "no such name")).toBe("as named")
    expect(unitGiven(asked, 3)).toBe("as named")
    expect(unitGiven(SPEAR_HEAT, "picked")).toBe(SPEAR_HEAT.returns.unit)
  })
})

describe("lists that belong together", () => {
  const parameters = {
    days: dates("Days"),
    a: weights,
    b: optional(measured("Counts", "count", {min: 0}), null),
  }
  const together = ["days", "a", "b"]

  it("lose every row that has a blank in one of them", () => {
    const days = column(46137, 46138, null, 46140)
    expect(read(parameters, [days, column(1, null, 3, 4), column(10, 20, 30, 40)], together)).toEqual({
      days: [46137, 46140],
      a: [1, 4],
      b: [10, 40],
    })
  })
  it("may lack one that is optional", () => {
    expect(read(parameters, [column(46137, null), column(1, 2)], together)).toEqual({
      days: [46137],
      a: [1],
      b: null,
    })
  })
  it("lose blank rows at the end, as a whole column has them", () => {
    expect(read(parameters, [column(46137, null, null), column(1, null, null)], together)).toMatchObject({
      a: [1],
    })
  })
  it("must have as many cells, blank or not", () => {
    expect(read(parameters, [column(46137, 46138, null), column(1, 2)], together)).toEqual({
      refused: "Days has 3 cells and Weights has 2: sizes differ",
      code: "#VALUE!",
    })
    expect(read(parameters, [column(46137), column(1), column(1, 2)], together)).toEqual({
      refused: "Days has 1 cells and Counts has 2: sizes differ",
      code: "#VALUE!",
    })
  })
  it("may be a row beside a column", () => {
    expect(read(parameters, [column(46137, 46138), [[1, 2]]], together)).toMatchObject({a: [1, 2]})
  })
  it("name the list that is not measured yet", () => {
    expect(read(parameters, [column(46137, 46138), column(null, null)], together)).toEqual({
      refused: "Weights: not measured yet",
      code: "#N/A",
    })
    expect(read(parameters, [column(null), column(1)], together)).toMatchObject({
      refused: "Days: not measured yet",
    })
  })
  it("say so when no row is complete", () => {
    expect(read(parameters, [column(46137, null), column(null, 2)], together)).toEqual({
      refused: "Days, Weights: no row is complete yet",
      code: "#N/A",
    })
  })
  it("do not take the default of an optional one that is blank throughout: its rows are not measured", () => {
    expect(read(parameters, [column(46137), column(1), column(null)], together)).toEqual({
      refused: "Counts: not measured yet",
      code: "#N/A",
    })
  })
  it("do not take a default when all of them are optional either", () => {
    const parameters = {a: optional(weights, [] as number[]), b: optional(weights, [] as number[])}
    expect(read(parameters, [column(null), column(1)], ["a", "b"])).toEqual({
      refused: "Weights: not measured yet",
      code: "#N/A",
    })
  })
  it("keep a row whose only blank is a word", () => {
    const named = {names: words("Names"), a: weights}
    expect(read(named, [column("x", null, null), column(1, 2, null)], ["names", "a"])).toEqual({
      names: ["x", ""],
      a: [1, 2],
    })
  })
})

describe("what a function answers", () => {
  it("is what it calculates or refuses", () => {
    const half = defineFunction({
      name: "SPEAR.HALF",
      summary: "Half of a weight",
      parameters: {a: weight},
      returns: {label: "Half", unit: "kg"},
      sources: ["identity"],
      example: {formula: "=SPEAR.HALF(2)", gives: 1},
      calculate: ({a}) => (a > 50 ? outOfRange("Too heavy") : a / 2),
    })
    expect(answer(half, [50])).toBe(25)
    expect(answer(half, [51])).toEqual({refused: "Too heavy", code: "#NUM!"})
  })
  it("is the same for functions of the catalogue", () => {
    expect(answer(SPEAR_HEAT, [19, 7, 5])).toBe(8)
    expect(answer(SPEAR_HEAT, [19, 7, 5, null])).toBe(8)
    expect(answer(SPEAR_HEAT, [19, 7])).toMatchObject({code: "#VALUE!"})
    expect(answer(SPEAR_HEAT, [NA, 7, DIV])).toBe(NA)
    const days = column("2026-05-04", "2026-05-11", null)
    expect(answer(SEASON_PACE, [column(740, null, null), column(800, 900, null), days, "2026-05-11"])).toBe(
      0.925,
    )
    expect(answer(SEASON_SLACK, [column("a", "b", "c"), column("2026-06-12", NA, "2026-06-09")])).toBe(3)
    expect(answer(SEASON_SLACK, [column("a", "b", "c"), column("2026-06-12", DIV, "2026-06-09")])).toBe(DIV)
  })
})

describe("whole columns in a cell", () => {
  const table = [
    ["reserve", "2026-06-12", 1, 100],
    ["spear size", "2026-06-09", 3, 300],
    ["fern days", null, null, null],
    ["price", "=NA()", 4, 500],
    [null, null, null, null],
    [null, null, null, null, "a note below the table"],
  ]
  it("take in all rows and drop those with a blank", () => {
    expect(cell("=SEASON.CLOSE(T!A:A,T!B:B)", table)).toBe(dayOf("2026-06-09"))
    expect(cell("=CROP.AT_AGE(2,T!C:C,T!D:D)", table)).toBe(200)
  })
  it("differ in size from a part of a column", () => {
    expect(cell("=SEASON.CLOSE(T!A:A,T!B1:B2)", table)).toEqual({
      code: "#VALUE!",
      reason: "Names of the limits has 6 cells and Limit dates has 2: sizes differ",
    })
  })
  it("are not measured yet while they are empty", () => {
    expect(cell("=CROP.OLYMPIC(T!F:F)", table)).toEqual({code: "#N/A", reason: "Yields: not measured yet"})
  })
})
