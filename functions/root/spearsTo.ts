import {defineFunction, type Refusal} from "../define"
import {outOfRange} from "../refusal"
import {atLeast} from "../rounding"
import {cuttingValues} from "./after"
import {draw, type SpearCost} from "./draw"
import {daysOfUpkeep, soilTemperature, structuralRoot, sugarIn} from "./quantities"
import {reserve} from "./reserve"
import {upkeep, type Upkeep} from "./upkeep"

/**
 * Saleable spears, kg/ha, that bring the sugar in the root down from one value to another, mg per g dry root, in so many
 * days: the inverse of `after`. Refuses a floor that is no lower, and one that upkeep alone goes below.
 */
export function spearsTo(
  structure: number,
  from: number,
  to: number,
  days: number,
  soil: number,
  values: SpearCost & Upkeep,
): number | Refusal {
  if (to >= from)
    return outOfRange(`Sugar to come down to (${to} mg/g) is not below that at the start (${from} mg/g)`)
  const toSpend = reserve(from, structure) - reserve(to, structure)
  const breathed = upkeep(structure, soil, days, values)
  if (!atLeast(toSpend, breathed))
    return outOfRange(
      `No spears: the root breathes ${breathed.toFixed(1)} kg/ha in ${days} days, ` +
        `more than the ${toSpend.toFixed(1)} kg/ha from ${from} to ${to} mg/g`,
    )
  return Math.max(0, toSpend - breathed) / draw(1, values)
}

export const ROOT_SPEARS_TO = defineFunction({
  name: "ROOT.SPEARS_TO",
  summary: "Saleable spears that bring the sugar in the root down to a floor",
  about:
    "What the store could pay for, not what the field will bring. The floor is that at the close: the fern takes more after it. " +
    "No published figure was found to check it.",
  parameters: {
    structure: structuralRoot,
    from: sugarIn("Sugar in the root at the start"),
    to: sugarIn("Sugar to come down to"),
    days: daysOfUpkeep,
    soil: soilTemperature,
    values: cuttingValues,
  },
  returns: {label: "Saleable spears", unit: "kg/ha"},
  refuses: ["a floor that is not below the start", "a floor that upkeep alone goes below"],
  sources: ["balance", "penningDeVries1974", "pressman1993"],
  example: {formula: "=ROOT.SPEARS_TO(6000,500,400,56,11)", gives: 7699.08},
  calculate: ({structure, from, to, days, soil, values}) => spearsTo(structure, from, to, days, soil, values),
})
