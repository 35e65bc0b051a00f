import {expect, it} from "vitest"
import {ASSUMED_RISK} from "../../../src/studies/lenderRisk"
import {SPREADS_ASSUMED, WEATHER_ASSUMED} from "../../../src/views/pictures/spreadsAssumed"

it("states every spread that is assumed, and nothing else", () => {
  const {airSpread, sunSpread, yearSpread, fieldSpread, doubt, priceVariation} = ASSUMED_RISK
  const numbersIn = (words: string) => words.match(/\d+(\.\d+)?/g)!.map(Number)
  expect(numbersIn(WEATHER_ASSUMED)).toEqual([airSpread, 100 * sunSpread])
  expect(numbersIn(SPREADS_ASSUMED)).toEqual(
    [yearSpread, fieldSpread, doubt, priceVariation].map((share) => 100 * share),
  )
})
