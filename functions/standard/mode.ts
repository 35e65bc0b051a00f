import {notYet, type Refusal} from "../refusal"
import {defineStandard} from "./define"
import {numbers, repeated} from "./parameters"

/** The number that occurs most often; of several the smallest. Refused when none occurs twice. */
export function mode(data: readonly number[]): number | Refusal {
  const counts = new Map<number, number>()
  for (const one of data) counts.set(one, (counts.get(one) ?? 0) + 1)
  const most = Math.max(1, ...counts.values())
  if (most === 1) return notYet("No number occurs twice")
  return Math.min(...[...counts].flatMap(([one, count]) => (count === most ? one : [])))
}

export const MODE = defineStandard({
  name: "MODE",
  section: "6.18.50",
  summary: "The number that occurs most often",
  about: "Of several that occur equally often it gives the smallest.",
  parameters: {data: repeated(numbers("The numbers"))},
  returns: {label: "Most common number", unit: "number"},
  refuses: ["numbers of which none occurs twice"],
  example: {formula: "=MODE(7,5,5,7,9)", gives: 5},
  calculate: ({data}) => mode(data.flat()),
})
