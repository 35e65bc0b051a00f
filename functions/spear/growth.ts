import {valuesOf} from "../cropValues"
import {defineFunction, type Refusal} from "../define"
import {quantity} from "../parameters"
import {notYet} from "../refusal"

/** The two crop values of growth: a per day and °C, Tb in °C. */
export interface Stretch {
  readonly Stretch_rate: number
  readonly Stretch_base: number
}

/**
 * Relative growth in length, per day: r = a·max(0, T - Tb). A spear of length L gains r·L a day, so it grows
 * exponentially. 0 at the base and below.
 */
export const growth = (temperature: number, {Stretch_rate, Stretch_base}: Stretch): number =>
  Stretch_rate * Math.max(0, temperature - Stretch_base)

/**
 * Days in which a spear grows from one length to another, both cm: ln(to/from)/r. Below 0 when `to` is the shorter.
 * At the base and below it never gets there (#N/A).
 */
export function daysBetween(
  from: number,
  to: number,
  temperature: number,
  stretch: Stretch,
): number | Refusal {
  const r = growth(temperature, stretch)
  if (r === 0)
    return notYet(`Never: at ${temperature} °C a spear does not grow, its base is ${stretch.Stretch_base} °C`)
  return Math.log(to / from) / r
}

export const meanTemperature = quantity("Mean air temperature", "°C", {min: -60, max: 60})

export const SPEAR_GROWTH = defineFunction({
  name: "SPEAR.GROWTH",
  summary: "Relative growth of a spear in length a day at a temperature",
  about:
    "A straight line above the base, set to the range of 0.22 to 1.07 a day that Krarup & Contreras measured in a spring " +
    "field, which it covers from 9.4 to 26.4 °C. Ku and others found growth fastest at 30 °C: above that the line gives " +
    "too much. Day and night differ, so take the mean of the whole day.",
  parameters: {
    temperature: meanTemperature,
    values: valuesOf("Stretch_rate", "Stretch_base"),
  },
  returns: {label: "Relative growth", unit: "per day"},
  sources: ["planning", "krarup2002", "ku2008"],
  example: {formula: "=SPEAR.GROWTH(25)", gives: 1},
  calculate: ({temperature, values}) => growth(temperature, values),
})
