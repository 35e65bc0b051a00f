import {defineFunction, outcomeOf, type Outcomes} from "../define"
import {date} from "../parameters"
import {EXAMPLE_CLIMATE, alongYear, climateRange} from "./climate"

/** One column of a climate on one day of the calendar, by the row of its number in its year. */
export const onDay = (days: Float64Array, day: number): number => alongYear(days, {first: day, days: 1})[0]!

const columns = {
  air: {label: "Mean air temperature", unit: "°C"},
  soil: {label: "Mean soil temperature at crown depth", unit: "°C"},
  sun: {label: "Solar radiation", unit: "MJ/m²/day"},
} as const satisfies Outcomes

export const CLIMATE_ON_DAY = defineFunction({
  name: "CLIMATE.ON_DAY",
  summary: "Air, soil or sun of a climate on one day",
  about:
    "What is normal on that day, whatever its year. From monthly rows by straight lines that keep every month's mean; " +
    "from daily rows the one of the day's number in its year. Where there are 365 days, the last one stands for the 366th.",
  parameters: {what: outcomeOf(columns), date: date("Day"), climate: climateRange},
  returns: {label: "The column named", unit: "as named", named: columns},
  sources: ["planning"],
  example: {formula: `=CLIMATE.ON_DAY("soil","2026-07-19",${EXAMPLE_CLIMATE})`, gives: 16.7},
  calculate: ({what, date, climate}) => onDay(climate[what], date),
})
