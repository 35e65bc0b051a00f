import {defineFunction} from "../define"
import {date, quantity} from "../parameters"
import {roundUp} from "../rounding"

/**
 * Latest last day of cutting that leaves `days` days of fern after it, the last of them on `fernEnd`. A part of a
 * day counts as a day.
 */
export const lastClose = (fernEnd: number, days: number): number => fernEnd - roundUp(days)

export const FERN_LAST_CLOSE = defineFunction({
  name: "FERN.LAST_CLOSE",
  summary: "Latest last day of cutting that leaves the fern days needed",
  about:
    "Counts back from the last day of green fern. Cut at the close or before; frost, disease or drought that takes the fern " +
    "early takes days from the refill.",
  parameters: {
    fern_end: date("Last day of green fern"),
    days_needed: quantity("Days of fern needed", "days", {min: 0, max: 366}),
  },
  returns: {label: "Latest close", unit: "date"},
  sources: ["identity", "planning"],
  example: {formula: '=FERN.LAST_CLOSE("2026-10-05",107)', gives: "2026-06-20"},
  calculate: ({fern_end, days_needed}) => lastClose(fern_end, days_needed),
})
