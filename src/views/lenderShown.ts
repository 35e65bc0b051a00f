import {lenderLists, type LenderLists} from "../editor/lenderLists"
import type {Store} from "../editor/store"
import {sheetWith, type Document} from "../workbook/document"
import {lenderOf, type LenderPage} from "../workbook/lender"

export interface LenderShown {
  readonly page: LenderPage
  readonly lists: LenderLists
}

/** What the lender's page shows when its sheet is open, read once for each document; null on other sheets. */
export function lenderShown(store: Store): LenderShown | null {
  const {document, cell} = store.getState()
  const sheet = sheetWith(document, "page line")
  if (cell.sheet !== sheet) return null
  if (!held.has(document)) {
    const page = lenderOf(store.workbook)
    held.set(document, page && {page, lists: lenderLists(store.workbook, sheet)})
  }
  return held.get(document)!
}
const held = new WeakMap<Document, LenderShown | null>()
