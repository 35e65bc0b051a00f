import {isoOf, modelYearOf} from "../calendar"
import {EXAMPLE_CLIMATE, climateRange, type Climate} from "../climate/climate"
import {defineFunction} from "../define"
import {healthyFern, type HealthStep} from "../fern/healthy"
import {dates, measured, quantity} from "../parameters"
import {isRefusal, notYet, outOfRange, type Refusal} from "../refusal"
import {balanceValuesAnd, type BalanceValues} from "../root/balanceValues"
import type {Crowns} from "../root/dailyBalance"
import {lastDayThat} from "../root/lastDay"
import {modelledYear, planYear} from "../root/modelledYear"
import {openingOfCutting, rootsOfAField, storedSugar} from "../root/quantities"
import {atLeast} from "../rounding"
import {average} from "./trend"

/** Crop values of the daily balance, and how much thinner spears are once all of the season's have come. */
export type ThinningValues = BalanceValues & {readonly Spear_thinning: number}

/** The season that is cut: the crowns at the start of its model year, what drives them, and the opening. */
export interface CutSeason {
  readonly crowns: Crowns
  readonly climate: Climate
  readonly open: number
  readonly healthy: readonly HealthStep[]
  readonly values: ThinningValues
}

/**
 * Last day of cutting on which spears are expected at or above `limit`, mm, where too few days are measured for a line:
 * D = D0·(1 - Spear_thinning·u), u the share of the season's spears that the daily balance has cut by then, D0 the mean of
 * what each measurement makes it. The day before the opening where the first spears are thinner; #N/A where none get so thin.
 */
export function expectedDate(
  days: readonly number[],
  diameters: readonly number[],
  limit: number,
  {crowns, climate, open, healthy, values}: CutSeason,
): number | Refusal {
  const {first: start, days: length} = modelYearOf(open, values.Year_start)
  const latest = Math.max(open - 1, start + Math.min(values.Fern_end - 1, length) - 1)
  const plan = planYear(open, latest, values)
  if (isRefusal(plan)) return plan
  const {picked, potential} = modelledYear(crowns, climate, plan, healthy, values)
  if (potential <= 0) return notYet("No spears can come from so little sugar: there is no share of them")
  const late = days.find((day) => day > latest)
  if (late !== undefined)
    return outOfRange(
      `Measured on ${isoOf(late)}, after the fern's end of the season opened on ${isoOf(open)}`,
    )
  const left = (day: number) =>
    1 - values.Spear_thinning * (day < open ? 0 : picked[day - start]! / potential)
  const first = average(diameters.map((diameter, row) => diameter / left(days[row]!)))
  const day = lastDayThat(open - 1, latest, (on) => atLeast(first * left(on), limit))
  if (day < open - 1) return open - 1
  return day < latest
    ? day
    : notYet(`Not thinning enough: the season's last spears are still above ${limit} mm`)
}

/** The optional argument `[values]`: those of the balance and of thinning. */
export const thinningValues = balanceValuesAnd("Spear_thinning")

export const SPEAR_EXPECTED_DATE = defineFunction({
  name: "SPEAR.EXPECTED_DATE",
  summary: "Last day on which spears are expected at or above a limit, from one or two measurements",
  about:
    "For the first weeks, when two means say more of who was measured than of how the spears thin. Spears are taken to thin as " +
    "the season's are used up by the daily balance, by Spear_thinning once all have come: an assumption. From the third " +
    "measurement on, the line through your own (SPEAR.DATE_AT) knows better. A row with a blank in it is left out.",
  parameters: {
    dates: dates("Days of the measurements"),
    diameters: measured("Mean spear diameters", "mm", {above: 0, max: 60}),
    limit: quantity("Diameter limit", "mm", {above: 0, max: 60}),
    structure: rootsOfAField,
    reserve: storedSugar,
    climate: climateRange,
    open: openingOfCutting,
    healthy: healthyFern,
    values: thinningValues,
  },
  together: ["dates", "diameters"],
  returns: {label: "Last day at or above the limit", unit: "date"},
  refuses: ["a measurement after the fern's end", "spears that do not get so thin"],
  sources: ["balance", "planning"],
  example: {
    formula: `=SPEAR.EXPECTED_DATE({"2026-05-04"},{13.1},11,6000,6400,${EXAMPLE_CLIMATE},"2026-04-25")`,
    gives: "2026-06-21",
  },
  calculate: ({dates, diameters, limit, structure, reserve, climate, open, healthy, values}) =>
    expectedDate(dates, diameters, limit, {crowns: {structure, reserve}, climate, open, healthy, values}),
})
