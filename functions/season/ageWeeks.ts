import {defineFunction, type Refusal} from "../define"
import {measured, quantity} from "../parameters"
import {notRising} from "../rising"

const AGES = "Ages of the table (planting year = 0)"

/**
 * Weeks of cutting allowed at an age, by the grower's own table: the weeks of the last row that is not older.
 * Below the first row it is 0: a planting younger than the table is not cut. Above the last row the last weeks
 * stay. Ages in years, planting year = 0. Refuses ages that do not rise from row to row.
 */
export function ageWeeks(age: number, ages: readonly number[], weeks: readonly number[]): number | Refusal {
  return notRising(AGES, ages) ?? weeks[ages.findLastIndex((from) => from <= age)] ?? 0
}

export const SEASON_AGE_WEEKS = defineFunction({
  name: "SEASON.AGE_WEEKS",
  summary: "Weeks of cutting allowed at an age, from your own table",
  about:
    "Each row holds from its age on, until the next row begins. A planting younger than the first row gets 0 weeks, " +
    "one older than the last row gets the last weeks. A row with a blank in it is left out. A general guide: ask your " +
    "local extension office which table suits your ground and planting material.",
  parameters: {
    age: quantity("Age of the planting (planting year = 0)", "years", {max: 100}),
    ages: measured(AGES, "years", {min: 0, max: 100}),
    weeks: measured("Weeks allowed from that age on", "weeks", {min: 0, max: 52}),
  },
  together: ["ages", "weeks"],
  returns: {label: "Weeks of cutting allowed", unit: "weeks"},
  refuses: ["ages that do not rise from row to row"],
  sources: ["planning"],
  example: {formula: "=SEASON.AGE_WEEKS(3,{0,1,2,3,4},{0,2,4,6,8})", gives: 6},
  calculate: ({age, ages, weeks}) => ageWeeks(age, ages, weeks),
})
