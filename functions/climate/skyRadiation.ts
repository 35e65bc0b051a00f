import {defineFunction} from "../define"
import {date} from "../parameters"
import {latitudeOfField} from "./place"
import {sunPath} from "./sunPath"

/** Gsc, MJ/m²/min; Allen et al. (1998), with eq. 21. */
const SOLAR_CONSTANT = 0.082

/**
 * Solar radiation of a day above the atmosphere on a level surface, MJ/m²/day (Allen et al. 1998, eq. 21). Latitude in
 * degrees, south negative. 0 where the sun does not rise that day.
 */
export function skyRadiation(degrees: number, day: number): number {
  const {latitude: phi, declination: delta, sunset: omega, nearness: dr} = sunPath(degrees, day)
  const height = omega * Math.sin(phi) * Math.sin(delta) + Math.cos(phi) * Math.cos(delta) * Math.sin(omega)
  return ((24 * 60) / Math.PI) * SOLAR_CONSTANT * dr * height // eq. 21
}

export const CLIMATE_SKY_RADIATION = defineFunction({
  name: "CLIMATE.SKY_RADIATION",
  summary: "Solar radiation above the atmosphere on a day at a latitude",
  about:
    "What would reach level ground if there were no air. Beyond the polar circles it gives 0 on days on which the sun " +
    "does not rise.",
  parameters: {latitude: latitudeOfField, date: date("Day")},
  returns: {label: "Solar radiation above the atmosphere", unit: "MJ/m²/day"},
  sources: ["fao56"],
  example: {formula: '=CLIMATE.SKY_RADIATION(-20,"2026-09-03")', gives: 32.2},
  calculate: ({latitude, date}) => skyRadiation(latitude, date),
})
