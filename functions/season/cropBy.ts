import {EXAMPLE_CLIMATE, climateRange, type Climate} from "../climate/climate"
import {defineFunction} from "../define"
import {date} from "../parameters"
import {balanceValues, type BalanceValues} from "../root/balanceValues"
import {isRefusal} from "../refusal"
import {seasonRanges, seasonsOf, shareBy, type CropSeason} from "./cropOn"

/** The crop of all plantings up to the end of a day, kg. */
export const cropBy = (
  seasons: readonly CropSeason[],
  day: number,
  climate: Climate,
  values: BalanceValues,
): number =>
  seasons.reduce((total, season) => total + (season.crop ?? 0) * shareBy(season, day, climate, values), 0)

export const SEASON_CROP_BY = defineFunction({
  name: "SEASON.CROP_BY",
  summary: "Crop of all plantings up to a day, from the plan of their seasons",
  about:
    "The sum of SEASON.CROP_ON over all days up to that one: a week's crop is the difference of two. What grows is counted, " +
    "picked or not: up to a gap between pickings may still stand in the field.",
  parameters: {day: date("Last day counted"), ...seasonRanges, climate: climateRange, values: balanceValues},
  returns: {label: "Crop up to that day", unit: "kg"},
  refuses: ["ranges of different sizes"],
  sources: ["balance", "planning"],
  example: {
    formula: `=SEASON.CROP_BY("2026-05-04",{"2026-05-01"},{"2026-05-10"},{1000},{""},{""},${EXAMPLE_CLIMATE})`,
    gives: 400,
  },
  calculate({day, climate, values, ...ranges}) {
    const seasons = seasonsOf(ranges)
    return isRefusal(seasons) ? seasons : cropBy(seasons, day, climate, values)
  },
})
