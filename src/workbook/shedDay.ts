import {sheetWith} from "./document"
import {numberNamed} from "./names"
import {rowsOf} from "./season"
import {isFault} from "./value"
import type {Workbook} from "./workbook"

/** What the shed has to do on the day of the packing list. Weights in kg; null where that of a planting is not known. */
export interface ShedDay {
  readonly day: number
  /** Before the day on which the plan stands: what was picked is known. */
  readonly isPast: boolean
  readonly comesIn: number | null
  readonly packed: number | null
  /** Each planting's are filled by itself. */
  readonly crates: number | null
  readonly cartons: number | null
}

/** The day that the packing list is for; null without such a sheet, or where no day is typed for it. */
export function shedDayOf(workbook: Workbook): ShedDay | null {
  if (sheetWith(workbook.document, "shed in") < 0) return null
  const [day, asOf] = [numberNamed(workbook, "Shed_day"), numberNamed(workbook, "As_of")]
  if (day === null) return null
  const rows = rowsOf(workbook, "shed in")
  const sum = (part: "shed in" | "shed packed" | "shed crates" | "shed cartons") =>
    rows.some(({cells}) => cells[part] && isFault(workbook.valueAt(cells[part])))
      ? null
      : rows.reduce((total, row) => total + (row.number(part) ?? 0), 0)
  return {
    day,
    isPast: asOf !== null && day < asOf,
    comesIn: sum("shed in"),
    packed: sum("shed packed"),
    crates: sum("shed crates"),
    cartons: sum("shed cartons"),
  }
}
