import {climateRange} from "../../functions/climate/climate"
import {isRefusal} from "../../functions/refusal"
import {pickingsOf, pickingValues} from "../../functions/season/pickingDays"
import {rangeOf} from "./crowns"
import {rowsOf} from "./season"
import {isSameName} from "./plantingName"
import {waitsIn} from "./waits"
import type {Workbook} from "./workbook"

/** What the picking of one planting brings on a day, kg as harvested. */
export interface PlantingPicking {
  readonly planting: string
  readonly kg: number
}

/** The plantings that the plan has picked on a day, the heaviest picking first, as the sheets of days add them up. */
export function pickedOn(workbook: Workbook, day: number): readonly PlantingPicking[] {
  const climate = climateRange.read(rangeOf(workbook, ["air", "soil", "sun"]) ?? [])
  const values = pickingValues.read(rangeOf(workbook, ["value name", "value"]) ?? [])
  if (isRefusal(climate) || isRefusal(values)) return []
  const waits = waitsIn(workbook)
  return rowsOf(workbook, "pick planting")
    .flatMap((row): PlantingPicking[] => {
      const planting = row.word("pick planting")
      const season = {
        open: row.number("pick open"),
        close: row.number("pick close"),
        crop: row.number("pick crop"),
        structure: row.number("pick structure"),
        reserve: row.number("pick reserve"),
      }
      const picking = pickingsOf(
        season,
        climate,
        values,
        waits.filter((one) => isSameName(one.planting, planting)),
      ).find((one) => one.day === day)
      const kg = (season.crop ?? 0) * (picking?.share ?? 0)
      return kg > 0 ? [{planting, kg}] : []
    })
    .sort((a, b) => b.kg - a.kg)
}
