import {defineFunction, type Refusal} from "../define"
import {measured, optional, quantity} from "../parameters"
import {outOfRange} from "../refusal"

/** Years a record needs; what is missing is filled. The longest record that counts (7 CFR 400.52). */
const LEAST = 4
const MOST = 10

/** Share of the transitional yield that fills a missing year, with 0, 1, 2 and 3 years on record; the last from memory. */
const SHARES = [0.65, 0.8, 0.9, 1] as const

/**
 * Mean of the years on record, kg/ha, with the years that lack of four filled by a share of the transitional yield. The
 * share is that of the number of years on record: the first for none. More than ten years are refused.
 */
export function approved(
  transitional: number,
  yields: readonly number[],
  shares: readonly number[],
): number | Refusal {
  if (yields.length > MOST)
    return outOfRange(`${yields.length} years on record: give the latest ${MOST} in a row at most`)
  if (shares.length !== LEAST)
    return outOfRange(
      `${shares.length} shares are given: there must be ${LEAST}, for 0, 1, 2 and 3 years on record`,
    )
  const missing = Math.max(0, LEAST - yields.length)
  const filled = missing && missing * transitional * shares[yields.length]!
  return (yields.reduce((sum, kg) => sum + kg, 0) + filled) / (yields.length + missing)
}

export const CROP_APPROVED = defineFunction({
  name: "CROP.APPROVED",
  summary: "Mean of a record with missing years filled by a transitional yield",
  about:
    "The way crop insurance forms a yield from a record: the plain mean of 4 to 10 years in a row, for a perennial crop over its " +
    "insurable ground; each missing year counts 65, 80, 90 or 100 % of the transitional yield with 0, 1, 2 or 3 years on record " +
    "(the 100 % from memory). Floors, caps, exclusions and trends of the policy are not in it, and whether asparagus can be " +
    "insured so is for the agent to say: a general guide, read the text now in force.",
  parameters: {
    transitional: quantity("Transitional yield of the county", "kg/ha", {min: 0}),
    yields: optional(
      measured("Yields on record, latest years in a row", "kg/ha", {min: 0}),
      [] as readonly number[],
      "none",
    ),
    shares: optional(
      measured("Shares that fill a year, for 0 to 3 years on record", "share", {min: 0, max: 1}),
      SHARES,
      SHARES.join(", "),
    ),
  },
  returns: {label: "Yield by the record and the county", unit: "kg/ha"},
  refuses: ["more than ten years on record", "shares that are not four"],
  sources: ["cfr400"],
  example: {formula: "=CROP.APPROVED(4000,{4800,4200})", gives: 4050},
  calculate: ({transitional, yields, shares}) => approved(transitional, yields, shares),
})
