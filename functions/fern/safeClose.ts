import {isoOf, modelYearOf} from "../calendar"
import {EXAMPLE_CLIMATE, climateRange, type Climate} from "../climate/climate"
import {defineFunction} from "../define"
import {optional, quantity} from "../parameters"
import {isRefusal, notYet, type Refusal} from "../refusal"
import {balanceValues, type BalanceValues} from "../root/balanceValues"
import type {Crowns} from "../root/dailyBalance"
import {lastDayThat} from "../root/lastDay"
import {modelledYear, planYear} from "../root/modelledYear"
import {openingOfCutting, rootsOfAField, storedSugar} from "../root/quantities"
import {refillDay} from "../root/yearOutcome"
import {healthyFern, type HealthStep} from "./healthy"

/**
 * Latest close for which the daily balance fills the store again at least `margin` days before the fern's end; every
 * earlier close does so too. #N/A when not even a season without cutting does.
 */
export function safeClose(
  crowns: Crowns,
  climate: Climate,
  open: number,
  margin: number,
  healthy: readonly HealthStep[],
  values: BalanceValues,
): number | Refusal {
  const {first, days} = modelYearOf(open, values.Year_start)
  const wanted = values.Fern_end - 1 - margin
  const refills = (close: number) => {
    const plan = planYear(open, close, values)
    if (isRefusal(plan)) return false
    const refilled = refillDay(
      modelledYear(crowns, climate, plan, healthy, values),
      crowns,
      plan.cutting.open,
    )
    return refilled >= 0 && refilled <= wanted
  }
  const close = lastDayThat(open - 1, Math.min(first + wanted, first + days - 1), refills)
  return close >= open - 1
    ? close
    : notYet(
        `Never: even without cutting the store is not full again ${margin} days before the fern ends on ` +
          isoOf(first + values.Fern_end - 1),
      )
}

export const FERN_SAFE_CLOSE = defineFunction({
  name: "FERN.SAFE_CLOSE",
  summary: "Latest close that lets the fern fill the store again in time",
  about:
    "By the daily reserve balance: the store counts as full at 95 % of the sugar at opening. A margin of 30 days keeps a field " +
    "at the length that bears most over many years; with 14 the first year stands it, the field does not. Frost, disease or " +
    "drought that take the fern early take days from it: put them in as the healthy share.",
  parameters: {
    structure: rootsOfAField,
    reserve: storedSugar,
    climate: climateRange,
    open: openingOfCutting,
    margin: optional(
      quantity("Days in hand before the fern's end", "days", {min: 0, max: 366, whole: true}),
      30,
    ),
    healthy: healthyFern,
    values: balanceValues,
  },
  returns: {label: "Latest close", unit: "date"},
  refuses: ["a store that is not full again in time even without cutting"],
  sources: ["balance", "planning"],
  example: {
    formula: `=FERN.SAFE_CLOSE(6000,6400,${EXAMPLE_CLIMATE},"2026-04-25")`,
    gives: "2026-06-28",
  },
  calculate: ({structure, reserve, climate, open, margin, healthy, values}) =>
    safeClose({structure, reserve}, climate, open, margin, healthy, values),
})
