import {notYet, outOfRange, type Refusal} from "../refusal"
import {defineStandard} from "./define"
import {number, numbers, optionally} from "./parameters"

/**
 * The place of a number between the least (0) and the greatest (1) of others, in proportion between its neighbours when
 * it is not among them. A single number that is the one asked for stands at 1.
 */
export function percentRank(data: readonly number[], value: number): number | Refusal {
  const sorted = data.toSorted((a, b) => a - b)
  if (sorted.length === 0) return notYet("There is no number yet")
  const [least, greatest] = [sorted[0]!, sorted.at(-1)!]
  if (value < least || value > greatest)
    return outOfRange(`The number must be from ${least} to ${greatest}, not ${value}`)
  if (sorted.length === 1) return 1
  const below = sorted.filter((one) => one < value).length
  if (sorted[below] === value) return below / (sorted.length - 1)
  const [before, after] = [sorted[below - 1]!, sorted[below]!]
  // Equal numbers share the lowest of their ranks, so the rank of the neighbour below is that of its first.
  const rank = sorted.indexOf(before)
  return (rank + ((below - rank) * (value - before)) / (after - before)) / (sorted.length - 1)
}

export const PERCENTRANK = defineStandard({
  name: "PERCENTRANK",
  section: "6.18.58",
  summary: "Where a number stands between the least (0) and the greatest (1) of others",
  about:
    "Between two of the numbers it stands in proportion. Digits beyond those asked for are cut off, not rounded: the " +
    "standard leaves this open; common practice.",
  parameters: {
    data: numbers("The numbers"),
    value: number("The number to place"),
    digits: optionally(number("Digits after the point", {min: 1}), 3),
  },
  returns: {label: "Place from 0 to 1", unit: "share"},
  refuses: ["a number outside the others"],
  example: {formula: "=PERCENTRANK({1,2,3,4,5},4)", gives: 0.75},
  calculate: ({data, value, digits}) => {
    if (!Number.isInteger(digits)) return outOfRange(`Digits must be a whole number, not ${digits}`)
    const place = percentRank(data, value)
    if (typeof place !== "number") return place
    const scale = 10 ** digits
    return Math.floor(Number((place * scale).toPrecision(14))) / scale // so that 0.29 is not cut to 0.28
  },
})
