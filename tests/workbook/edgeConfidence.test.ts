import {expect, it} from "vitest"
import {edgeConfidence} from "../../src/workbook/edgeConfidence"
import {Workbook} from "../../src/workbook/workbook"
import {documentOf, sheet} from "./documents"

const confidenceOf = (...rows: [string, string | number][]) =>
  edgeConfidence(new Workbook(documentOf(sheet("Named values", ["Name", "Value"], rows, {names: true}))))

it("is what is named, where that is a confidence", () => {
  expect(confidenceOf(["Edge_confidence", 0.95])).toBe(0.95)
  expect(confidenceOf(["Edge_confidence", 0.9999])).toBe(0.9999)
})

it.each([0, -0.8, 1, 80, "high"])("is that of ROOT.EDGE where %s is typed, which is none", (typed) =>
  expect(confidenceOf(["Edge_confidence", typed])).toBe(0.8),
)

it("is that of ROOT.EDGE where none is named", () => expect(confidenceOf(["As_of", 1])).toBe(0.8))
