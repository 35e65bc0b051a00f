import {EXAMPLE_CLIMATE, climateRange, type Climate} from "../climate/climate"
import {defineFunction} from "../define"
import {date, everyNumber} from "../parameters"
import {wrongKind} from "../refusal"
import {wholeIfNearly} from "../rounding"
import {seasonRanges, sizesDiffer, type SeasonRanges} from "../season/cropOn"
import {pickingsOn, pickingValues, type PickingValues} from "../season/pickingDays"
import {aboutPickings} from "../season/pickOn"
import {NO_WAITS, waitRanges, withWaits, type Waits} from "../season/waits"
import {aboutCutting, area as areaOf, cutting} from "./area"

/**
 * People that the pickings of one day keep busy, over all plantings; not rounded, so that a day's plantings can share a
 * person, but a whole number where adding up left it a hair beside one: rounding up must not call for another person.
 * `areas` are the grounds of the plantings, ha.
 */
export const onDay = (
  ranges: SeasonRanges,
  areas: readonly (number | null)[],
  day: number,
  climate: Climate,
  {rate, shift, walk, values}: {rate: number; shift: number; walk: number; values: PickingValues},
  waits: Waits = NO_WAITS,
): number =>
  wholeIfNearly(
    pickingsOn(ranges, day, climate, values, waits).reduce((people, {row, share}) => {
      const ground = areas[row] ?? 0
      if (ground <= 0 || share <= 0) return people
      return people + ground / areaOf(((ranges.crop[row] ?? 0) * share) / ground, rate, shift, walk)
    }, 0),
  )

export const CREW_ON_DAY = defineFunction({
  name: "CREW.ON_DAY",
  summary: "People that the pickings of one day keep busy, from the plan of all plantings",
  about: `${aboutPickings} ${aboutCutting}`,
  parameters: {
    day: date("Day"),
    ...seasonRanges,
    area: everyNumber("Grounds of the plantings", "ha"),
    climate: climateRange,
    rate: cutting.rate,
    shift: cutting.shift,
    walk: cutting.walk,
    values: pickingValues,
    ...waitRanges,
  },
  returns: {label: "People needed", unit: "people"},
  refuses: ["ranges of different sizes"],
  sources: ["balance", "planning", "ruralNews"],
  example: {
    formula:
      '=CREW.ON_DAY("2026-05-01",{"2026-05-01"},{"2026-05-01"},{400},{""},{""},{2},' +
      `${EXAMPLE_CLIMATE},20,8)`,
    gives: 2.5,
  },
  calculate({
    day,
    climate,
    rate,
    shift,
    walk,
    values,
    area,
    open,
    close,
    crop,
    structure,
    reserve,
    ...waiting
  }) {
    const ranges = {open, close, crop, structure, reserve}
    const differs = sizesDiffer(ranges)
    if (differs) return differs
    if (area.length !== ranges.open.length)
      return wrongKind(
        `The ranges of the plantings have ${ranges.open.length} and ${area.length} cells: sizes differ`,
      )
    return withWaits(waiting, open.length, (waits) =>
      onDay(ranges, area, day, climate, {rate, shift, walk, values}, waits),
    )
  },
})
