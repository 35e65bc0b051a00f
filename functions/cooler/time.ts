import {defineFunction, type Refusal} from "../define"
import {quantity} from "../parameters"
import {outOfRange} from "../refusal"
import {nothingToCool, spearTemperature} from "./heat"

/** The arguments of moving water, shared with COOLER.AFTER. */
export const movingWater = {
  water: quantity("Temperature of the water", "°C", {min: 0, max: 40}),
  half_time: quantity("Time in which half the difference to the water goes", "min", {above: 0}),
}

export const aboutWater =
  "Each half-time takes away half of what is left of the difference to the water. Half-times from memory: 1.1 minutes fully " +
  "exposed, 2.2 in a lidded crate with the spears upright, double or more in deep stacks: measure your own. The same water " +
  "goes round for hours or days and carries germs from load to load: keep it clean and treated as your local food safety " +
  "code and the product's label say."

/** Minutes in moving water from one temperature to another: halfTime·log2((from - water)/(to - water)). */
export function time(from: number, to: number, water: number, halfTime: number): number | Refusal {
  if (water >= to)
    return outOfRange(`Water at ${water} °C never cools spears to ${to} °C: it must be colder than that`)
  return nothingToCool(from, to) ?? halfTime * Math.log2((from - water) / (to - water))
}

export const COOLER_TIME = defineFunction({
  name: "COOLER.TIME",
  summary: "Time in moving water to cool spears",
  about: aboutWater,
  parameters: {
    from: spearTemperature("Temperature as it comes in"),
    to: spearTemperature("Temperature to reach"),
    ...movingWater,
  },
  returns: {label: "Time in the water", unit: "min"},
  refuses: [
    "water that is not colder than the temperature to reach",
    "a temperature to reach that is not below the first",
  ],
  sources: ["precooling"],
  example: {formula: "=COOLER.TIME(25,3,1,2.2)", gives: 7.9},
  calculate: ({from, to, water, half_time}) => time(from, to, water, half_time),
})
