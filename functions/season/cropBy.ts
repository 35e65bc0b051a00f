import {EXAMPLE_CLIMATE, climateRange, type Climate} from "../climate/climate"
import {defineFunction} from "../define"
import {date} from "../parameters"
import {isRefusal} from "../refusal"
import {seasonRanges, seasonsOf, type CropSeason} from "./cropOn"
import {pickingValues, saleableOf, type PickingValues} from "./pickingDays"
import {NO_WAITS, waitRanges, withWaits, type Waits} from "./waits"

/** The crop of all plantings up to the end of a day, kg. */
export const cropBy = (
  seasons: readonly CropSeason[],
  day: number,
  climate: Climate,
  values: PickingValues,
  waits: Waits = NO_WAITS,
): number =>
  seasons.reduce(
    (total, season, row) => total + (season.crop ?? 0) * saleableOf(season, climate, values, waits[row])(day),
    0,
  )

export const SEASON_CROP_BY = defineFunction({
  name: "SEASON.CROP_BY",
  summary: "Crop of all plantings up to a day, from the plan of their seasons",
  about:
    "The sum of SEASON.CROP_ON over all days up to that one: a week's crop is the difference of two. What grows is counted, " +
    "picked or not: up to a gap between pickings may still stand in the field. With " +
    "the names and the waits after spraying given, less what SEASON.PICK_ON loses in them.",
  parameters: {
    day: date("Last day counted"),
    ...seasonRanges,
    climate: climateRange,
    values: pickingValues,
    ...waitRanges,
  },
  returns: {label: "Crop up to that day", unit: "kg"},
  refuses: ["ranges of different sizes"],
  sources: ["balance", "planning"],
  example: {
    formula: `=SEASON.CROP_BY("2026-05-04",{"2026-05-01"},{"2026-05-10"},{1000},{""},{""},${EXAMPLE_CLIMATE})`,
    gives: 400,
  },
  calculate({day, climate, values, open, close, crop, structure, reserve, ...waiting}) {
    const seasons = seasonsOf({open, close, crop, structure, reserve})
    if (isRefusal(seasons)) return seasons
    return withWaits(waiting, open.length, (waits) => cropBy(seasons, day, climate, values, waits))
  },
})
