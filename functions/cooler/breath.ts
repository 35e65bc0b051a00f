import {defineFunction} from "../define"
import {optional, quantity, type Parameter} from "../parameters"
import {isRefusal, outOfRange} from "../refusal"

/**
 * Respiration of asparagus, ml CO2 a kg and hour: temperature °C, lower and upper end (Suslow, UC Davis). In mg these are
 * the ranges of Handbook 66 (1986), 27-80 at 0 °C to 500-600 at 25 °C.
 */
const RATES = [
  [0, 14, 40],
  [5, 28, 68],
  [10, 45, 152],
  [15, 80, 168],
  [20, 138, 250],
  [25, 250, 300],
] as const

/** mg of CO2 in one of these ml: a flat 2, by which the two sources agree at every temperature. */
const MG_ML = 2

/** Heat of a rate of 1 mg CO2 a kg and hour, W a tonne: 61 kcal a tonne and day, Handbook 66. */
const W_MG = 2.96

/**
 * Heat that spears give off by breathing, W: at the lower end (-1), the middle (0) or the upper end (1) of the published
 * range. Straight lines between the rows of the table, 0 to 25 °C; weight in kg.
 */
export function breath(temperature: number, weight: number, end: -1 | 0 | 1): number {
  const above = Math.max(
    1,
    RATES.findIndex(([row]) => row >= temperature),
  )
  const [t0, low0, high0] = RATES[above - 1]!
  const [t1, low1, high1] = RATES[above]!
  const share = (temperature - t0) / (t1 - t0)
  const low = low0 + share * (low1 - low0)
  const high = high0 + share * (high1 - high0)
  const ml = (low + high) / 2 + (end * (high - low)) / 2
  return (ml * MG_ML * W_MG * weight) / 1000
}

const END = "Which end of the published range"

const endOrMiddle: Parameter<-1 | 0 | 1> = {
  label: END,
  unit: "number",
  takes: "-1 (lower), 0 (middle) or 1 (upper)",
  isRange: false,
  read(given) {
    const end = quantity(END, "number").read(given)
    if (isRefusal(end) || end === -1 || end === 0 || end === 1) return end
    return outOfRange(`${END} must be -1 (lower), 0 (middle) or 1 (upper), not ${end}`)
  },
}

export const COOLER_BREATH = defineFunction({
  name: "COOLER.BREATH",
  summary: "Heat that spears give off by breathing",
  about:
    `Published range, ml CO2 a kg and hour: ${RATES.map(([t, low, high]) => `${low} to ${high} at ${t} °C`).join(", ")}; ` +
    "2 mg a ml, 2.96 W a tonne for each mg. The rate falls steeply in the first day after cutting: take the upper end for " +
    "the day's crop, the lower for what has been in store.",
  parameters: {
    temperature: quantity("Temperature of the spears", "°C", {min: 0, max: 25}),
    weight: quantity("Weight of the spears", "kg", {min: 0}),
    side: optional(endOrMiddle, 0 as const),
  },
  returns: {label: "Heat of breathing", unit: "W"},
  sources: ["ucPostharvest", "handbook66"],
  example: {formula: "=COOLER.BREATH(0,1000)", gives: 159.8},
  calculate: ({temperature, weight, side}) => breath(temperature, weight, side),
})
