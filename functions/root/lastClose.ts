import {isoOf, modelYearOf} from "../calendar"
import {EXAMPLE_CLIMATE, climateRange, type Climate} from "../climate/climate"
import {defineFunction} from "../define"
import {healthyFern, type HealthStep} from "../fern/healthy"
import {quantity} from "../parameters"
import {isRefusal, notYet, type Refusal} from "../refusal"
import {atLeast} from "../rounding"
import {balanceValues, type BalanceValues} from "./balanceValues"
import type {Crowns} from "./dailyBalance"
import {lastDayThat} from "./lastDay"
import {modelledYear, planYear} from "./modelledYear"
import {openingOfCutting, rootsOfAField, storedSugar} from "./quantities"
import {yearOutcome} from "./yearOutcome"

/**
 * Last day of cutting for which the daily balance never takes the store below your floor, kg/ha, that year; the lowest
 * comes while the fern is built. #N/A when even a season without cutting goes below it, or none before the fern's end does.
 */
export function lastClose(
  floor: number,
  crowns: Crowns,
  climate: Climate,
  open: number,
  healthy: readonly HealthStep[],
  values: BalanceValues,
): number | Refusal {
  const {first, days} = modelYearOf(open, values.Year_start)
  const lowest = (close: number) => {
    const plan = planYear(open, close, values)
    if (isRefusal(plan)) return plan
    return yearOutcome("lowest reserve", modelledYear(crowns, climate, plan, healthy, values), crowns, plan)
  }
  const holds = (close: number) => {
    const reserve = lowest(close)
    return !isRefusal(reserve) && atLeast(reserve, floor)
  }
  const latest = Math.min(first + values.Fern_end - 2, first + days - 1)
  if (open - 1 > latest)
    return notYet(
      `No season: the opening, ${isoOf(open)}, comes after the fern's end, ${isoOf(first + values.Fern_end - 1)}`,
    )
  const close = lastDayThat(open - 1, latest, holds)
  if (close < open - 1) {
    const uncut = lowest(open - 1)
    return isRefusal(uncut)
      ? uncut
      : notYet(
          `Never: even without cutting the store falls to ${uncut.toFixed(0)} kg/ha, below your floor of ${floor}`,
        )
  }
  return close < latest
    ? close
    : notYet(
        `No close before the fern's end, ${isoOf(first + values.Fern_end - 1)}, takes the store below your floor`,
      )
}

export const ROOT_LAST_CLOSE = defineFunction({
  name: "ROOT.LAST_CLOSE",
  summary: "Last day of cutting that keeps the year's lowest reserve at or above your floor",
  about:
    "By the daily reserve balance. The lowest comes two to six weeks after the close, when the store has built the fern as " +
    "well, so it lies well below the reserve at the close. The floor is your own number: no published one was found.",
  parameters: {
    floor: quantity("Your floor for the lowest of the year", "kg/ha", {min: 0}),
    structure: rootsOfAField,
    reserve: storedSugar,
    climate: climateRange,
    open: openingOfCutting,
    healthy: healthyFern,
    values: balanceValues,
  },
  returns: {label: "Last close", unit: "date"},
  refuses: [
    "a floor that even a season without cutting goes below",
    "a floor that no close reaches",
    "an opening after the fern's end",
  ],
  sources: ["balance", "planning"],
  example: {
    formula: `=ROOT.LAST_CLOSE(2200,6000,6400,${EXAMPLE_CLIMATE},"2026-04-25")`,
    gives: "2026-06-24",
  },
  calculate: ({floor, structure, reserve, climate, open, healthy, values}) =>
    lastClose(floor, {structure, reserve}, climate, open, healthy, values),
})
