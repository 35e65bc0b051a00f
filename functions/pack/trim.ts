import {defineFunction, type Refusal} from "../define"
import {quantity} from "../parameters"
import {outOfRange} from "../refusal"

/** Share of the weight trimmed off the butt, for a spear of even diameter: (cut - pack)/cut, lengths in cm. */
export function trim(cut: number, pack: number): number | Refusal {
  if (pack > cut) return outOfRange(`Packed length (${pack} cm) is above the cut length (${cut} cm)`)
  return (cut - pack) / cut
}

export const PACK_TRIM = defineFunction({
  name: "PACK.TRIM",
  summary: "Share of the weight that trimming to the packed length takes",
  about:
    "For a spear of even diameter. The butt is heavier, so the scale shows some 1 to 3 points more (assumption): weigh what " +
    "you trim. No measured trim loss was found.",
  parameters: {
    cut: quantity("Length as cut", "cm", {above: 0, max: 100}),
    pack: quantity("Length as packed", "cm", {above: 0, max: 100}),
  },
  returns: {label: "Share trimmed off", unit: "share"},
  refuses: ["a packed length above the cut length"],
  sources: ["identity"],
  example: {formula: "=PACK.TRIM(25,22)", gives: 0.12},
  calculate: ({cut, pack}) => trim(cut, pack),
})
