import {isoOf} from "../calendar"
import {defineFunction, type Refusal} from "../define"
import {date, dates, measured} from "../parameters"
import {dividesByZero, notYet} from "../refusal"

const sum = (values: readonly number[]) => values.reduce((total, value) => total + value, 0)

/**
 * Share of the plan that was picked: weights picked over weights planned, kg, on the rows dated up to and with
 * `asOf`. Every row holds both weights. While nothing is picked there is no pace yet (#N/A), also where the
 * weights are typed zeros: a pace of 0 would wipe out the rest of the plan.
 */
export function pace(
  picked: readonly number[],
  planned: readonly number[],
  days: readonly number[],
  asOf: number,
): number | Refusal {
  const upTo = (values: readonly number[]) => sum(values.filter((_, row) => days[row]! <= asOf))
  if (upTo(picked) === 0) return notYet(`Nothing picked up to ${isoOf(asOf)}`)
  if (upTo(planned) === 0) return dividesByZero(`Nothing planned up to ${isoOf(asOf)}`)
  return upTo(picked) / upTo(planned)
}

export const SEASON_PACE = defineFunction({
  name: "SEASON.PACE",
  summary: "Share of the planned weight that was picked up to a day",
  about:
    "Compares the rows dated up to and with the day. A blank weight is one that was not measured, so its row is left " +
    "out of both sums; a typed 0 counts.",
  parameters: {
    picked: measured("Weights picked", "kg", {min: 0}),
    planned: measured("Weights planned", "kg", {min: 0}),
    dates: dates("Days of the weights"),
    as_of: date("Last day that counts"),
  },
  together: ["picked", "planned", "dates"],
  returns: {label: "Picked over planned", unit: "share"},
  refuses: ["nothing picked up to the day", "nothing planned up to the day"],
  sources: ["identity", "planning"],
  example: {
    formula: '=SEASON.PACE({800,680,0},{700,900,500},{"2026-05-04","2026-05-11","2026-05-18"},"2026-05-11")',
    gives: 0.925,
  },
  calculate: ({picked, planned, dates, as_of}) => pace(picked, planned, dates, as_of),
})
