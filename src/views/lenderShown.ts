import {sentenceText} from "../editor/display"
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
    const page = inRegion(lenderOf(store.workbook))
    held.set(
      document,
      page && {page, lists: lenderLists(store.workbook, sheet), atPace: coverAtPace(store.workbook)},
    )
  }
  return held.get(document)!
}

/** The page with the sentences of its formulas as its region shows them. */
function inRegion(page: LenderPage | null): LenderPage | null {
  if (page === null) return null
  const shown = (sentence: string) => sentenceText(sentence, page.region)
  const lines = page.lines.map((line) => ({...line, text: shown(line.text)}))
  return {...page, lines, stress: shown(page.stress)}
}

const held = new WeakMap<Document, LenderShown | null>()
