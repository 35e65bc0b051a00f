import {defineFunction} from "../define"
import {quantity, yearly} from "../parameters"
import {discount, worthOfYears, type Between} from "./chain"
import {EXAMPLE_FLOWS} from "./life"
import {betweenPlantings, flowsOfAPlanting, rateAboveNought} from "./quantities"

/**
 * Worth of ground planted today, money/ha, for each planned life 1, 2, ... when a planting may be lost in any year, before
 * that year's cash. `chances` are one a year of its life, the last goes on. A loss brings `lossFlow` in place of the year's
 * cash and leaves cleared ground; both then rest and are planted again.
 *
 * With s the share of plantings that come through a year: V = c0 + c1·(worth of cleared ground), where
 * c0 = Σδ^t(s_t·R_t + s_(t-1)·h_t·L) - δ^n·s_n·K and c1 = Σδ^t·s_(t-1)·h_t + δ^n·s_n.
 */
export function riskyWorths(
  flows: readonly number[],
  rate: number,
  chances: readonly number[],
  lossFlow: number,
  {clear, rest, restIncome}: Between,
): number[] {
  const resting = worthOfYears(restIncome, rest, rate)
  let [stands, cash, cleared] = [1, 0, 0]
  return flows.map((flow, i) => {
    const today = discount(rate, i + 1)
    const lost = stands * chances[Math.min(i, chances.length - 1)]!
    stands -= lost
    cash += today * (stands * flow + lost * lossFlow)
    cleared += today * lost
    const c0 = cash - today * stands * clear
    const c1 = cleared + today * stands
    return (c0 + c1 * resting) / (1 - c1 * discount(rate, rest))
  })
}

/** A chain of plantings of which each may be lost. */
export const riskyParameters = {
  flows: flowsOfAPlanting,
  rate: rateAboveNought,
  loss_chance: yearly("Chance of losing the planting, one a year of its life", "share/year", {
    min: 0,
    max: 1,
  }),
  loss_flow: quantity("Net cash of the year of a loss", "money/ha"),
  ...betweenPlantings,
}

export const STAND_RISKY_WORTH = defineFunction({
  name: "STAND.RISKY_WORTH",
  summary: "Worth of planted ground when a planting may be lost in any year",
  about:
    "To flood, crown rot or a hard winter. One chance holds for every year; a list gives one for each year of life, as when it rises " +
    "with age, and its last goes on. A loss comes before that year's income and leaves ground that is planted again.",
  parameters: riskyParameters,
  returns: {label: "Worth of planted ground", unit: "money/ha"},
  sources: ["faustmann1849", "reed1984", "identity"],
  example: {formula: `=STAND.RISKY_WORTH(${EXAMPLE_FLOWS},0.06,0.05,-700)`, gives: 5233.15},
  calculate: ({flows, rate, loss_chance, loss_flow, clear, rest, rest_income}) =>
    Math.max(...riskyWorths(flows, rate, loss_chance, loss_flow, {clear, rest, restIncome: rest_income})),
})
