import {EXAMPLE_CLIMATE, climateRange, type Climate} from "../climate/climate"
import {defineFunction} from "../define"
import {date} from "../parameters"
import {seasonRanges, sizesDiffer, type SeasonRanges} from "./cropOn"
import {pickingsOn, pickingValues, type PickingValues} from "./pickingDays"
import {aboutWaits, NO_WAITS, waitRanges, withWaits, type Waits} from "./waits"

/** What the pickings of one day bring of all plantings, kg: lumps, since a field is not picked every day. */
export const pickOn = (
  ranges: SeasonRanges,
  day: number,
  climate: Climate,
  values: PickingValues,
  waits: Waits = NO_WAITS,
): number =>
  pickingsOn(ranges, day, climate, values, waits).reduce(
    (total, {row, share}) => total + (ranges.crop[row] ?? 0) * share,
    0,
  )

export const aboutPickings =
  "A field is picked on its opening, on its close, and between as often as the day's temperature asks, in whole days " +
  "(SPEAR.PICK_GAP rounded up); each picking brings what has grown since the last. The days are those of the plan: move one, " +
  "and the loads of the days after it move too. " +
  aboutWaits

export const SEASON_PICK_ON = defineFunction({
  name: "SEASON.PICK_ON",
  summary: "Weight that the pickings of one day bring, from the plan of all plantings",
  about: aboutPickings,
  parameters: {
    day: date("Day"),
    ...seasonRanges,
    climate: climateRange,
    values: pickingValues,
    ...waitRanges,
  },
  returns: {label: "Weight picked on that day", unit: "kg"},
  refuses: ["ranges of different sizes"],
  sources: ["balance", "planning"],
  example: {
    formula: `=SEASON.PICK_ON("2026-05-04",{"2026-05-01"},{"2026-05-10"},{1000},{""},{""},${EXAMPLE_CLIMATE})`,
    gives: 0,
  },
  calculate: ({day, climate, values, open, close, crop, structure, reserve, ...waiting}) => {
    const ranges = {open, close, crop, structure, reserve}
    return (
      sizesDiffer(ranges) ??
      withWaits(waiting, open.length, (waits) => pickOn(ranges, day, climate, values, waits))
    )
  },
})
