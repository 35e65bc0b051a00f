import {defineFunction} from "../define"
import {optional, quantity} from "../parameters"

const HECTARE = 10_000 // m²

/** Plants per hectare: one on each rectangle of row gap by plant gap, both m, times the share alive. Not rounded. */
export const plants = (rowGap: number, plantGap: number, alive: number): number =>
  (HECTARE / (rowGap * plantGap)) * alive

export const STAND_PLANTS = defineFunction({
  name: "STAND.PLANTS",
  summary: "Plants per hectare from row gap, plant gap and share alive",
  about:
    "Headlands and tracks are not taken off: give the area that is planted. For double rows give the mean row gap.",
  parameters: {
    row_gap: quantity("Gap between rows", "m", {above: 0, max: 20}),
    plant_gap: quantity("Gap between plants in the row", "m", {above: 0, max: 10}),
    alive: optional(quantity("Share of plants alive", "share", {min: 0, max: 1.2}), 1),
  },
  returns: {label: "Plants per hectare", unit: "per ha"},
  sources: ["identity"],
  example: {formula: "=STAND.PLANTS(1.5,0.33,0.92)", gives: 18586},
  calculate: ({row_gap, plant_gap, alive}) => plants(row_gap, plant_gap, alive),
})
