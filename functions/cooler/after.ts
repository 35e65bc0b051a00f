import {defineFunction, type Refusal} from "../define"
import {quantity} from "../parameters"
import {outOfRange} from "../refusal"
import {spearTemperature} from "./heat"
import {aboutWater, movingWater} from "./time"

/** Temperature after some minutes in moving water, °C: water + (from - water)·0.5^(minutes/halfTime). */
export function after(from: number, water: number, halfTime: number, minutes: number): number | Refusal {
  if (water > from) return outOfRange(`Water at ${water} °C is warmer than the spears, ${from} °C`)
  return water + (from - water) * 0.5 ** (minutes / halfTime)
}

export const COOLER_AFTER = defineFunction({
  name: "COOLER.AFTER",
  summary: "Temperature of spears after some minutes in moving water",
  about: aboutWater,
  parameters: {
    from: spearTemperature("Temperature as it comes in"),
    ...movingWater,
    minutes: quantity("Time in the water", "min", {min: 0}),
  },
  returns: {label: "Temperature reached", unit: "°C"},
  refuses: ["water warmer than the spears"],
  sources: ["precooling"],
  example: {formula: "=COOLER.AFTER(25,1,2.2,6.6)", gives: 4},
  calculate: ({from, water, half_time, minutes}) => after(from, water, half_time, minutes),
})
