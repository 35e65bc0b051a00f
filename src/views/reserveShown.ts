import type {Store} from "../editor/store"
import {isRefusal, type Refusal} from "../../functions/refusal"
import {crownsOf, type CrownYears} from "../workbook/crowns"
import type {Document} from "../workbook/document"
import {regionOf} from "../workbook/region"
import {reserveYear, type ReserveYear} from "./pictures/reserveLayout"

export interface ReserveShown {
  readonly crowns: CrownYears
  /** Null when the planting asked for cannot be run: it has no sample, no opening, or is not there. */
  readonly year: ReserveYear | null
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
  return crowns === null || isRefusal(crowns)
    ? crowns
    : {crowns, year: reserveYear(crowns, regionOf(store.getState().document))}
}
