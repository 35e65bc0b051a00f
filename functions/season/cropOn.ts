import {EXAMPLE_CLIMATE, climateRange, type Climate} from "../climate/climate"
import {defineFunction, type Refusal} from "../define"
import {date, everyDay, everyNumber} from "../parameters"
import {balanceValues, type BalanceValues} from "../root/balanceValues"
import {modelledYear, planYear} from "../root/modelledYear"
import {isRefusal, wrongKind} from "../refusal"

/** One planting's season of cutting: the days, the crop of the whole season in kg, and its crowns where they are known. */
export interface CropSeason {
  readonly open: number | null
  readonly close: number | null
  readonly crop: number | null
  readonly structure: number | null
  readonly reserve: number | null
}

/**
 * The share of a season's crop that is cut up to the end of each day: as the daily balance of its crowns cuts it, which
 * follows the weather; evenly where the crowns are not known. 0 before the season, 1 after it.
 */
export function sharesOf(
  {open, close, structure, reserve}: CropSeason,
  climate: Climate,
  values: BalanceValues,
): (day: number) => number {
  if (open === null || close === null || close < open) return () => 0
  const inside = (day: number, share: (day: number) => number) =>
    day < open ? 0 : day >= close ? 1 : share(day)
  const even = (day: number) => inside(day, () => (day - open + 1) / (close - open + 1))
  if (structure === null || reserve === null) return even
  const plan = planYear(open, close, values)
  if (isRefusal(plan)) return even
  const {picked} = modelledYear({structure, reserve}, climate, plan, [], values)
  const {first} = plan.year
  const total = picked[close - first]!
  return total > 0 ? (day) => inside(day, () => picked[day - first]! / total) : even
}

/** The share of a season's crop that is cut on one day. */
function shareOn(season: CropSeason, day: number, climate: Climate, values: BalanceValues): number {
  const by = sharesOf(season, climate, values)
  return by(day) - by(day - 1)
}

/** The crop of all plantings on one day, kg. A planting without an opening, a close or a crop gives nothing. */
export const cropOn = (
  seasons: readonly CropSeason[],
  day: number,
  climate: Climate,
  values: BalanceValues,
): number =>
  seasons.reduce((total, season) => total + (season.crop ?? 0) * shareOn(season, day, climate, values), 0)

/** The seasons of plantings, by columns that belong together row by row. */
export type SeasonRanges = Readonly<Record<keyof CropSeason, readonly (number | null)[]>>

export const seasonsFrom = ({open, close, crop, structure, reserve}: SeasonRanges): CropSeason[] =>
  open.map((_, row) => ({
    open: open[row]!,
    close: close[row]!,
    crop: crop[row]!,
    structure: structure[row]!,
    reserve: reserve[row]!,
  }))

/** Why ranges do not belong together, or null. */
export function sizesDiffer({open, close, crop, structure, reserve}: SeasonRanges): Refusal | null {
  const sizes = [open, close, crop, structure, reserve].map(({length}) => length)
  return new Set(sizes).size > 1
    ? wrongKind(`The ranges of the plantings have ${sizes.join(", ")} cells: sizes differ`)
    : null
}

/** The seasons of plantings from ranges that belong together row by row. */
export const seasonsOf = (given: SeasonRanges): CropSeason[] | Refusal =>
  sizesDiffer(given) ?? seasonsFrom(given)

/** The arguments that say when each planting is cut and what it brings. */
export const seasonRanges = {
  open: everyDay("First days of cutting"),
  close: everyDay("Last days of cutting"),
  crop: everyNumber("Crops of the whole season", "kg"),
  structure: everyNumber("Structural roots at the start of the model year", "kg/ha"),
  reserve: everyNumber("Sugar in the store at that start", "kg/ha"),
}

export const SEASON_CROP_ON = defineFunction({
  name: "SEASON.CROP_ON",
  summary: "Crop of all plantings on one day, from the plan of their seasons",
  about:
    "Each planting's crop is spread over its days of cutting as the daily balance cuts it, which follows the weather; evenly " +
    "where its crowns were not sampled. A planting whose close is words, blank or not known gives nothing. Real pickings come " +
    "in lumps: a planting cut every second day brings two days' crop on one.",
  parameters: {
    day: date("Day"),
    ...seasonRanges,
    climate: climateRange,
    values: balanceValues,
  },
  returns: {label: "Crop on that day", unit: "kg"},
  refuses: ["ranges of different sizes"],
  sources: ["balance", "planning"],
  example: {
    formula: `=SEASON.CROP_ON("2026-05-04",{"2026-05-01"},{"2026-05-10"},{1000},{""},{""},${EXAMPLE_CLIMATE})`,
    gives: 100,
  },
  calculate({day, climate, values, ...ranges}) {
    const seasons = seasonsOf(ranges)
    return isRefusal(seasons) ? seasons : cropOn(seasons, day, climate, values)
  },
})
