import {isSameName} from "./plantingName"
import type {Wait} from "../../functions/season/waits"
import {sheetWith, type CellAddress} from "./document"
import {rowsOf} from "./season"
import type {Workbook} from "./workbook"

/** A wait after spraying, as the days typed from a product's label have it. */
export interface PlantingWait extends Wait {
  readonly planting: string
  /** Where the first day on which picking is allowed again stands. */
  readonly at: CellAddress
}

/** The waits of a workbook; one whose days are not known yet is none. */
export function waitsIn(workbook: Workbook): readonly PlantingWait[] {
  if (sheetWith(workbook.document, "wait planting") < 0) return []
  return rowsOf(workbook, "wait planting").flatMap((row) => {
    const [planting, from, until] = [
      row.word("wait planting"),
      row.number("sprayed"),
      row.number("pick again"),
    ]
    const at = row.cells["pick again"]
    return planting === "" || from === null || until === null || !at ? [] : [{planting, from, until, at}]
  })
}

/** The wait in which a day lies for a planting, or null. */
export const waitOn = (workbook: Workbook, planting: string, day: number): PlantingWait | null =>
  waitsIn(workbook).find((one) => isSameName(one.planting, planting) && one.from <= day && day < one.until) ??
  null
