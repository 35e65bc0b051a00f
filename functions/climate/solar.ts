import {defineFunction, type Refusal} from "../define"
import {date, optional, quantity} from "../parameters"
import {outOfRange} from "../refusal"
import {latitudeOfField} from "./place"
import {skyRadiation} from "./skyRadiation"

/**
 * Solar radiation at the ground, MJ/m²/day, from the highest and lowest air temperature: Rs = kRs·√(high - low)·Ra
 * (Allen et al. 1998, eq. 50). `coast` is kRs, 0.16 inland and 0.19 at the coast. As published, without a cap at the
 * clear sky. Refuses a highest temperature below the lowest.
 */
export function solar(
  latitude: number,
  day: number,
  high: number,
  low: number,
  coast: number,
): number | Refusal {
  if (high < low) return outOfRange(`Highest temperature (${high} °C) is below the lowest (${low} °C)`)
  return coast * Math.sqrt(high - low) * skyRadiation(latitude, day) // eq. 50
}

export const CLIMATE_SOLAR = defineFunction({
  name: "CLIMATE.SOLAR",
  summary: "Solar radiation at the ground, from the day's highest and lowest temperature",
  about:
    "A stand-in where radiation is not measured: a clear day is warm and its night cold. The factor is 0.16 inland and " +
    "0.19 at the coast. A single day can be far off, weeks less so. Where the two temperatures are more than about 22 °C " +
    "apart inland, it gives more than a clear sky lets through near sea level.",
  parameters: {
    latitude: latitudeOfField,
    date: date("Day"),
    high: quantity("Highest air temperature of the day", "°C", {min: -60, max: 60}),
    low: quantity("Lowest air temperature of the day", "°C", {min: -60, max: 60}),
    coast: optional(
      quantity("Factor: 0.16 inland, 0.19 at the coast", "per √°C", {min: 0.1, max: 0.25}),
      0.16,
    ),
  },
  returns: {label: "Solar radiation at the ground", unit: "MJ/m²/day"},
  refuses: ["a highest temperature below the lowest"],
  sources: ["fao56"],
  example: {formula: '=CLIMATE.SOLAR(45.72,"2026-07-15",26.6,14.8)', gives: 22.3},
  calculate: ({latitude, date, high, low, coast}) => solar(latitude, date, high, low, coast),
})
