import type {Store} from "../editor/store"
import type {Document} from "../workbook/document"
import {planOf, planSheet, type Plan} from "../workbook/plan"

/** The season plan when its sheet is open, read once for each document: it does not change with each key that is typed. */
export function planShown(store: Store): Plan | null {
  const {document, cell} = store.getState()
  if (cell.sheet !== planSheet(document)) return null
  if (!plans.has(document)) plans.set(document, planOf(store.workbook))
  return plans.get(document)!
}
const plans = new WeakMap<Document, Plan | null>()
