import {isoOf, yearOf} from "../calendar"
import {defineFunction, type Refusal} from "../define"
import {date, quantity} from "../parameters"
import {outOfRange} from "../refusal"

/** Chosen: no field of this crop is kept so long, and a year typed as a date (2017 is a day of 1905) lies beyond it. */
const OLDEST = 100 // years

/**
 * Age of a planting in a season, years: season year less planting year, so the planting year is age 0 whatever the
 * month. Refuses a season before the planting year, and an age above 100 years as a slip.
 */
export function age(planted: number, season: number): number | Refusal {
  const years = season - yearOf(planted)
  if (years < 0) return outOfRange(`Season ${season} is before the planting (${isoOf(planted)})`)
  if (years > OLDEST)
    return outOfRange(
      `Planted on ${isoOf(planted)}, it would be ${years} years old in ${season}: a year may stand where the date belongs`,
    )
  return years
}

export const STAND_AGE = defineFunction({
  name: "STAND.AGE",
  summary: "Age of a planting in a season, the planting year being 0",
  about: "The first spring after the planting year is age 1, also where crowns a year old were planted.",
  parameters: {
    planted: date("Day of planting"),
    season: quantity("Season", "year", {min: 1904, max: 9999, whole: true}),
  },
  returns: {label: "Age (planting year = 0)", unit: "years"},
  refuses: ["a season before the planting year", "an age above 100 years"],
  sources: ["planning"],
  example: {formula: '=STAND.AGE("2017-04-12",2026)', gives: 9},
  calculate: ({planted, season}) => age(planted, season),
})
