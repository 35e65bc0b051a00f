import {alongYear, type Climate} from "../climate/climate"
import {modelYearOf} from "../calendar"
import {heldWith, remembering} from "../memo"
import {isRefusal} from "../refusal"
import {balanceValuesAnd, type BalanceValues} from "../root/balanceValues"
import {roundUp} from "../rounding"
import type {Stretch} from "../spear/growth"
import {pickGap, type CutLengths} from "../spear/pickGap"
import {seasonsFrom, sharesOf, type CropSeason, type SeasonRanges} from "./cropOn"
import {isWaiting, NO_WAITS, type Wait, type Waits} from "./waits"

/** The optional argument `[values]` of the functions that plan pickings: those of the balance and of spear growth. */
export const pickingValues = balanceValuesAnd("Stretch_rate", "Stretch_base", "Cut_shortest", "Cut_longest")
export type PickingValues = BalanceValues & Stretch & CutLengths

/** One picking: its day, and the share of the season's crop that it brings. */
export interface Picking {
  readonly day: number
  readonly share: number
}

/** What waits lose: the days, from the first to the last, on which it came up. */
interface Loss {
  readonly from: number
  readonly until: number
}

interface WorkedOut {
  readonly pickings: readonly Picking[]
  readonly losses: readonly Loss[]
}

/**
 * The pickings of a season of cutting. The first falls on the opening, the last on the close; between them a field is
 * picked again as soon as the days since the last picking are as many as that day's temperature asks for, in whole days.
 * Each brings what has grown since the one before. A day too cold for spears to grow has none, nor has a day in a wait
 * after spraying: where a picking was missed, the first day after the wait has it, and brings what came up in one gap
 * between pickings.
 */
export const pickingsOf = (
  season: CropSeason,
  climate: Climate,
  values: PickingValues,
  waits: readonly Wait[] = [],
): readonly Picking[] => workedOut(season, climate, values, waits).pickings

/** The share of a season's crop that can be sold of what grows up to the end of a day: all but what waits lose. */
export function saleableOf(
  season: CropSeason,
  climate: Climate,
  values: PickingValues,
  waits: readonly Wait[] = [],
): (day: number) => number {
  const by = sharesOf(season, climate, values)
  if (waits.length === 0) return by
  const {losses} = workedOut(season, climate, values, waits)
  return (day) =>
    losses.reduce(
      (share, {from, until}) => (day < from ? share : share - by(Math.min(day, until)) + by(from - 1)),
      by(day),
    )
}

function workedOut(
  season: CropSeason,
  climate: Climate,
  values: PickingValues,
  waits: readonly Wait[],
): WorkedOut {
  const {open, close} = season
  if (open === null || close === null || close < open) return {pickings: [], losses: []}
  const key = [open, close, season.structure ?? -1, season.reserve ?? -1]
  const spells = waits.flatMap(({from, until}) => [from, until])
  const remembered = memoFor([climate, values], () => remembering<WorkedOut>(400))
  return remembered([...key, ...spells], () => workOut(season, open, close, climate, values, waits))
}

function workOut(
  season: CropSeason,
  open: number,
  close: number,
  climate: Climate,
  values: PickingValues,
  waits: readonly Wait[],
): WorkedOut {
  const year = modelYearOf(open, values.Year_start)
  const air = alongYear(climate.air, year)
  const pickings: Picking[] = []
  const losses: Loss[] = []
  const grownBy = sharesOf(season, climate, values)
  let [last, brought, isMissed] = [-Infinity, 0, false]
  for (let day = open; day <= close; day++) {
    const gap = pickGap(air[day - year.first] ?? NaN, values)
    const days = isRefusal(gap) ? Infinity : roundUp(gap)
    if (day !== close && days === Infinity) continue
    if (day !== close && !isMissed && day - last < days) continue
    if (isWaiting(waits, day)) {
      isMissed = true
      continue
    }
    const from = Math.max(last + 1, open)
    const fresh = isMissed ? Math.max(from, day - days + 1) : from
    if (fresh > from) losses.push({from, until: fresh - 1})
    const grown = grownBy(day)
    pickings.push({day, share: grown - (fresh > from ? grownBy(fresh - 1) : brought)})
    ;[last, brought, isMissed] = [day, grown, false]
  }
  if (last < close) losses.push({from: Math.max(last + 1, open), until: close})
  return {pickings, losses}
}

/** Pickings are asked for again for every day of a season: those of a climate and a set of values are remembered. */
const memoFor = heldWith<ReturnType<typeof remembering<WorkedOut>>>()

/** What one planting's picking of a day brings: its row among the plantings, and the share of its season's crop. */
export interface DayPicking {
  readonly row: number
  readonly share: number
}

/** The pickings of plantings on a day. Worked out once for all days, as long as the seasons and the crowns stay the same. */
export const pickingsOn = (
  {open, close, structure, reserve}: Omit<SeasonRanges, "crop">,
  day: number,
  climate: Climate,
  values: PickingValues,
  waits: Waits = NO_WAITS,
): readonly DayPicking[] =>
  tableFor([open, close, structure, reserve, climate, values, waits], () => {
    const byDay = new Map<number, DayPicking[]>()
    for (const [row, season] of seasonsFrom({open, close, crop: open, structure, reserve}).entries())
      for (const {day: on, share} of pickingsOf(season, climate, values, waits[row])) {
        const there = byDay.get(on)
        if (there) there.push({row, share})
        else byDay.set(on, [{row, share}])
      }
    return byDay
  }).get(day) ?? []

const tableFor = heldWith<ReadonlyMap<number, readonly DayPicking[]>>()
