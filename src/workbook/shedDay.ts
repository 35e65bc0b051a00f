import {sheetWith} from "./document"
import {numberNamed} from "./names"
import {rowsOf} from "./season"
import type {Workbook} from "./workbook"

/** What the shed has to do on the day of the packing list. Weights in kg. */
export interface ShedDay {
  readonly day: number
  /** Before the day on which the plan stands: what was picked is known. */
  readonly isPast: boolean
  readonly comesIn: number
  readonly packed: number
  /** Each planting's are filled by itself. */
  readonly crates: number
  readonly cartons: number
}

/** The day that the packing list is for; null without such a sheet, or where no day is typed for it. */
export function shedDayOf(workbook: Workbook): ShedDay | null {
  if (sheetWith(workbook.document, "shed in") < 0) return null
  const [day, asOf] = [numberNamed(workbook, "Shed_day"), numberNamed(workbook, "As_of")]
  if (day === null) return null
  const rows = rowsOf(workbook, "shed in")
  const sum = (part: "shed in" | "shed packed" | "shed crates" | "shed cartons") =>
    rows.reduce((total, row) => total + (row.number(part) ?? 0), 0)
  return {
    day,
    isPast: asOf !== null && day < asOf,
    comesIn: sum("shed in"),
    packed: sum("shed packed"),
    crates: sum("shed crates"),
    cartons: sum("shed cartons"),
  }
}
