import {expect, it} from "vitest"
import type {PlantingRisk} from "../../../src/studies/waysRisk"
import type {WayName} from "../../../src/studies/waysBeside"
import {PLAIN_REGION} from "../../../src/workbook/region"
import {waysWords} from "../../../src/views/pictures/waysWords"

/** A planting whose other ways gain so much in the mean, with this error. */
const planting = (name: string, ...gains: readonly [WayName, number, number][]) =>
  ({
    planting: name,
    ways: [
      {name: "as found", against: null},
      ...gains.map(([way, mean, meanError]) => ({name: way, against: {more: {mean, meanError}}})),
    ],
  }) as unknown as PlantingRisk
const words = (...plantings: PlantingRisk[]) => waysWords(plantings, 150, PLAIN_REGION)

it("says that no other way comes out better", () => {
  const none = "Of those tried no other way comes out clearly more than 150 money/ha better in the mean."
  expect(words(planting("Long Acre", ["a week less", -300, 10], ["cleared later", 140, 10]))).toBe(none)
  expect(words(planting("Long Acre"))).toBe(none)
  // Less than two standard errors: it may come from the draws.
  expect(words(planting("Long Acre", ["a week less", 190, 100]))).toBe(none)
})

it("names the best of the ways that do", () => {
  const long = planting("Long Acre", ["a week less", 200, 20], ["cleared later", 420, 20])
  expect(words(long)).toBe(
    "Better in the mean than as found: Long Acre cleared a year later, by 420 money/ha.",
  )
  expect(words(long, planting("Well Field", ["a week more", -5, 1]))).toBe(
    "Better in the mean than as found: Long Acre cleared a year later, by 420 money/ha. " +
      "Elsewhere no other way comes out clearly more than 150 money/ha better in the mean.",
  )
})
