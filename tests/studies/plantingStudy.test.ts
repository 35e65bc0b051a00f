import {readFileSync} from "node:fs"
import {expect, it} from "vitest"
import {factorErrorOf, plantingStudy, sugarErrorOf} from "../../src/studies/plantingStudy"
import {crownsOf, type CrownYears} from "../../src/workbook/crowns"
import type {Document} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"
import {Workbook} from "../../src/workbook/workbook"

it("takes the sugar's error from the interval of the sample", () => {
  // Half of 400 - 25.632 to 400 + 25.632 is 20 standard errors of 1.2816 each: 20/400.
  const sample = {day: 46086, sugar: 400, lower: 374.368, upper: 425.632, plants: 10}
  expect(sugarErrorOf({measured: [sample]})).toBeCloseTo(0.05, 12)
})

it("takes the error of one plant where there is no interval", () => {
  // √(0.20² + 0.06²) = √0.0436
  expect(sugarErrorOf({measured: []})).toBeCloseTo(0.208806, 6)
  expect(
    sugarErrorOf({measured: [{day: 46086, sugar: 400, lower: null, upper: null, plants: null}]}),
  ).toBeCloseTo(0.208806, 6)
})

it("halves the doubt about the factor with three years of record", () => {
  expect(factorErrorOf({recordYears: 0})).toBe(0.3)
  expect(factorErrorOf({recordYears: 3})).toBe(0.15)
})

it("takes the likely ranges from the sheet of crop values, where both ends are typed", () => {
  const {document} = readFile(
    readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
  ) as {document: Document}
  const crowns = crownsOf(new Workbook(document)) as CrownYears
  const {likely} = plantingStudy(crowns.plantings[0]!, crowns, 1)
  // Physiology 4: the ranges of spear dry matter, stubs, unsold share, building cost and upkeep.
  expect(likely).toEqual({
    Spear_dry: [0.065, 0.1],
    Stub_share: [0.4, 0.7],
    Unsold_share: [0.08, 0.25],
    Spear_cost: [1.38, 1.56],
    Upkeep_rate: [0.0015, 0.004],
  })
})
