import type {Store} from "../editor/store"
import {planOf, planSheet, type Plan} from "../workbook/plan"

/** The season plan when its sheet is open. */
export function planShown(store: Store): Plan | null {
  const {document, cell} = store.getState()
  return cell.sheet === planSheet(document) ? planOf(store.workbook) : null
}
