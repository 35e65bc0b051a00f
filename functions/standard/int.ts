import {defineStandard} from "./define"
import {number} from "./parameters"

export const INT = defineStandard({
  name: "INT",
  section: "6.17.2",
  summary: "The whole number at or below a number",
  about: "Rounds towards minus infinity; TRUNC cuts off towards 0.",
  parameters: {number: number("The number")},
  returns: {label: "Whole number", unit: "number"},
  example: {formula: "=INT(-1.5)", gives: -2},
  calculate: ({number: given}) => Math.floor(given),
})
