import {defineFunction, type Refusal} from "../define"
import {choice, isRange, optional, quantity, shown, type Given, type Parameter} from "../parameters"
import {notYet, outOfRange, wrongKind} from "../refusal"
import {mean} from "./mean"
import {shareUnder} from "./shareUnder"

/** Spears counted by their diameters: each diameter once, mm, from the thinnest, with how many had it. */
export interface Tally {
  readonly diameters: readonly number[]
  readonly counts: readonly number[]
}

const INCH = 25.4 // mm, by definition
const THICKEST = 60 // mm, as for every diameter

/**
 * Reads a count by diameter as it is written on a slip: "8×3 9×12" is three spears of 8 mm and twelve of 9. A diameter
 * without a count is one spear, a fraction such as 6/16 is in inches; x and * stand for ×, a comma in a number is a decimal.
 */
export function readTally(text: string): Tally | Refusal {
  const found = new Map<number, number>()
  for (const entry of entriesOf(text)) {
    const [, over, under, plain, times] = /^(?:(\d+)\/(\d+)|(\d+(?:[.,]\d+)?))(?:×(\d+))?$/.exec(entry) ?? []
    if (over === undefined && plain === undefined)
      return wrongKind(`“${entry}” is no spears of a diameter; “8×3 9×12” is three of 8 mm and twelve of 9`)
    const mm = plain === undefined ? (Number(over) / Number(under)) * INCH : Number(plain.replace(",", "."))
    if (!(mm > 0 && mm <= THICKEST))
      return outOfRange(`Diameters must be above 0 and up to ${THICKEST} mm, not those of “${entry}”`)
    const diameter = Number(mm.toFixed(4))
    found.set(diameter, (found.get(diameter) ?? 0) + (times === undefined ? 1 : Number(times)))
  }
  const sizes = [...found].toSorted(([a], [b]) => a - b)
  return {diameters: sizes.map(([diameter]) => diameter), counts: sizes.map(([, count]) => count)}
}

const entriesOf = (text: string) =>
  text
    .replace(/\s*[×x*]\s*/giu, "×")
    .split(/,?\s+|;/u)
    .filter((entry) => entry !== "")

/** The diameters and counts written in a text, or in a number, which is one spear. */
const tally = (label: string): Parameter<Tally> => ({
  label,
  unit: "text",
  takes: "spears by diameter, such as “8×3 9×12”",
  isRange: false,
  read: (given: Given) => {
    if (isRange(given)) return wrongKind(`${label} takes one value, not a range`)
    if (given === null || given === "") return notYet(`${label}: not counted yet`)
    if (typeof given === "string" || typeof given === "number") return readTally(String(given))
    return wrongKind(`${label} must be a text such as “8×3 9×12”, not ${shown(given)}`)
  },
})

export const SPEAR_TALLY = defineFunction({
  name: "SPEAR.TALLY",
  summary: "What a count of spears by diameter says",
  about:
    "A count is written as on a slip in the field: “8×3 9×12” is three spears of 8 mm and twelve of 9. A diameter alone is one " +
    "spear, a fraction such as 6/16 is in inches, and x may stand for ×. “mean” is their mean diameter, “spears” how many there " +
    "are, “share under” the share thinner than the limit; a spear of just the limit is not thinner.",
  parameters: {
    what: choice("What it gives", ["mean", "spears", "share under"]),
    counted: tally("Spears counted by diameter"),
    limit: optional(quantity("Diameter limit", "mm", {above: 0, max: THICKEST}), null, "none"),
  },
  returns: {label: "Mean in mm, number of spears, or share of them", unit: "number"},
  refuses: ["an entry that is no diameter", "counts that add up to 0", "a share without a limit"],
  sources: ["identity", "stopSign"],
  example: {formula: '=SPEAR.TALLY("mean","8×3 10×9 12×6 14×2")', gives: 10.7},
  calculate: ({what, counted: {diameters, counts}, limit}) => {
    if (what === "spears") return counts.reduce((total, count) => total + count, 0)
    if (what === "mean") return mean(diameters, counts)
    return limit === null ? notYet("Diameter limit: none is set") : shareUnder(diameters, limit, counts)
  },
})
