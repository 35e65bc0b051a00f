import {isoOf} from "../calendar"
import {EXAMPLE_CLIMATE, climateRange, type Climate} from "../climate/climate"
import {defineFunction} from "../define"
import {healthAlong, healthyFern, type HealthStep} from "../fern/healthy"
import {date} from "../parameters"
import {isRefusal, outOfRange, type Refusal} from "../refusal"
import {balanceValues, type BalanceValues} from "./balanceValues"
import {dailyBalance, emptyCourse} from "./dailyBalance"
import {driversFor, planYear, type YearPlan} from "./modelledYear"
import {closeOfCutting, openingOfCutting, rootsOfAField, sugarInRoot} from "./quantities"
import {reserve as reserveOf} from "./reserve"
import {sugarOn} from "./yearOutcome"

/** Sugar at the start that the search goes up to, mg/g: more than any root was found to hold. */
const MOST_SUGAR = 900

/**
 * Store at the start of the model year, kg/ha, for which the daily balance has a given sugar, mg/g, at the end of a day;
 * found by halving to 1e-9 of itself. Refuses a sugar that no store at the start would bring.
 */
export function reserveFor(
  sampled: number,
  sugar: number,
  structure: number,
  climate: Climate,
  plan: YearPlan,
  healthy: readonly HealthStep[],
  values: BalanceValues,
): number | Refusal {
  const {first, days} = plan.year
  const day = sampled - first
  if (day < 0 || day >= days)
    return outOfRange(
      `Day of the sample ${isoOf(sampled)} must be in the model year of the opening, ${isoOf(first)} to ${isoOf(first + days - 1)}`,
    )
  const drivers = driversFor(climate, plan.year, values)
  const health = healthAlong(healthy, plan.year)
  const course = emptyCourse(days)
  const sugarFrom = (reserve: number) =>
    sugarOn(dailyBalance({structure, reserve}, drivers, plan.cutting, health, values, course), day)
  let low = 0
  let high = reserveOf(MOST_SUGAR, structure)
  if (sugarFrom(low) > sugar || sugarFrom(high) < sugar)
    return outOfRange(
      `No store at the start of the year gives ${sugar} mg/g on ${isoOf(sampled)}: the balance reaches ` +
        `${sugarFrom(low).toFixed(1)} to ${sugarFrom(high).toFixed(1)} there`,
    )
  while (high - low > 1e-9 * high) {
    const middle = (low + high) / 2
    if (middle === low || middle === high) break
    if (sugarFrom(middle) < sugar) low = middle
    else high = middle
  }
  return (low + high) / 2
}

export const ROOT_RESERVE_FOR = defineFunction({
  name: "ROOT.RESERVE_FOR",
  summary: "Store at the start of the year for which the balance has a sampled sugar on its day",
  about:
    "Takes a sample of any time of the year back to the start, while growing too, with the season as it was cut. The structural root " +
    "at the start is taken as known. Weigh the sample against the balance first (ROOT.WEIGH): ten roots are not the field.",
  parameters: {
    sampled: date("Day of the sample"),
    sugar: sugarInRoot,
    structure: rootsOfAField,
    climate: climateRange,
    open: openingOfCutting,
    close: closeOfCutting,
    healthy: healthyFern,
    values: balanceValues,
  },
  returns: {label: "Store at the start of the model year", unit: "kg/ha"},
  refuses: ["a sugar that no store at the start would bring", "a day outside the model year of the opening"],
  sources: ["balance"],
  example: {
    formula: `=ROOT.RESERVE_FOR("2026-07-19",300,6000,${EXAMPLE_CLIMATE},"2026-04-25","2026-06-19")`,
    gives: 6121.6,
  },
  calculate({sampled, sugar, structure, climate, open, close, healthy, values}) {
    const plan = planYear(open, close, values)
    return isRefusal(plan) ? plan : reserveFor(sampled, sugar, structure, climate, plan, healthy, values)
  },
})
