import {dayOf} from "../../../functions/calendar"
import {lineSpread} from "../../../functions/spear/lineSpread"
import type {PlantingSpears, SpearSizes} from "../../../src/workbook/spears"

export const day = (iso: string) => dayOf(iso)!
export const daysOf = (...means: number[]) =>
  means.map((mean, i) => ({
    day: day("2026-05-04") + 7 * i,
    mean,
    counted: 40,
    tally: null,
    under: null,
    at: {sheet: 0, row: i, col: 2},
  }))
// The line by hand: slope -25.9/245 mm a day through 12.0 mm at 10.5 days; 9.5 mm 34.15 days after 4 May.
export const thinning: PlantingSpears = {
  planting: "Sand Piece",
  days: daysOf(13.1, 12.4, 11.6, 10.9),
  line: {day: day("2026-05-04") + 10.5, mean: 12, slope: -25.9 / 245},
  lastDay: day("2026-06-07"),
  spread: lineSpread(
    [0, 7, 14, 21].map((later) => day("2026-05-04") + later),
    [13.1, 12.4, 11.6, 10.9],
    0.8,
  ),
  lastDays: [day("2026-06-06"), day("2026-06-08")],
  isExpected: false,
  shareDay: null,
}
export const steady: PlantingSpears = {
  planting: "Long Acre",
  days: daysOf(12, 12.2),
  line: {day: day("2026-05-04") + 3.5, mean: 12.1, slope: 0.2 / 7},
  lastDay: null,
  spread: null,
  lastDays: null,
  isExpected: false,
  shareDay: null,
}
export const once: PlantingSpears = {
  planting: "Home Strip",
  days: daysOf(11),
  line: null,
  lastDay: null,
  spread: null,
  lastDays: null,
  isExpected: false,
  shareDay: null,
}
export const sizesOf = (...plantings: PlantingSpears[]): SpearSizes => ({
  plantings,
  limit: 9.5,
  share: null,
  confidence: 0.8,
  asOf: day("2026-05-25"),
  region: {},
})
