import {defineFunction, type Refusal} from "../define"
import {quantity} from "../parameters"
import {outOfRange} from "../refusal"

/**
 * Sugar in the root, mg per g dry root, by a straight line through your own laboratory pairs: slope·reading + offset,
 * the reading in °Brix. Refuses what no root can hold: below 0, or 1000 and more.
 */
export function sugar(reading: number, slope: number, offset: number): number | Refusal {
  const sugar = slope * reading + offset
  const given = `Your line gives ${sugar.toFixed(1)} mg/g at ${reading} °Brix`
  if (sugar < 0) return outOfRange(`${given}, which is below 0`)
  if (sugar >= 1000) return outOfRange(`${given}, which is no less than the whole root (1000 mg/g)`)
  return sugar
}

export const sapReading = quantity("Refractometer reading of the sap", "°Brix", {min: 0, max: 50})

export const ROOT_SUGAR = defineFunction({
  name: "ROOT.SUGAR",
  summary: "Sugar in the root from a refractometer reading, by your own calibration",
  about:
    "Slope and offset are those of a straight line through readings and laboratory values of your own roots. Sap holds " +
    "other things than sugar, so a line from elsewhere may be far off; without one take ROOT.SUGAR_FROM_SAP. Take every " +
    "reading at the same place of the root: the sugars change along it.",
  parameters: {
    reading: sapReading,
    slope: quantity("Slope of your line", "mg/g per °Brix", {above: 0}),
    offset: quantity("Offset of your line", "mg/g"),
  },
  returns: {label: "Sugar in the root", unit: "mg/g"},
  refuses: ["a line that gives less than 0 or as much as the whole root"],
  sources: ["identity", "feller2007"],
  example: {formula: "=ROOT.SUGAR(18.5,20,15)", gives: 385},
  calculate: ({reading, slope, offset}) => sugar(reading, slope, offset),
})
