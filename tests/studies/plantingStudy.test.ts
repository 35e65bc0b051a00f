import {expect, it} from "vitest"
import {factorErrorOf, sugarErrorOf} from "../../src/studies/plantingStudy"

it("takes the sugar's error from the interval of the sample", () => {
  // Half of 400 - 25.632 to 400 + 25.632 is 20 standard errors of 1.2816 each: 20/400.
  const sample = {day: 46086, sugar: 400, lower: 374.368, upper: 425.632}
  expect(sugarErrorOf({measured: [sample]})).toBeCloseTo(0.05, 12)
})

it("takes the error of one plant where there is no interval", () => {
  // √(0.20² + 0.06²) = √0.0436
  expect(sugarErrorOf({measured: []})).toBeCloseTo(0.208806, 6)
  expect(sugarErrorOf({measured: [{day: 46086, sugar: 400, lower: null, upper: null}]})).toBeCloseTo(
    0.208806,
    6,
  )
})

it("halves the doubt about the factor with three years of record", () => {
  expect(factorErrorOf({recordYears: 0})).toBe(0.3)
  expect(factorErrorOf({recordYears: 3})).toBe(0.15)
})
