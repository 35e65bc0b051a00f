import {defineFunction, type Refusal} from "../define"
import {quantity} from "../parameters"
import {dividesByZero} from "../refusal"

/** How far a projected yield stands above (+) or below (-) the record, as a share of the record. */
export function gap(projected: number, record: number): number | Refusal {
  if (record <= 0) return dividesByZero(`Yield on record must be above 0 kg/ha, not ${record} kg/ha`)
  return projected / record - 1
}

export const CROP_GAP = defineFunction({
  name: "CROP.GAP",
  summary: "How far a projected yield stands above or below the record",
  parameters: {
    projected: quantity("Projected yield", "kg/ha", {min: 0}),
    record: quantity("Yield on record", "kg/ha"),
  },
  returns: {label: "Projection above (+) or below (-) the record", unit: "share"},
  refuses: ["a record of 0 or below"],
  sources: ["identity"],
  example: {formula: "=CROP.GAP(4900,4143)", gives: 0.18},
  calculate: ({projected, record}) => gap(projected, record),
})
