import {describe, expect, it} from "vitest"
import {calculatedWith} from "../../../src/workbook/checks/typedNumbers"
import {column, documentOf, sheet} from "../documents"
import {inWords} from "./looking"

describe("numbers that a formula calculates with", () => {
  it.each([
    ["=A1*0.95", ["0.95"]],
    ["=A1*0.95+B1/3.94-0.95", ["0.95", "3.94"]],
    ["=A1*(1+0.05)", ["0.05"]],
    ["=A1*-0.4", ["0.4"]],
    ["=-0.4*A1", ["0.4"]],
    ["=SUM(A1:A9)+17", ["17"]],
    ["=A1*3", ["3"]],
    ["=8/A1", ["8"]],
    ["=INDEX(A:A,3*B1)*C1*0.9", ["0.9"]],
  ])("%s holds %j", (formula, numbers) => {
    expect(calculatedWith(formula)).toEqual(numbers)
  })

  it.each([
    "=A1/1000", // units
    "=(A1-B1+1)/7", // days and weeks
    "=ROUND(A1,3)", // the whole argument of a function
    "=SPEAR.SHARE(A1:A9,-0.35)",
    '=IF(A1>9.5,"stop","")', // compared
    "=A1^3", // a power is the form of an equation
    "=A1+6", // the last day of a week
    "=A1-8+B1",
    '=MID("JanFebMar",3*MONTH(A1)-2,3)',
    "=2.5", // nothing is calculated
    "=INDEX({3,5,8},B1)+A1", // a list
    '=A1&"17+3"', // words
  ])("%s holds none", (formula) => {
    expect(calculatedWith(formula)).toEqual([])
  })
})

it("tells the formula of a column once, and that of a cell and a total by what it is", () => {
  const document = documentOf(
    sheet(
      "Crew",
      [column("Kg"), column("Hours", {formula: "=A1/24.5", total: "=SUM(B:B)*1.07"}), column("Pay")],
      [
        [240, "=", null],
        [120, "=", "=B2*13.5"],
      ],
    ),
  )
  const why = "typed inside its formula: a named value could say what that is and where it is from"
  expect(inWords(document, "number in a formula")).toEqual([
    `B1: Column Hours of Crew has the number 24.5 ${why}`,
    `B1: The total of Hours, Crew has the number 1.07 ${why}`,
    `C2: Pay of 120 has the number 13.5 ${why}`,
  ])
})
