import {expect, it} from "vitest"
import {cellsIn} from "../../src/workbook/size"
import {documentOf, sheet} from "./documents"

it("counts the cells of all sheets, empty ones among them", () => {
  const plantings = sheet("Plantings", ["Name", "Area", "Age"], [["Well Field", 2, null], ["Home Strip"]])
  expect(cellsIn(documentOf(plantings, sheet("Prices", ["Price"], [[2.4]])))).toBe(7)
  expect(cellsIn(documentOf(sheet("Empty", ["Name"], [])))).toBe(0)
})
