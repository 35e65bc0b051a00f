import {lenderLists, type LenderLists} from "../editor/lenderLists"
import type {Store} from "../editor/store"
import {coverAtPace} from "../studies/coverAtPace"
import {sheetWith, type Document} from "../workbook/document"
import {lenderOf, type LenderPage} from "../workbook/lender"

export interface LenderShown {
  readonly page: LenderPage
  readonly lists: LenderLists
  /** Cover of this season's year at the pace so far; null before the first picking. */
  readonly atPace: number | null
}

/** What the lender's page shows when its sheet is open, read once for each document; null on other sheets. */
export function lenderShown(store: Store): LenderShown | null {
  const {document, cell} = store.getState()
  const sheet = sheetWith(document, "page line")
  if (cell.sheet !== sheet) return null
  if (!held.has(document)) {
    const page = lenderOf(store.workbook)
    held.set(
      document,
      page && {page, lists: lenderLists(store.workbook, sheet), atPace: coverAtPace(store.workbook)},
    )
  }
  return held.get(document)!
}
const held = new WeakMap<Document, LenderShown | null>()
