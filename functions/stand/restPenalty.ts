import {defineFunction, type Refusal} from "../define"
import {notYet} from "../refusal"
import {
  EXAMPLE_CROP,
  EXAMPLE_OTHER,
  restParameters,
  restTail,
  restWorth,
  restYears,
  sizesDiffer,
  type PenalisedFlows,
} from "./restWorth"

/**
 * Share of the yield, lost by planting at once, at which that is worth as much as a rest of so many years after which nothing
 * is lost. Above it the rest pays. #N/A when the rest pays even without a loss, or not even at a loss of everything.
 */
export function restPenalty(
  rest: number,
  flows: PenalisedFlows,
  rate: number,
  restIncome: number,
  clear: number,
): number | Refusal {
  const rested = restWorth(rest, flows, [0], rate, restIncome, clear)
  const gain = (penalty: number) => restWorth(0, flows, [penalty], rate, 0, clear) - rested
  if (gain(0) < 0) return notYet(`${rest} years of rest pay even where planting at once loses no yield`)
  if (gain(1) > 0)
    return notYet(`${rest} years of rest do not pay even where planting at once loses all yield`)
  let [low, high] = [0, 1]
  while (high - low > PRECISION) {
    const middle = (low + high) / 2
    if (gain(middle) > 0) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** Chosen: far finer than anyone can know a penalty. */
const PRECISION = 1e-10

export const STAND_REST_PENALTY = defineFunction({
  name: "STAND.REST_PENALTY",
  summary: "Share of the yield that planting at once may lose before a rest pays",
  about:
    "Nobody knows the penalty of a field well. This turns the question round: is it above or below this? The rest is taken to leave no " +
    "loss, and both ways hold for every planting to come.",
  parameters: {rest: restYears, ...restParameters, ...restTail},
  returns: {label: "Share of the yield lost at which both are worth the same", unit: "share"},
  refuses: ["lists of different length", "a rest that pays at any loss, or at none"],
  sources: ["faustmann1849", "identity"],
  example: {
    formula: `=STAND.REST_PENALTY(3,${EXAMPLE_CROP},${EXAMPLE_OTHER},0.06,300)`,
    gives: 0.044377,
  },
  calculate: ({rest, crop, other, rate, rest_income, clear}) =>
    sizesDiffer({crop, other}) ?? restPenalty(rest, {crop, other}, rate, rest_income, clear),
})
