import {defineFunction} from "../define"
import {placeOfMost} from "./chain"
import {EXAMPLE_FLOWS} from "./life"
import {riskyParameters, riskyWorths} from "./riskyWorth"

export const STAND_RISKY_LIFE = defineFunction({
  name: "STAND.RISKY_LIFE",
  summary: "Best planned life when a planting may be lost in any year",
  about:
    "The life to plan for a planting that is not lost before. A chance that is the same at all ages can lengthen it, for it makes the " +
    "new planting worth less; one that rises with age shortens it. The planting year is year 1.",
  parameters: riskyParameters,
  returns: {label: "Best planned life (planting year = 1)", unit: "years"},
  sources: ["faustmann1849", "reed1984", "identity"],
  example: {formula: `=STAND.RISKY_LIFE(${EXAMPLE_FLOWS},0.06,0.05,-700)`, gives: 17},
  calculate: ({flows, rate, loss_chance, loss_flow, clear, rest, rest_income}) =>
    placeOfMost(riskyWorths(flows, rate, loss_chance, loss_flow, {clear, rest, restIncome: rest_income})) + 1,
})
