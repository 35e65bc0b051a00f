import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {valuesOf} from "../../functions/cropValues"
import {answer, defineFunction, outcomeOf, unitGiven, type FormulaFunction} from "../../functions/define"
import {
  CellFault,
  choice,
  date,
  dates,
  everyDay,
  limitDates,
  measured,
  optional,
  quantity,
  side,
  words,
  yearly,
  type Given,
  type Parameter,
} from "../../functions/parameters"
import {isRefusal, outOfRange} from "../../functions/refusal"
import {SEASON_PACE} from "../../functions/season/pace"
import {SEASON_SLACK} from "../../functions/season/slack"
import {SPEAR_HEAT} from "../../functions/spear/heat"
import {spearValues} from "../../functions/spear/values"
import {cell} from "./cell"

const weight = quantity("Weight", "kg", {min: 0, max: 100})
const weights = measured("Weights", "kg", {min: 0, max: 100})
const NA = new CellFault("#N/A", "an error of the engine")
const DIV = new CellFault("#DIV/0!", "another error of the engine")

/** A column of cells. */
const column = (...held: (number | string | boolean | null | CellFault)[]): Given => held.map((one) => [one])

/** What `calculate` of a function with these parameters is given, or what stands in the cell instead. */
function read(
  parameters: Record<string, Parameter<any>>,
  given: readonly Given[],
  together: readonly string[] = [],
) {
  let seen: unknown = "not calculated"
  const definition = {
    ...SPEAR_HEAT,
    name: "SPEAR.PROBE",
    parameters,
    together,
    calculate: (read: unknown) => {
      seen = read
      return 0
    },
  } as FormulaFunction
  const result = answer(definition, given)
  return isRefusal(result) || result instanceof CellFault ? result : seen
}

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

describe("a blank", () => {
  it("in a required number or date is not there yet, where a typed 0 is 0", () => {
    expect(read({a: weight}, [null])).toEqual({refused: "Weight: not measured yet", code: "#N/A"})
    expect(read({a: date("Close")}, [null])).toEqual({refused: "Close: no date yet", code: "#N/A"})
    expect(read({a: weight}, [0])).toEqual({a: 0})
  })
  it("in an optional argument is its default, where a typed 0 is 0", () => {
    expect(read({a: optional(weight, 5)}, [null])).toEqual({a: 5})
    expect(read({a: optional(weight, 5)}, [0])).toEqual({a: 0})
    expect(read({a: optional(weight, null)}, [])).toEqual({a: null})
  })
  it("is not an empty text, which is the wrong kind", () => {
    expect(read({a: weight}, [""])).toEqual({
      refused: 'Weight must be a number, not the text ""',
      code: "#VALUE!",
    })
    expect(read({a: optional(weight, 5)}, [""])).toMatchObject({code: "#VALUE!"})
  })
  it("for a choice or a side is not there yet", () => {
    expect(read({a: choice("What", ["sugar", "fern"])}, [null])).toEqual({
      refused: "What is blank",
      code: "#N/A",
    })
    expect(read({a: side("Side")}, [null])).toMatchObject({code: "#N/A"})
  })
})

describe("a list", () => {
  it("leaves blanks out and keeps zeros", () => {
    expect(read({a: weights}, [column(1, null, 0, null)])).toEqual({a: [1, 0]})
  })
  it("reads a range row by row and takes one value as a list of one", () => {
    const square = [
      [1, 2],
      [3, null],
    ]
    expect(read({a: weights}, [square])).toEqual({a: [1, 2, 3]})
    expect(read({a: weights}, [7])).toEqual({a: [7]})
  })
  it("with nothing in it is not measured yet", () => {
    expect(read({a: weights}, [column(null, null)])).toEqual({
      refused: "Weights: not measured yet",
      code: "#N/A",
    })
    expect(read({a: weights}, [null])).toEqual({refused: "Weights: not measured yet", code: "#N/A"})
  })
  it("keeps its limits in every cell", () => {
    expect(read({a: weights}, [column(1, 100.5)])).toEqual({
      refused: "Weights must be from 0 to 100 kg, not 100.5 kg",
      code: "#NUM!",
    })
  })
  it("that stands alone loses its blanks alone", () => {
    expect(read({a: weights, b: weights}, [column(1, null, 3), column(null, 5)])).toEqual({a: [1, 3], b: [5]})
  })
  it("that is optional and stands alone takes its default when it is blank throughout", () => {
    const parameters = {a: weight, b: optional(weights, [] as number[], "none")}
    expect(read(parameters, [1])).toEqual({a: 1, b: []})
    expect(read(parameters, [1, null])).toEqual({a: 1, b: []})
    expect(read(parameters, [1, column(null, null)])).toEqual({a: 1, b: []})
    expect(read(parameters, [1, column(null, 4)])).toEqual({a: 1, b: [4]})
  })
})

describe("a range whose cells all keep their place", () => {
  const days = everyDay("Days")
  it("is read once as long as it is the same", () => {
    const given = column("2026-05-01", null)
    expect(days.read(given)).toEqual([dayOf("2026-05-01"), null])
    expect(days.read(given)).toBe(days.read(given))
  })
  it("is read once where it is one cell, by what stands in that", () => {
    expect(days.read(46_000)).toEqual([46_000])
    expect(days.read(46_000)).toBe(days.read(46_000))
    expect(days.read(46_001)).toEqual([46_001])
    expect(days.read(null)).toEqual([null])
  })
})

describe("a list with an entry a year", () => {
  const parameters = {a: yearly("Weeks", "weeks", {min: 0, max: 52})}
  it("keeps its order, drops the blanks at its end and takes one value as a list of one", () => {
    expect(read(parameters, [column(8, 0, 6, null, null)])).toEqual({a: [8, 0, 6]})
    expect(read(parameters, [[[8, 9, null]]])).toEqual({a: [8, 9]})
    expect(read(parameters, [7])).toEqual({a: [7]})
  })
  it("refuses a blank before its last entry", () => {
    expect(read(parameters, [column(8, null, 6)])).toEqual({
      refused: "Weeks: year 2 is blank",
      code: "#VALUE!",
    })
    expect(read(parameters, [column(null, 6)])).toEqual({refused: "Weeks: year 1 is blank", code: "#VALUE!"})
  })
  it("keeps its limits in every year", () => {
    expect(read(parameters, [column(8, 53)])).toEqual({
      refused: "Weeks must be from 0 to 52 weeks, not 53 weeks",
      code: "#NUM!",
    })
    expect(read(parameters, [column(8, "9")])).toMatchObject({code: "#VALUE!"})
  })
  it("with nothing in it is not measured yet, or its default", () => {
    const nothing = {refused: "Weeks: not measured yet", code: "#N/A"}
    expect(read(parameters, [null])).toEqual(nothing)
    expect(read(parameters, [column(null, null)])).toEqual(nothing)
    const withDefault = {a: optional(parameters.a, [8], "8")}
    expect(read(withDefault, [])).toEqual({a: [8]})
    expect(read(withDefault, [column(null, null)])).toEqual({a: [8]})
    expect(read(withDefault, [column(0)])).toEqual({a: [0]})
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

describe("dates that may not be known yet", () => {
  const parameters = {names: words("Names"), days: limitDates("Limits")}
  const together = ["names", "days"]
  it("count #N/A as a blank", () => {
    expect(read(parameters, [column("a", "b", "c"), column(46137, NA, 46139)], together)).toEqual({
      names: ["a", "c"],
      days: [46137, 46139],
    })
    expect(read(parameters, [column("a"), column(NA)], together)).toEqual({
      refused: "Limits: not measured yet",
      code: "#N/A",
    })
    expect(read(parameters, ["a", NA], together)).toMatchObject({refused: "Limits: not measured yet"})
  })
  it("pass any other error on, also one that comes after a #N/A", () => {
    expect(read(parameters, [column("a", "b"), column(NA, DIV)], together)).toBe(DIV)
  })
  it("do not make a #N/A in another argument a blank", () => {
    expect(read(parameters, [column("a", NA), column(46137, 46138)], together)).toBe(NA)
    expect(read({days: dates("Days")}, [column(46137, NA)])).toBe(NA)
  })
})

describe("a date", () => {
  const day = {day: date("Close")}
  // Day numbers by hand: 2026-01-01 is 46 023 in OpenFormula hosts; 31 + 28 + 31 + 24 days later is 2026-04-25.
  it.each([
    ["2026-04-25", 46137],
    [46137, 46137],
    [46137.75, 46137],
    ["2024-02-29", 45351], // 2024-01-01 is 45 292; 31 + 28 days later
    ["1904-01-01", 1462],
    ["9999-12-31", 2958465],
  ])("is read from %s", (given, read_) => expect(read(day, [given])).toEqual({day: read_}))

  it.each([
    ["soon", 'the text "soon"'],
    ["", 'the text ""'],
    ["46137", 'the text "46137"'],
    ["2026-02-30", 'the text "2026-02-30"'],
    ["2025-02-29", 'the text "2025-02-29"'],
    ["2026-13-01", 'the text "2026-13-01"'],
    ["2026-4-25", 'the text "2026-4-25"'],
    ["25.04.2026", 'the text "25.04.2026"'],
    ["2026-04-25T00:00", 'the text "2026-04-25T00:00"'],
    [true, "TRUE"],
  ])("is not %s", (given, shown) => {
    expect(read(day, [given])).toEqual({
      refused: `Close must be a date such as 2026-04-25, not ${shown}`,
      code: "#VALUE!",
    })
  })
  it.each([1461, 0, -1, 2958466])("out of the calendar's range is the number %s", (given) => {
    expect(read(day, [given])).toEqual({
      refused: `Close must be a date from 1904-01-01 to 9999-12-31, not the number ${given}`,
      code: "#NUM!",
    })
  })
  it("is one value, and a list of dates reads each the same way", () => {
    expect(read(day, [column(46137)])).toEqual({
      refused: "Close takes one value, not a range",
      code: "#VALUE!",
    })
    expect(read({days: dates("Days")}, [column("2026-04-25", 46138.5, null)])).toEqual({days: [46137, 46138]})
    expect(read({days: dates("Days")}, [column(46137, "soon")])).toMatchObject({code: "#VALUE!"})
    expect(read({days: limitDates("Limits")}, [column(46137, "soon")])).toMatchObject({code: "#VALUE!"})
  })
})

describe("one value of the wrong kind", () => {
  it.each([
    [weight, "3", 'Weight must be a number, not the text "3"'],
    [weight, true, "Weight must be a number, not TRUE"],
    [weight, false, "Weight must be a number, not FALSE"],
    [weight, column(3), "Weight takes one value, not a range"],
    [optional(weight, 5), column(null), "Weight takes one value, not a range"],
    [weights, column(1, true), "Weights must be a number, not TRUE"],
    [weights, column(1, "2"), 'Weights must be a number, not the text "2"'],
    [words("Names"), column("a", 2), "Names must be words, not 2"],
    [words("Names"), column("a", false), "Names must be words, not FALSE"],
    [choice("What", ["sugar", "fern"]), "soil", 'What must be one of "sugar", "fern", not the text "soil"'],
    [choice("What", ["sugar", "fern"]), 1, 'What must be one of "sugar", "fern", not 1'],
    [choice("What", ["sugar", "fern"]), column("fern"), "What takes one value, not a range"],
    [side("Side"), true, "Side must be a number, not TRUE"],
    [side("Side"), column(1), "Side takes one value, not a range"],
  ])("is refused (case %#)", (parameter: Parameter<any>, given, refused) => {
    expect(read({a: parameter}, [given])).toEqual({refused, code: "#VALUE!"})
  })
  it("is a side that is neither", () => {
    expect(read({a: side("Side")}, [0])).toEqual({
      refused: "Side must be -1 (lower) or 1 (upper), not 0",
      code: "#NUM!",
    })
    expect(read({a: side("Side"), b: side("Side")}, [-1, 1])).toEqual({a: -1, b: 1})
  })
  it("is no choice that is listed", () => {
    expect(read({a: choice("What", ["sugar", "fern"])}, ["fern"])).toEqual({a: "fern"})
  })
})

describe("limits", () => {
  it.each([
    [{min: 0, max: 10}, [0, 10], [-0.1, 10.1], "from 0 to 10 kg"],
    [{above: 0, max: 10}, [0.1, 10], [0, 10.1], "above 0 and up to 10 kg"],
    [{min: 0, below: 10}, [0, 9.9], [-0.1, 10], "0 or more and below 10 kg"],
    [{above: 0}, [0.1], [0, -1], "above 0 kg"],
    [{min: 1, max: 3, whole: true}, [1, 2, 3], [0, 1.5, 4], "a whole number from 1 to 3 kg"],
  ])(
    "of %o are allowed at `min` and `max` themselves, not at `above` and `below`",
    (limits, good, bad, says) => {
      const a = quantity("Weight", "kg", limits)
      expect(a.takes).toBe(says)
      for (const value of good) expect(read({a}, [value])).toEqual({a: value})
      for (const value of bad)
        expect(read({a}, [value])).toEqual({
          refused: `Weight must be ${says}, not ${value} kg`,
          code: "#NUM!",
        })
    },
  )
})

describe("crop values", () => {
  const parameters = {values: valuesOf("Stretch_rate", "Stretch_base")}
  const defaults = {
    Stretch_rate: spearValues.Stretch_rate.value,
    Stretch_base: spearValues.Stretch_base.value,
  }

  it("are the defaults when left out, blank, or a range with nothing in it", () => {
    expect(read(parameters, [])).toEqual({values: defaults})
    expect(read(parameters, [null])).toEqual({values: defaults})
    expect(read(parameters, [[[null, null]]])).toEqual({values: defaults})
  })
  it("replace a default by its name, wherever its row stands, past blank rows", () => {
    const given = [
      [null, null],
      ["Stretch_base", 7],
      [null, null],
    ]
    expect(read(parameters, [given])).toEqual({values: {...defaults, Stretch_base: 7}})
  })
  it("keep the default for a blank number and take a typed 0", () => {
    const given = [
      ["Stretch_rate", null],
      ["Stretch_base", 0],
    ]
    expect(read(parameters, [given])).toEqual({values: {...defaults, Stretch_base: 0}})
  })
  it("may name one that the function does not use", () => {
    expect(read(parameters, [[["Cut_longest", 28]]])).toMatchObject({values: defaults})
  })
  it("leave the defaults of the next call alone", () => {
    read(parameters, [[["Stretch_base", 9]]])
    expect(read(parameters, [])).toEqual({values: defaults})
  })

  const twice = (first: number | null, second: number | null) => [
    ["Stretch_base", first],
    ["Stretch_base", second],
  ]
  it.each([
    [[["Stretch_bass", 7]], "#VALUE!", "There is no crop value named Stretch_bass"],
    [[["stretch_base", 7]], "#VALUE!", "There is no crop value named stretch_base"],
    [[["toString", 7]], "#VALUE!", "There is no crop value named toString"],
    [[["Stretch_bass", null]], "#VALUE!", "There is no crop value named Stretch_bass"],
    [[["Name", "Value"]], "#VALUE!", "There is no crop value named Name"],
    [[[null, 7]], "#VALUE!", "Crop value 7 has no name"],
    [twice(7, 8), "#VALUE!", "Crop value Stretch_base is given twice"],
    [twice(7, null), "#VALUE!", "Crop value Stretch_base is given twice"],
    [twice(null, 8), "#VALUE!", "Crop value Stretch_base is given twice"],
    [twice(null, null), "#VALUE!", "Crop value Stretch_base is given twice"],
    [[["Stretch_base", "7"]], "#VALUE!", 'Crop value Stretch_base must be a number, not the text "7"'],
    [[["Stretch_base", true]], "#VALUE!", "Crop value Stretch_base must be a number, not TRUE"],
    [[["Stretch_base", 16]], "#NUM!", "Crop value Stretch_base must be from -5 to 15 °C, not 16 °C"],
    [
      [["Stretch_rate", 0]],
      "#NUM!",
      "Crop value Stretch_rate must be above 0 and up to 0.2 per day and °C, not 0 per day and °C",
    ],
    [[["Stretch_base", 7, "°C"]], "#VALUE!", "Crop values must be a range of two columns, name and number"],
    [[["Stretch_base"], [7]], "#VALUE!", "Crop values must be a range of two columns, name and number"],
    ["Stretch_base", "#VALUE!", "Crop values must be a range of two columns, name and number"],
  ])("refuse what is no row of names and numbers (case %#)", (given, code, refused) => {
    expect(read(parameters, [given as Given])).toEqual({refused, code})
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

describe("crop values in a cell", () => {
  // Growth of a spear is Stretch_rate x (temperature - Stretch_base) a day: 0.05 x (25 - 5) = 1.00 by default.
  const table = [
    ["Stretch_base", 15, "", "Stretch_bass", 7],
    [null, null, "", null, null],
    ["Stretch_rate", null, "", null, null],
    ["Cut_longest", 28, "", null, null],
    [null, null, "", null, null],
    [null, null, "a note below the table", null, null],
  ]
  it("replace the defaults from whole columns with blank rows in them", () => {
    expect(cell("=SPEAR.GROWTH(25)", table)).toBeCloseTo(1, 12)
    expect(cell("=SPEAR.GROWTH(25,T!A:B)", table)).toBeCloseTo(0.5, 12) // 0.05 x (25 - 15)
    expect(cell("=SPEAR.GROWTH(25,T!G:H)", table)).toBeCloseTo(1, 12)
  })
  it("may be written in the formula, a row to each name", () => {
    expect(cell('=SPEAR.GROWTH(25,{"Stretch_base",15;"Stretch_rate",0.1})')).toBeCloseTo(1, 12) // 0.1 x 10
  })
  it.each([
    ["T!D:E", "#VALUE!", "There is no crop value named Stretch_bass"],
    ["T!A:C", "#VALUE!", "Crop values must be a range of two columns, name and number"],
    ["T!A:A", "#VALUE!", "Crop values must be a range of two columns, name and number"],
    ["7", "#VALUE!", "Crop values must be a range of two columns, name and number"],
    ['{"Stretch_base",7;"Stretch_base",8}', "#VALUE!", "Crop value Stretch_base is given twice"],
    ['{"Stretch_base",16}', "#NUM!", "Crop value Stretch_base must be from -5 to 15 °C, not 16 °C"],
  ])("refuse %s", (values, code, reason) => {
    expect(cell(`=SPEAR.GROWTH(25,${values})`, table)).toEqual({code, reason})
  })
})
