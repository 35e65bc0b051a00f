import {defineFunction} from "../define"
import {optional, quantity} from "../parameters"
import {roundUp} from "../rounding"

/** Cartons for the packed share of a weight, kg, at `carton` kg each; the last one may not be full. */
export const cartons = (weight: number, carton: number, packed: number): number =>
  roundUp((weight * packed) / carton)

export const PACK_CARTONS = defineFunction({
  name: "PACK.CARTONS",
  summary: "Cartons that a weight fills, rounded up",
  about: "The packed share is what is left after trimming and sorting out; the last carton may not be full.",
  parameters: {
    weight: quantity("Weight picked", "kg", {min: 0}),
    carton: quantity("Weight in a carton", "kg", {above: 0}),
    packed: optional(quantity("Share of the weight that is packed", "share", {min: 0, max: 1}), 1),
  },
  returns: {label: "Cartons", unit: "count"},
  sources: ["identity"],
  example: {formula: "=PACK.CARTONS(14200,5,0.86)", gives: 2443},
  calculate: ({weight, carton, packed}) => cartons(weight, carton, packed),
})
