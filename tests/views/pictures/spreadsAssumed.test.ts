import {expect, it} from "vitest"
import {ASSUMED_RISK} from "../../../src/studies/lenderRisk"
import {PLAIN_REGION} from "../../../src/workbook/region"
import {SPREADS_ASSUMED, weatherAssumed} from "../../../src/views/pictures/spreadsAssumed"

it("states every spread that is assumed, and nothing else", () => {
  const {airSpread, sunSpread, yearSpread, fieldSpread, doubt, priceVariation} = ASSUMED_RISK
  const numbersIn = (words: string) => words.match(/\d+(\.\d+)?/g)!.map(Number)
  expect(numbersIn(weatherAssumed(PLAIN_REGION))).toEqual([airSpread, 100 * sunSpread])
  expect(numbersIn(SPREADS_ASSUMED)).toEqual(
    [yearSpread, fieldSpread, doubt, priceVariation].map((share) => 100 * share),
  )
})

it("gives the warmth as a difference in the units that are shown: 1 °C is 1.8 °F, not 33.8", () => {
  expect(weatherAssumed({...PLAIN_REGION, measures: "US"})).toMatch(/^1\.8\u00a0°F warmer or colder and 5/)
})
