import {defineFunction, type Refusal} from "../define"
import {choice, optional, quantity} from "../parameters"
import {normalShare} from "../normalShare"
import {outOfRange} from "../refusal"

/**
 * Share of a crop whose diameter lies from `from` up to `to`, mm, when the logarithms of the diameters are normal about
 * that of the median with the deviation `spread`.
 *
 * By weight, spears of one length weigh as the square of their diameter, so the same curve stands about
 * ln median + 2·spread² (a lognormal weighed by a power stays lognormal).
 */
export function sizeShare(
  median: number,
  spread: number,
  from: number,
  to: number,
  by: "count" | "weight",
): number | Refusal {
  if (to <= from) return outOfRange(`Upper diameter (${to} mm) is not above the lower (${from} mm)`)
  const middle = Math.log(median) + (by === "weight" ? 2 * spread ** 2 : 0)
  const below = (diameter: number) => normalShare((Math.log(diameter) - middle) / spread)
  return below(to) - below(from)
}

export const PACK_SIZE_SHARE = defineFunction({
  name: "PACK.SIZE_SHARE",
  summary: "Share of a crop between two diameters",
  about:
    "Takes the logarithms of the diameters as normal. The spread of 0.30 and a median that falls over the weeks are " +
    "assumptions: take the median from your own spears (SPEAR.MEDIAN) and set the spread so that the share under 9.5 mm is " +
    "what you count. By weight, spears of one length weigh as the square of their diameter, as in SPEAR.MASS.",
  parameters: {
    median: quantity("Median diameter", "mm", {above: 0, max: 60}),
    spread: quantity("Deviation of the logarithms of the diameters", "number", {above: 0, max: 2}),
    from: quantity("Lower diameter", "mm", {min: 0, max: 1000}),
    to: quantity("Upper diameter", "mm", {above: 0, max: 1000}),
    by: optional(choice("Share by", ["count", "weight"]), "count" as const),
  },
  returns: {label: "Share between the diameters", unit: "share"},
  refuses: ["an upper diameter that is not above the lower"],
  sources: ["planning"],
  example: {formula: "=PACK.SIZE_SHARE(12,0.30,0,9.525)", gives: 0.221},
  calculate: ({median, spread, from, to, by}) => sizeShare(median, spread, from, to, by),
})
