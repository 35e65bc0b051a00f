import {valuesOf} from "../cropValues"
import {defineFunction} from "../define"
import {daysOfUpkeep, soilTemperature, structuralRoot} from "./quantities"

/** The crop values of upkeep: kg sugar per kg structural root a day at 20 °C, and the factor per 10 °C. */
export interface Upkeep {
  readonly Upkeep_rate: number
  readonly Upkeep_q10: number
}

/** Sugar that structural root, kg/ha, breathes in so many days at a soil temperature, °C: rate·q10^((T - 20)/10)·S·days. */
export const upkeep = (
  structure: number,
  soil: number,
  days: number,
  {Upkeep_rate, Upkeep_q10}: Upkeep,
): number => Upkeep_rate * Upkeep_q10 ** ((soil - 20) / 10) * structure * days

export const ROOT_UPKEEP = defineFunction({
  name: "ROOT.UPKEEP",
  summary: "Sugar that the living root breathes in a number of days",
  about:
    "Every day of the year, cut or not. The rate is set to the one published loss that was found: more than 30 % of the store " +
    "from August to February in a mild winter. Over weeks of changing temperature the mean gives a little too little.",
  parameters: {
    structure: structuralRoot,
    soil: soilTemperature,
    days: daysOfUpkeep,
    values: valuesOf("Upkeep_rate", "Upkeep_q10"),
  },
  returns: {label: "Sugar breathed", unit: "kg/ha"},
  sources: ["balance", "pressman1993"],
  example: {formula: "=ROOT.UPKEEP(6000,11,1)", gives: 7.074},
  calculate: ({structure, soil, days, values}) => upkeep(structure, soil, days, values),
})
