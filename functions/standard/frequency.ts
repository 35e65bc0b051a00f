import {wrongKind} from "../refusal"
import {defineStandard} from "./define"
import {numbers} from "./parameters"

export const FREQUENCY = defineStandard({
  name: "FREQUENCY",
  section: "6.18.29",
  summary: "How many numbers are at most one border",
  about:
    "The standard gives a column of counts, one for each border and one for what lies above the last. This gives the " +
    "first of them, so it takes one border; the count between two is the difference: " +
    "FREQUENCY(data,12)-FREQUENCY(data,8) counts what is above 8 and at most 12.",
  parameters: {data: numbers("The numbers"), border: numbers("The border")},
  returns: {label: "Numbers at or below the border", unit: "count"},
  refuses: ["more than one border"],
  example: {formula: "=FREQUENCY({6,8,9,12,15},8)", gives: 2},
  calculate: ({data, border}) =>
    border.length === 1
      ? data.filter((one) => one <= border[0]!).length
      : wrongKind(`FREQUENCY takes one border here, not ${border.length}`),
})
