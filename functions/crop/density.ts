import {defineFunction} from "../define"
import {quantity} from "../parameters"

/**
 * Share of the highest yield that a plant count reaches: 1 - exp(-n/n0), both per hectare. At n0 plants it is
 * 0.632; it never reaches 1.
 */
export function density(plants: number, n0: number): number {
  return -Math.expm1(-plants / n0)
}

export const CROP_DENSITY = defineFunction({
  name: "CROP.DENSITY",
  summary: "Share of the highest yield that a number of plants reaches",
  about:
    "There is no n0 for every field: 65 600 per hectare gives the gain of 64 to 80 % that three hybrids showed when " +
    "their plants were doubled from 21 550, an older cultivar gained 6 %, and the best density of 15 studies ran from " +
    "8 500 to 66 000 per hectare.",
  parameters: {
    plants: quantity("Plants per hectare", "per ha", {min: 0}),
    n0: quantity("Plants per hectare at which 63 % of the highest yield is reached", "per ha", {above: 0}),
  },
  returns: {label: "Share of the highest yield", unit: "share"},
  sources: ["clinton", "bussell1997"],
  example: {formula: "=CROP.DENSITY(43100,65600)", gives: 0.4816},
  calculate: ({plants, n0}) => density(plants, n0),
})
