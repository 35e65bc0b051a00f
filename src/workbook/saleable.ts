import {isRefusal} from "../../functions/refusal"
import {pickingValues, saleableOf} from "../../functions/season/pickingDays"
import {crownsOf, rangeOf} from "./crowns"
import {isSameName} from "./plantingName"
import {waitsIn} from "./waits"
import type {Workbook} from "./workbook"

/**
 * The share of what a planting grows from an opening to a close that can be sold up to the end of a day: as the daily
 * balance of its crowns cuts it, less what its waits after spraying lose.
 */
export type Saleable = (planting: string, open: number, close: number) => (day: number) => number

/** How the plantings of a workbook crop. Evenly, and without waits, where its weather or its crop values are not whole. */
export function saleableIn(workbook: Workbook): Saleable {
  const crowns = crownsOf(workbook)
  const values = pickingValues.read(rangeOf(workbook, ["value name", "value"]) ?? [])
  if (crowns === null || isRefusal(crowns) || isRefusal(values))
    return (_, open, close) => (day) => Math.min(1, Math.max(0, (day - open + 1) / (close - open + 1)))
  const all = waitsIn(workbook)
  return (planting, open, close) => {
    const crown = crowns.plantings.find((one) => one.planting === planting)
    const season = {
      open,
      close,
      crop: null,
      structure: crown?.structure ?? null,
      reserve: crown?.reserve ?? null,
    }
    const waits = all.filter((one) => isSameName(one.planting, planting))
    return saleableOf(season, crowns.climate, values, waits)
  }
}
