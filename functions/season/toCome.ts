import {defineFunction} from "../define"
import {date, dates, measured, optional, quantity} from "../parameters"

/** Weight still to come, kg: what is planned on days after `asOf`, times the pace. 0 when the plan has ended. */
export function toCome(
  planned: readonly number[],
  days: readonly number[],
  asOf: number,
  pace: number,
): number {
  return pace * planned.reduce((total, kg, row) => (days[row]! > asOf ? total + kg : total), 0)
}

export const SEASON_TO_COME = defineFunction({
  name: "SEASON.TO_COME",
  summary: "Planned weight still to come after a day, at the pace so far",
  about:
    "Supposes that the rest of the season keeps the pace given, which frost, disease or a change of weather can break.",
  parameters: {
    planned: measured("Weights planned", "kg", {min: 0}),
    dates: dates("Days of the weights"),
    as_of: date("Last day that is past"),
    pace: optional(quantity("Picked over planned so far", "share", {min: 0}), 1),
  },
  together: ["planned", "dates"],
  returns: {label: "Weight still to come", unit: "kg"},
  sources: ["identity", "planning"],
  example: {
    formula: '=SEASON.TO_COME({700,900,1000},{"2026-05-04","2026-05-11","2026-05-18"},"2026-05-04",0.925)',
    gives: 1757.5,
  },
  calculate: ({planned, dates, as_of, pace}) => toCome(planned, dates, as_of, pace),
})
