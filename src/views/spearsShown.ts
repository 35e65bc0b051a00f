import type {Store} from "../editor/store"
import {sheetWith, type Document} from "../workbook/document"
import {spearSizesOf, type SpearSizes} from "../workbook/spears"

/** The spears measured when their sheet is open, read once for each document; null on other sheets and before any is measured. */
export function spearsShown(store: Store): SpearSizes | null {
  const {document, cell} = store.getState()
  if (cell.sheet !== sheetWith(document, "spear mean")) return null
  if (!shown.has(document)) {
    const sizes = spearSizesOf(store.workbook)
    shown.set(document, sizes && sizes.plantings.length > 0 ? sizes : null)
  }
  return shown.get(document)!
}
const shown = new WeakMap<Document, SpearSizes | null>()
