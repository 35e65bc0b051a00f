import {isoOf, modelYearOf} from "../calendar"
import {EXAMPLE_CLIMATE, alongYear, climateRange, type Climate} from "../climate/climate"
import {defineFunction, outcomeOf, type Outcomes, type Refusal} from "../define"
import {date, optional} from "../parameters"
import {isRefusal, notYet} from "../refusal"
import {balanceValues, type BalanceValues} from "./balanceValues"
import type {Crowns} from "./dailyBalance"
import {openingOfCutting, sugarInRoot, rootsOfAField} from "./quantities"
import {reserve as reserveOf} from "./reserve"
import {upkeep} from "./upkeep"

const starts = {
  structure: {label: "Structural root at the start of the model year", unit: "kg/ha"},
  reserve: {label: "Store at the start of the model year", unit: "kg/ha"},
} as const satisfies Outcomes

/** Soil at crown depth at which spears begin to come, °C: common practice. Tells dormancy where no opening is given. */
const WAKING_SOIL = 10

/**
 * The crowns at the start of the model year from a sample taken in dormancy, at the end of the day `sampled`. A sample of
 * late winter is carried back, the upkeep and the loss of root undone day by day; one of autumn is carried on to the start
 * of the next model year. With an opening, the model year is that of the opening; without one, a sample counts as
 * dormant until the soil first reaches 10 °C and from Fern_end on.
 */
export function crownsAtStart(
  sampled: number,
  crowns: Crowns,
  climate: Climate,
  open: number | null,
  values: BalanceValues,
): Crowns | Refusal {
  const year = modelYearOf(sampled, values.Year_start)
  const day = sampled - year.first
  const soil = alongYear(climate.soil, year)
  const isAutumn = day >= values.Fern_end - 1
  if (open === null) {
    if (!isAutumn && soil.subarray(0, day + 1).some((degrees) => degrees >= WAKING_SOIL))
      return notYet(
        `Sampled while growing: by ${isoOf(sampled)} the soil has reached ${WAKING_SOIL} °C; give the opening if it came later`,
      )
    return isAutumn ? carriedOn(crowns, soil, day, values) : carriedBack(crowns, soil, day, values)
  }
  const ofOpening = modelYearOf(open, values.Year_start)
  if (ofOpening.first === year.first) {
    if (sampled < open) return carriedBack(crowns, soil, day, values)
    return notYet(
      isAutumn
        ? `Sampled on ${isoOf(sampled)}, after the season that opened on ${isoOf(open)}: give the opening of the next season`
        : `Sampled while growing: ${isoOf(sampled)} is not before the opening, ${isoOf(open)}`,
    )
  }
  if (ofOpening.first !== year.first + year.days)
    return notYet(`Sampled on ${isoOf(sampled)}: not in the winter before the opening, ${isoOf(open)}`)
  return isAutumn
    ? carriedOn(crowns, soil, day, values)
    : notYet(
        `Sampled on ${isoOf(sampled)}, before that year's fern ended on ${isoOf(year.first + values.Fern_end - 1)}: ` +
          `not in the winter before the opening, ${isoOf(open)}`,
      )
}

/** Undoes the days from `day` back to the start of the year. */
function carriedBack(
  {structure, reserve}: Crowns,
  soil: Float64Array,
  day: number,
  values: BalanceValues,
): Crowns {
  for (let at = day; at >= 0; at--) {
    structure /= 1 - values.Root_turnover
    reserve += upkeep(structure, soil[at]!, 1, values)
  }
  return {structure, reserve}
}

/** Goes on from the end of `day` to the end of the year, on upkeep alone. */
function carriedOn(
  {structure, reserve}: Crowns,
  soil: Float64Array,
  day: number,
  values: BalanceValues,
): Crowns {
  for (let at = day + 1; at < soil.length; at++) {
    reserve = Math.max(0, reserve - upkeep(structure, soil[at]!, 1, values))
    structure *= 1 - values.Root_turnover
  }
  return {structure, reserve}
}

export const ROOT_START = defineFunction({
  name: "ROOT.START",
  summary: "The crowns at the start of the model year, from a sample taken in dormancy",
  about:
    "The daily balance starts on 1 January (1 July in the southern half). A sample of late winter is carried back to it by undoing " +
    "each day's upkeep and loss of root; one taken after the fern's end is carried on. Pass the results to ROOT.SEASON.",
  parameters: {
    what: outcomeOf(starts),
    sampled: date("Day of the sample"),
    sugar: sugarInRoot,
    structure: rootsOfAField,
    climate: climateRange,
    values: balanceValues,
    open: optional(openingOfCutting, null),
  },
  returns: {label: "The crowns at the start", unit: "as named", named: starts},
  refuses: ["a sample taken between the opening and the fern's end"],
  sources: ["balance"],
  example: {
    formula: `=ROOT.START("reserve","2026-03-05",530,5500,${EXAMPLE_CLIMATE})`,
    gives: 6448.3,
  },
  calculate({what, sampled, sugar, structure, climate, values, open}) {
    const crowns = crownsAtStart(
      sampled,
      {structure, reserve: reserveOf(sugar, structure)},
      climate,
      open,
      values,
    )
    return isRefusal(crowns) ? crowns : crowns[what]
  },
})
