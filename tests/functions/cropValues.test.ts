import {describe, expect, it} from "vitest"
import {valuesOf} from "../../functions/cropValues"
import {type Given} from "../../functions/parameters"
import {spearValues} from "../../functions/spear/values"
import {cell} from "./cell"
import {read} from "./probe"

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
