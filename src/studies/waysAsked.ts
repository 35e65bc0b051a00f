import type {BestWeeks} from "./bestWeeks"
import type {BestWeeksInput} from "./bestWeeksAsked"
import type {WaysInput} from "./drawWays"
import {ASSUMED_RISK} from "./lenderRisk"

/**
 * What the ways that were found, and those beside them, are drawn on: the spreads of the study of a farm's risk, which at the
 * same seed draws the same years.
 */
export function waysAsked(
  asked: BestWeeksInput,
  {plantings}: Pick<BestWeeks, "plantings">,
  firstYear: number,
  seed: number,
  /** The day that the plan stands on. */
  asOf: number | null,
): WaysInput {
  const {climate, year, values} = asked.site
  return {
    ...ASSUMED_RISK,
    asked,
    ways: plantings.map(({ways}) => ways),
    grounds: plantings.map(({ground}) => ground),
    firstYear,
    gone: asOf === null ? 0 : Math.min(Math.max(0, asOf - year.first), year.days),
    climate,
    modelYear: year,
    values,
    fernLoss: null,
    seed,
  }
}
