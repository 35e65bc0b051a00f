import {defineFunction} from "../define"
import {date} from "../parameters"
import {latitudeOfField} from "./place"
import {sunPath} from "./sunPath"

/**
 * Hours from sunrise to sunset, N = 24·ωs/π (Allen et al. 1998, eq. 34). Latitude in degrees, south negative. 24 where
 * the sun does not set that day, 0 where it does not rise.
 */
export const dayLength = (latitude: number, day: number): number =>
  (24 * sunPath(latitude, day).sunset) / Math.PI

export const CLIMATE_DAY_LENGTH = defineFunction({
  name: "CLIMATE.DAY_LENGTH",
  summary: "Hours from sunrise to sunset on a day at a latitude",
  about:
    "For a flat horizon and the middle of the sun's disc; refraction and dusk are not counted. Beyond the polar circles " +
    "it gives 24 where the sun does not set that day and 0 where it does not rise.",
  parameters: {latitude: latitudeOfField, date: date("Day")},
  returns: {label: "Length of the day", unit: "h"},
  sources: ["fao56"],
  example: {formula: '=CLIMATE.DAY_LENGTH(-20,"2026-09-03")', gives: 11.7},
  calculate: ({latitude, date}) => dayLength(latitude, date),
})
