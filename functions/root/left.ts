import {defineFunction, type Refusal} from "../define"
import {measured, optional, quantity} from "../parameters"
import {outOfRange} from "../refusal"
import {atLeast} from "../rounding"

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)

/** Store left, kg/ha, after all draws and gains, kg/ha each. Refuses draws beyond what was there and came in. */
export function left(
  start: number,
  draws: readonly number[],
  gains: readonly number[] | null,
): number | Refusal {
  const [drawn, gained] = [sum(draws), sum(gains ?? [])]
  if (atLeast(start + gained, drawn)) return Math.max(0, start + gained - drawn)
  return outOfRange(
    `Draws of ${drawn.toFixed(1)} kg/ha are more than the ${(start + gained).toFixed(1)} kg/ha there`,
  )
}

export const ROOT_LEFT = defineFunction({
  name: "ROOT.LEFT",
  summary: "Store left after the draws, and the gains if there are any",
  about:
    "Adds up the totals only: it does not look whether the store ran out in between. Blanks are left out, so the days to come " +
    "may stand empty.",
  parameters: {
    start: quantity("Store at the start", "kg/ha", {min: 0}),
    draws: measured("Draws", "kg/ha", {min: 0}),
    gains: optional(measured("Gains", "kg/ha", {min: 0}), null, "none"),
  },
  returns: {label: "Store left", unit: "kg/ha"},
  refuses: ["draws that are more than the start and the gains"],
  sources: ["identity"],
  example: {formula: "=ROOT.LEFT(2000,35*18)", gives: 1370},
  calculate: ({start, draws, gains}) => left(start, draws, gains),
})
