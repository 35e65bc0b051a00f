import {FIRST_DAY, isoOf, LAST_DAY, monthsLater} from "../calendar"
import {outOfRange} from "../refusal"
import {defineStandard} from "./define"
import {day, number} from "./parameters"

export const EDATE = defineStandard({
  name: "EDATE",
  section: "6.10.8",
  summary: "The date some months later or earlier",
  about: "The same day of the month, or the last one where the month is shorter.",
  parameters: {start: day("Date"), months: number("Months later; below 0, earlier")},
  returns: {label: "Day of the other month", unit: "date"},
  refuses: ["a date outside the years that can be used"],
  example: {formula: '=EDATE("2024-01-31",1)', gives: "2024-02-29"},
  calculate: ({start, months}) => {
    const moved = monthsLater(start, Math.trunc(months))
    return moved >= FIRST_DAY && moved <= LAST_DAY
      ? moved
      : outOfRange(`The date must be from ${isoOf(FIRST_DAY)} to ${isoOf(LAST_DAY)}`)
  },
})
