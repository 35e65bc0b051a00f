import {valuesOf} from "../cropValues"
import {defineFunction} from "../define"
import {spearsSold} from "./quantities"

/** The crop values of what spears cost the store: shares of mass, and kg sugar per kg dry matter. */
export interface SpearCost {
  readonly Spear_dry: number
  readonly Stub_share: number
  readonly Unsold_share: number
  readonly Spear_cost: number
}

/**
 * Sugar that the store gives for saleable spears, both kg/ha: their dry matter, with the stubs below ground and the
 * spears that are not sold, times what it costs to build.
 */
export const draw = (spears: number, {Spear_dry, Stub_share, Unsold_share, Spear_cost}: SpearCost): number =>
  spears * Spear_dry * (1 + Stub_share) * (1 + Unsold_share) * Spear_cost

export const ROOT_DRAW = defineFunction({
  name: "ROOT.DRAW",
  summary: "Sugar that the store gives to grow so many saleable spears",
  about:
    "For a green crop 208 kg a tonne by the defaults, and 130 to 300 by what is likely of each. For a white one Spear_dry is " +
    "0.065 and Stub_share 0.25, which make 137 kg. Spears cut and thrown away draw as much as those sold. No published figure of the " +
    "whole was found to check it.",
  parameters: {
    spears: spearsSold,
    values: valuesOf("Spear_dry", "Stub_share", "Unsold_share", "Spear_cost"),
  },
  returns: {label: "Sugar drawn", unit: "kg/ha"},
  sources: ["balance", "penningDeVries1974"],
  example: {formula: "=ROOT.DRAW(1000)", gives: 208.32},
  calculate: ({spears, values}) => draw(spears, values),
})
