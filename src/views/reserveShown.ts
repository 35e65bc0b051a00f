import type {Store} from "../editor/store"
import {isRefusal, type Refusal} from "../../functions/refusal"
import {crownsOf, type CrownYears, type PlantingCrowns} from "../workbook/crowns"
import type {Document} from "../workbook/document"
import {regionOf} from "../workbook/region"
import {sampleSpreadOf} from "../workbook/sampleSpread"
import {isSameName} from "../workbook/plantingName"
import {rowsOf} from "../workbook/season"
import {waitsIn} from "../workbook/waits"
import {dayText} from "../editor/display"
import {reserveYear, type ReserveYear} from "./pictures/reserveLayout"

export interface ReserveShown {
  readonly crowns: CrownYears
  /** Null when the planting asked for cannot be run: it has no sample, no opening, or is not there. */
  readonly year: ReserveYear | null
  /** What the balance does not reckon of the year shown, in a sentence; "" where there is nothing. */
  readonly leftOut: string
}

/** What the sheet of the reserve shows when it is open, read once for each document; null on other sheets. */
export function reserveShown(store: Store): ReserveShown | Refusal | null {
  const {document, cell} = store.getState()
  if (!document.sheets[cell.sheet]!.columns.some(({part}) => part === "store through the year")) return null
  if (!shown.has(document)) shown.set(document, read(store))
  return shown.get(document)!
}
const shown = new WeakMap<Document, ReserveShown | Refusal | null>()

function read(store: Store): ReserveShown | Refusal | null {
  const crowns = crownsOf(store.workbook)
  if (crowns === null || isRefusal(crowns)) return crowns
  const samplings = sampleSpreadOf(store.workbook, Infinity)?.samplings
  const year = reserveYear(crowns, regionOf(store.getState().document), samplings)
  const leftOut = year ? [pickedLater(store, year.planting), waitsLeftOut(store, year.planting)] : []
  return {crowns, year, leftOut: leftOut.filter((words) => words !== "").join(" ")}
}

/** The balance cuts to the close of the plan, whatever was picked after it. */
function pickedLater({workbook}: Store, {planting, close}: PlantingCrowns): string {
  const days = rowsOf(workbook, "picking planting").flatMap((row) =>
    isSameName(row.word("picking planting"), planting) && (row.number("picking weight") ?? 0) > 0
      ? (row.number("picking day") ?? [])
      : [],
  )
  const last = Math.max(close, ...days)
  return last === close
    ? ""
    : `Picked until ${dayText(last)}, but the balance cuts to ${dayText(close)}, the close of the plan: less is left than it says.`
}

/** The balance cuts day by day: what stands through a wait after spraying draws on, and no formula has it. */
function waitsLeftOut({workbook}: Store, {planting, open, close}: PlantingCrowns): string {
  const waits = waitsIn(workbook).flatMap(({planting: name, from, until}) =>
    isSameName(name, planting) && from <= close && until > Math.max(open, from)
      ? [`${dayText(from)} to ${dayText(until - 1)}`]
      : [],
  )
  return waits.length === 0
    ? ""
    : `The balance cuts on through the wait after spraying, ${waits.join(", ")}: what spears left standing in it take ` +
        "from the store besides is not reckoned, so look at the reserve after a long one."
}
