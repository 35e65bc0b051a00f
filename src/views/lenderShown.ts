import {sentenceText} from "../editor/display"
import {lenderLists, type LenderLists} from "../editor/lenderLists"
import type {Store} from "../editor/store"
import {coverAtPace} from "../studies/coverAtPace"
import {sheetWith, type Document, type Part} from "../workbook/document"
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
    const page = pageOf(store)
    held.set(
      document,
      page && {page, lists: lenderLists(store.workbook, sheet), atPace: coverAtPace(store.workbook)},
    )
  }
  return held.get(document)!
}

/** The numbers of the lender's page when the sheet of cash and debt is open and has years; null on other sheets. */
export function cashShown(store: Store): LenderPage | null {
  const page = isOpen(store, "cash year") ? pageOf(store) : null
  return page && page.years.length + page.unknown.length > 0 ? page : null
}

/** The same when a sheet of yields by age is open, of the farm's table or of its records, and there are any to draw. */
export function yieldsShown(store: Store): LenderPage | null {
  const page = isOpen(store, "table age") || isOpen(store, "evidence planting") ? pageOf(store) : null
  return page?.yields.some(({record, projection}) => record.length > 0 || (projection ?? 0) > 0) ? page : null
}

function isOpen(store: Store, part: Part): boolean {
  const {document, cell} = store.getState()
  return cell.sheet === sheetWith(document, part)
}

/** What the pages of money show, read once for each document; null without a page for the lender. */
function pageOf(store: Store): LenderPage | null {
  const {document} = store.getState()
  if (!pages.has(document)) pages.set(document, inRegion(lenderOf(store.workbook)))
  return pages.get(document)!
}

/** The page with the sentences of its formulas as its region shows them. */
function inRegion(page: LenderPage | null): LenderPage | null {
  if (page === null) return null
  const shown = (sentence: string) => sentenceText(sentence, page.region)
  const lines = page.lines.map((line) => ({...line, text: shown(line.text)}))
  return {...page, lines, stress: shown(page.stress)}
}

const held = new WeakMap<Document, LenderShown | null>()
const pages = new WeakMap<Document, LenderPage | null>()
