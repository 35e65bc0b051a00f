import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {
  choice,
  date,
  dates,
  everyDay,
  limitDates,
  optional,
  quantity,
  side,
  words,
  yearly,
  type Parameter,
} from "../../functions/parameters"
import {column, DIV, NA, read, weight, weights} from "./probe"

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
  it("takes a day with a time of day for that day", () =>
    expect(days.read(column(46_000, 46_000.25, 46_000.999))).toEqual([46_000, 46_000, 46_000]))
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
