import {describe, expect, it} from "vitest"
import {cell} from "./cell"

describe("a formula function in a cell", () => {
  it("calculates", () => expect(cell("=SPEAR.HEAT(19,7,5)")).toBe(8))

  it("names the argument, its limits, its unit and what was given when it is out of range", () => {
    expect(cell("=SPEAR.HEAT(80,7,5)")).toEqual({
      code: "#NUM!",
      reason: "Highest air temperature of the day must be from -60 to 60 °C, not 80 °C",
    })
  })
  it("carries a refusal into the cell", () => {
    expect(cell("=SPEAR.HEAT(7,19,5)")).toEqual({
      code: "#NUM!",
      reason: "Highest temperature (7 °C) is below the lowest (19 °C)",
    })
  })
  it.each([
    ['=SPEAR.HEAT("19",7,5)', 'Highest air temperature of the day must be a number, not the text "19"'],
    ["=SPEAR.HEAT(TRUE(),7,5)", "Highest air temperature of the day must be a number, not TRUE"],
    ["=SPEAR.HEAT(19,7)", "SPEAR.HEAT takes 3 to 4 arguments, not 2"],
    ["=SPEAR.HEAT(19,7,5,25,1)", "SPEAR.HEAT takes 3 to 4 arguments, not 5"],
    ["=SPEAR.HEAT()", "SPEAR.HEAT takes 3 to 4 arguments, not 0"],
    ["=SPEAR.HEAT(T!A1:A2,7,5)", "Highest air temperature of the day takes one value, not a range"],
    ["=SPEAR.HEAT({19,20},7,5)", "Highest air temperature of the day takes one value, not a range"],
  ])("refuses %s as of the wrong kind", (formula, reason) => {
    expect(cell(formula, [[19], [20]])).toEqual({code: "#VALUE!", reason})
  })
  it("says that a blank is not measured yet and takes a typed 0 as 0", () => {
    expect(cell("=SPEAR.HEAT(T!A1,7,5)")).toEqual({
      code: "#N/A",
      reason: "Highest air temperature of the day: not measured yet",
    })
    expect(cell("=SPEAR.HEAT(19,T!A1,5)", [[0]])).toBe(4.5)
  })
  it("takes the default for an optional argument that is blank, empty or left out", () => {
    expect(cell("=SPEAR.HEAT(32,20,5,T!A1)")).toBe(21)
    expect(cell("=SPEAR.HEAT(32,20,5,)")).toBe(21)
    expect(cell("=SPEAR.HEAT(32,20,5)")).toBe(21)
  })
  it("passes on the leftmost error that comes in", () => {
    expect(cell("=SPEAR.HEAT(80,1/0,NA())")).toMatchObject({code: "#DIV/0!"})
  })
})
