import {valuesOf} from "../cropValues"
import {defineFunction, type Refusal} from "../define"
import {optional, quantity} from "../parameters"
import {outOfRange} from "../refusal"
import {daysBetween, meanTemperature, type Stretch} from "./growth"

/**
 * Days from `from` to `to`, cm, at a steady mean temperature: ln(to/from)/r. 0 when the two are the same, whatever
 * the temperature. Refuses `to` below `from`; at the base and below the length is never reached (#N/A).
 */
export function daysToLength(
  temperature: number,
  to: number,
  from: number,
  stretch: Stretch,
): number | Refusal {
  if (to < from)
    return outOfRange(`Length to reach (${to} cm) is below the length to start from (${from} cm)`)
  return to === from ? 0 : daysBetween(from, to, temperature, stretch)
}

export const SPEAR_DAYS_TO_LENGTH = defineFunction({
  name: "SPEAR.DAYS_TO_LENGTH",
  summary: "Days a spear takes to grow to a length at a mean temperature",
  about:
    "Growth stays in proportion to length, which holds while reserves are ample and it is not colder than about 15 °C; in " +
    "the cold, late in the season and in weak crowns spears are slower than this.",
  parameters: {
    temperature: meanTemperature,
    to: quantity("Length to reach", "cm", {above: 0, max: 100}),
    from: optional(
      quantity("Length to start from", "cm", {above: 0, max: 100}),
      null,
      "the crop value Spear_start",
    ),
    values: valuesOf("Stretch_rate", "Stretch_base", "Spear_start"),
  },
  returns: {label: "Days to that length", unit: "days"},
  refuses: ["a length to reach below the length to start from", "a temperature at or below Stretch_base"],
  sources: ["planning", "krarup2002", "ku2008"],
  example: {formula: "=SPEAR.DAYS_TO_LENGTH(12,23)", gives: 6.98},
  calculate: ({temperature, to, from, values}) =>
    daysToLength(temperature, to, from ?? values.Spear_start, values),
})
