import type {Store} from "../editor/store"
import {sheetWith, type Document} from "../workbook/document"
import {sampleSpreadOf, type SampleSpread} from "../workbook/sampleSpread"

/** The root samples when their sheet is open, read once for each document; null on other sheets and before any is measured. */
export function samplesShown(store: Store): SampleSpread | null {
  const {document, cell} = store.getState()
  if (cell.sheet !== sheetWith(document, "sample sugar")) return null
  if (!shown.has(document)) {
    const spread = sampleSpreadOf(store.workbook)
    shown.set(document, spread && spread.samplings.length > 0 ? spread : null)
  }
  return shown.get(document)!
}
const shown = new WeakMap<Document, SampleSpread | null>()
