import {describe, expect, it} from "vitest"
import {column, documentOf, sheet} from "../documents"
import {inWords} from "./looking"

const trial = (formula: string) =>
  documentOf(
    sheet(
      "Plan",
      [
        column("Open", {format: "day", unit: "2026"}),
        column("Yield", {unit: "kg/ha"}),
        column("Crop", {unit: "t"}),
        column("Lag", {unit: "days"}),
        column("Weeks", {unit: "weeks"}),
        column("Factor"),
        column("Result", {formula}),
      ],
      [["2026-04-25", 4500, 28.8, 25, 6, 1.1, "="]],
    ),
    sheet(
      "Named values",
      [column("Name", {format: "text"}), "Value", column("Unit", {format: "text"})],
      [
        ["Last_date", "2026-06-24", "date"],
        ["Floor", 1600, "kg/ha"],
        ["Margin", 30, "days"],
      ],
      {names: true},
    ),
  )

describe("units that do not go together", () => {
  it.each([
    ["=B1+C1", "Column Result of Plan adds Yield in kg/ha and Crop in t"],
    ["=B1-D1", "Column Result of Plan takes one from the other of Yield in kg/ha and Lag in day"],
    ["=(C1-Floor)*2", "Column Result of Plan takes one from the other of Crop in t and Floor in kg/ha"],
    ["=IF(C1<Floor,1,0)", "Column Result of Plan compares Crop in t and Floor in kg/ha"],
    ["=A1+E1", "Column Result of Plan adds Open in dates and Weeks in week"],
    ["=SUM(B1:C1)", "Column Result of Plan sums Yield in kg/ha and Crop in t"],
  ])("%s", (formula, sentence) => {
    expect(inWords(trial(formula), "units")).toEqual([`G1: ${sentence}`])
  })
})

describe("units that do, or of which nothing can be said", () => {
  it.each([
    "=B1-Floor",
    "=A1+D1", // a date and days
    "=Last_date-A1",
    "=A1-Margin",
    "=F1*B1+C1", // a product has another unit
    "=C1+B1*F1",
    "=F1/B1-C1",
    "=B1+F1", // a cell without a unit says nothing
    "=B1/C1",
    "=COUNT(B1:C1)",
  ])("%s", (formula) => {
    expect(inWords(trial(formula), "units")).toEqual([])
  })
})
