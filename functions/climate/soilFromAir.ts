import {defineFunction, type Refusal} from "../define"
import {date, dates, measured, optional, quantity, type Parameter} from "../parameters"
import {wrongKind} from "../refusal"
import {EXAMPLE_CLIMATE, climateRange, type Climate} from "./climate"
import {onDay} from "./onDay"
import {soilSwing} from "./soil"

/**
 * Soil temperature of a day at crown depth, °C, from the air recorded before it: the soil that is normal on that day,
 * and `swing` times the mean of recorded less normal air over the `lag` days that end with it. Rows may stand in any
 * order; a row without date or air is left out, and with no row in that stretch the answer is the normal soil. Refuses
 * lists of different length.
 */
export function soilFromAir(
  day: number,
  days: readonly (number | null)[],
  airs: readonly (number | null)[],
  climate: Climate,
  swing: number,
  lag: number,
): number | Refusal {
  if (days.length !== airs.length)
    return wrongKind(
      `Days of the records has ${days.length} cells and the air temperatures ${airs.length}: sizes differ`,
    )
  let warmer = 0
  let count = 0
  for (const [row, recorded] of days.entries()) {
    const air = airs[row]!
    if (recorded === null || air === null || recorded > day || recorded <= day - lag) continue
    warmer += air - onDay(climate.air, recorded)
    count++
  }
  const normal = onDay(climate.soil, day)
  return count === 0 ? normal : normal + (swing * warmer) / count
}

/** A list whose blanks reach the calculation, which then knows that nothing is recorded yet. */
const withBlanks = (list: Parameter<readonly number[]>): Parameter<readonly (number | null)[]> => ({
  ...list,
  isList: false,
})

export const CLIMATE_SOIL_FROM_AIR = defineFunction({
  name: "CLIMATE.SOIL_FROM_AIR",
  summary: "Soil temperature of a day at crown depth, from the air recorded before it",
  about:
    "A stand-in for days on which the soil is not measured: the normal soil of the day, and three quarters of how much " +
    "warmer than normal the air was, on average, over the 20 days that end with it. Rows with a blank are left out, and " +
    "so are air temperatures that are not there yet (#N/A). With no record in those days it gives the normal. The form " +
    "and both numbers are assumptions: compare it with a thermometer at crown depth.",
  parameters: {
    date: date("Day"),
    dates: withBlanks(dates("Days of the records")),
    airs: {
      ...withBlanks(measured("Mean air temperatures recorded", "°C", {min: -60, max: 60})),
      skips: ["#N/A"],
    },
    climate: climateRange,
    swing: soilSwing,
    lag: optional(quantity("Days of air that count", "days", {min: 1, max: 182, whole: true}), 20),
  },
  returns: {label: "Mean soil temperature of the day", unit: "°C"},
  refuses: ["lists of different length"],
  sources: ["soilFromAir"],
  example: {
    formula: `=CLIMATE.SOIL_FROM_AIR("2026-04-25",{"2026-04-23","2026-04-24","2026-04-25"},{14,15,16},${EXAMPLE_CLIMATE})`,
    gives: 11.5,
  },
  calculate: ({date, dates, airs, climate, swing, lag}) =>
    soilFromAir(date, dates, airs, climate, swing, lag),
})
