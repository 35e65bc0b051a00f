import {alongYear, type Climate} from "../climate/climate"
import {modelYearOf} from "../calendar"
import {valuesOf} from "../cropValues"
import {remembering} from "../memo"
import {isRefusal, type Refusal} from "../refusal"
import {balanceNames, checkedBalance, type BalanceValues} from "../root/balanceValues"
import {roundUp} from "../rounding"
import type {Stretch} from "../spear/growth"
import {pickGap, type CutLengths} from "../spear/pickGap"
import {seasonsFrom, shareBy, type CropSeason, type SeasonRanges} from "./cropOn"

const all = valuesOf(...balanceNames, "Stretch_rate", "Stretch_base", "Cut_shortest", "Cut_longest")

/** The optional argument `[values]` of the functions that plan pickings: those of the balance and of spear growth. */
export const pickingValues = {
  ...all,
  read(given: Parameters<typeof all.read>[0]): PickingValues | Refusal {
    const values = all.read(given)
    const balance = isRefusal(values) ? values : checkedBalance(values)
    return isRefusal(balance) ? balance : (values as PickingValues)
  },
}
export type PickingValues = BalanceValues & Stretch & CutLengths

/** One picking: its day, and the share of the season's crop that it brings. */
export interface Picking {
  readonly day: number
  readonly share: number
}

/**
 * The pickings of a season of cutting. The first falls on the opening, the last on the close; between them a field is
 * picked again as soon as the days since the last picking are as many as that day's temperature asks for, in whole days.
 * Each brings what has grown since the one before. A day too cold for spears to grow has none.
 */
export function pickingsOf(season: CropSeason, climate: Climate, values: PickingValues): readonly Picking[] {
  const {open, close} = season
  if (open === null || close === null || close < open) return []
  const key = [open, close, season.structure ?? -1, season.reserve ?? -1]
  return rememberedFor(climate, values)(key, () => workOut(season, open, close, climate, values))
}

function workOut(
  season: CropSeason,
  open: number,
  close: number,
  climate: Climate,
  values: PickingValues,
): readonly Picking[] {
  const year = modelYearOf(open, values.Year_start)
  const air = alongYear(climate.air, year)
  const pickings: Picking[] = []
  let [last, brought] = [-Infinity, 0]
  for (let day = open; day <= close; day++) {
    const gap = pickGap(air[day - year.first] ?? NaN, values)
    const isDue = day === close || (!isRefusal(gap) && day - last >= roundUp(gap))
    if (!isDue) continue
    const grown = shareBy(season, day, climate, values)
    pickings.push({day, share: grown - brought})
    ;[last, brought] = [day, grown]
  }
  return pickings
}

const held = new WeakMap<
  Climate,
  WeakMap<PickingValues, ReturnType<typeof remembering<readonly Picking[]>>>
>()

/** Pickings are asked for again for every day of a season: those of a climate and a set of values are remembered. */
function rememberedFor(climate: Climate, values: PickingValues) {
  const ofClimate = held.get(climate) ?? new WeakMap()
  held.set(climate, ofClimate)
  const found = ofClimate.get(values) ?? remembering<readonly Picking[]>(400)
  ofClimate.set(values, found)
  return found as ReturnType<typeof remembering<readonly Picking[]>>
}

/** What one planting's picking of a day brings: its row among the plantings, and the share of its season's crop. */
export interface DayPicking {
  readonly row: number
  readonly share: number
}

/** The pickings of plantings on a day. Worked out once for all days, as long as the seasons and the crowns stay the same. */
export function pickingsOn(
  {open, close, structure, reserve}: Omit<SeasonRanges, "crop">,
  day: number,
  climate: Climate,
  values: PickingValues,
): readonly DayPicking[] {
  const table = deepest(open, close, structure, reserve, climate, values)
  if (table.byDay === null) {
    table.byDay = new Map()
    for (const [row, season] of seasonsFrom({open, close, crop: open, structure, reserve}).entries())
      for (const {day: on, share} of pickingsOf(season, climate, values)) {
        const there = table.byDay.get(on)
        if (there) there.push({row, share})
        else table.byDay.set(on, [{row, share}])
      }
  }
  return table.byDay.get(day) ?? []
}

interface Table {
  byDay: Map<number, DayPicking[]> | null
}

const tables: WeakMap<object, unknown> = new WeakMap()

/** What is held for these very objects together. */
function deepest(...keys: readonly object[]): Table {
  let level = tables
  for (const key of keys) {
    const next = (level.get(key) as WeakMap<object, unknown> | undefined) ?? new WeakMap()
    level.set(key, next)
    level = next
  }
  const table = (level.get(HERE) as Table | undefined) ?? {byDay: null}
  level.set(HERE, table)
  return table
}

const HERE = {}
