import {defineFunction, type Refusal} from "../define"
import {yearly} from "../parameters"
import {wrongKind} from "../refusal"
import {chainWorths, discount, worthOfYears} from "./chain"
import {betweenPlantings, rateAboveNought, wholeYears} from "./quantities"

/** The net cash of a planting in two parts, of which a replant penalty takes from the first alone. */
export interface PenalisedFlows {
  /** What comes and goes with the yield: price less harvest cost. */
  readonly crop: readonly number[]
  /** The rest of the year's net cash: planting and field cost, below 0. */
  readonly other: readonly number[]
}

export const sizesDiffer = ({crop, other}: PenalisedFlows): Refusal | null =>
  crop.length === other.length
    ? null
    : wrongKind(
        `Net cash of the crop is given for ${crop.length} years and other cash for ${other.length}: sizes differ`,
      )

/**
 * Worth, money/ha, of ground at the moment it is cleared when it rests that many years before every planting and each planting
 * yields less by the penalty that is left after that rest (W(g) of the chain). `penalties` are those after 0, 1, 2, ... years of
 * rest, the last goes on.
 */
export function restWorth(
  rest: number,
  {crop, other}: PenalisedFlows,
  penalties: readonly number[],
  rate: number,
  restIncome: number,
  clear: number,
): number {
  const left = 1 - penalties[Math.min(rest, penalties.length - 1)]!
  const flows = crop.map((cash, year) => left * cash + other[year]!)
  const planted = Math.max(...chainWorths(flows, rate, {clear, rest, restIncome}))
  return worthOfYears(restIncome, rest, rate) + discount(rate, rest) * planted
}

/** A planting in two parts, with what lies between it and the next. */
export const restParameters = {
  crop: yearly("Net cash that goes with the yield, year by year from the planting year", "money/ha"),
  other: yearly("All other net cash of those years", "money/ha"),
  rate: rateAboveNought,
}

export const penaltiesByRest = yearly("Share of the yield lost after 0, 1, 2, ... years of rest", "share", {
  min: 0,
  max: 1,
})

export const restYears = wholeYears("Years of rest before planting", 0)

export const restTail = {rest_income: betweenPlantings.rest_income, clear: betweenPlantings.clear}

/** Invented, as the example of the functions on rest. */
export const EXAMPLE_CROP =
  "{0,0,450,1125,1800,2250,2475,2475,2475,2340,2160,1980,1800,1620,1440,1260,1080,900}"
export const EXAMPLE_OTHER =
  "{-3000,-600,-700,-700,-700,-700,-700,-700,-700,-700,-700,-700,-700,-700,-700,-700,-700,-700}"

export const STAND_REST_WORTH = defineFunction({
  name: "STAND.REST_WORTH",
  summary: "Worth of cleared ground that rests some years before it is planted again",
  about:
    "Asparagus after asparagus yields less; a rest takes some of that away. How much is lost after how many years is your judgement: " +
    "give your own list. The penalty and the rest hold for every planting to come. Compare it over years of rest.",
  parameters: {rest: restYears, ...restParameters, penalties: penaltiesByRest, ...restTail},
  returns: {label: "Worth of cleared ground", unit: "money/ha"},
  refuses: ["lists of different length"],
  sources: ["faustmann1849", "identity"],
  example: {
    formula: `=STAND.REST_WORTH(3,${EXAMPLE_CROP},${EXAMPLE_OTHER},0.06,{0.15,0.1,0.05,0},300)`,
    gives: 8465.2202,
  },
  calculate: ({rest, crop, other, rate, penalties, rest_income, clear}) =>
    sizesDiffer({crop, other}) ?? restWorth(rest, {crop, other}, penalties, rate, rest_income, clear),
})
