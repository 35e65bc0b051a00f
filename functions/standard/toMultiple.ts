import {outOfRange, type Refusal} from "../refusal"

/**
 * The nearest multiple of `significance` above or below a number: towards plus or minus infinity, or, `bySize`, by its
 * absolute value. A number that is a multiple but for the last bits stays. 0 when either is 0.
 */
export function toMultiple(
  number: number,
  significance: number,
  direction: "up" | "down",
  bySize: boolean,
): number | Refusal {
  if (number === 0 || significance === 0) return 0
  if (number > 0 && significance < 0)
    return outOfRange(`The multiple must be above 0 for a number above 0, not ${significance}`)
  const step = Math.abs(significance)
  const isUp = (direction === "up") !== (bySize && number < 0)
  const steps = Number((number / step).toPrecision(14)) // 0.3 is 3 steps of 0.1, not a little less
  return (isUp ? Math.ceil(steps) : Math.floor(steps)) * step + 0 // no -0
}
