import {withCellsMoved} from "./cellsMoved"
import {withClassHeadings} from "./classHeadings"
import {withColumnsInserted, withColumnsRemoved} from "./columns"
import {withSheetContents} from "./contents"
import {contentAt, withSheet, type Column, type Document} from "./document"
import type {ColumnChange, Edit, Entry} from "./edit"
import {withExtras} from "./extras"
import {landed} from "./fieldActs"
import {isName, isTaken, standsFor, withNameChanged} from "./names"
import {withRegion} from "./region"
import {withoutReading} from "./reading"
import {withRowsForEach} from "./rowsForEach"
import {withRowsInserted, withRowsRemoved} from "./rows"
import {withSheetAdded, withSheetCopied, withSheetMoved, withSheetRemoved, withSheetRenamed} from "./sheets"
import {withRowsMoved} from "./sorting"

/** The document after an edit. */
export const revised = (document: Document, edit: Edit): Document =>
  withRowsForEach(document, withClassHeadings(document, changed(document, edit)))

function changed(document: Document, edit: Edit): Document {
  switch (edit.type) {
    case "enter":
      return withExtras(withContents(document, edit.cells), edit.extras ?? [])
    case "moveCells":
      return withCellsMoved(document, edit.moves)
    case "changeExtras":
      return withExtras(document, edit.changes)
    case "changeCases":
      return withExtras(
        {...document, cases: edit.names.length ? [...edit.names] : undefined} as Document,
        edit.changes,
      )
    case "keepColumns":
      return withSheet(document, edit.sheet, {keeps: edit.count})
    case "insertRows":
      return withRowsInserted(document, edit.sheet, edit.before, edit.count)
    case "removeRows":
      return withRowsRemoved(document, edit.sheet, edit.first, edit.count)
    case "changeColumn":
      return withColumnChanged(document, edit.sheet, edit.col, edit.change)
    case "moveRows":
      return withRowsMoved(document, edit.sheet, edit.order)
    case "insertColumns":
      return withColumnsInserted(document, edit.sheet, edit.before, edit.count)
    case "removeColumns":
      return withColumnsRemoved(document, edit.sheet, edit.first, edit.count)
    case "addSheet":
      return withSheetAdded(document, edit.name, edit.group)
    case "renameSheet":
      return withSheetRenamed(document, edit.sheet, edit.name)
    case "moveSheet":
      return withSheetMoved(document, edit.from, edit.to)
    case "copySheet":
      return withSheetCopied(document, edit.sheet, edit.name)
    case "removeSheet":
      return withSheetRemoved(document, edit.sheet)
    case "several":
      return edit.edits.reduce(revised, document)
    case "addField":
      return landed(document, edit.entries, edit.from).document
    case "setRegion":
      return withRegion(document, edit.region)
    case "makeOwn":
      return {...withoutReading(document), name: `${document.name}, own copy`}
  }
}

function withContents(document: Document, entries: readonly Entry[]): Document {
  let next = document
  let ofOneSheet: Entry[] = []
  const put = () => {
    if (ofOneSheet.length) next = withSheetContents(next, ofOneSheet)
    ofOneSheet = []
  }
  for (const entry of entries) {
    const {at, content} = entry
    const isNaming = at.col === 0 && next.sheets[at.sheet]!.names && isName(content)
    if (isNaming || (ofOneSheet.length && ofOneSheet[0]!.at.sheet !== at.sheet)) put()
    ofOneSheet.push(entry)
    if (!isNaming) continue
    // A name that is typed anew is another in the formulas too.
    const was = contentAt(next, at)
    const isRename = was !== content && standsFor(next, at) && !isTaken(next, content, at)
    put()
    if (isRename) next = withNameChanged(next, was as string, content)
  }
  put()
  return next
}

function withColumnChanged(document: Document, sheet: number, col: number, change: ColumnChange): Document {
  const {columns} = document.sheets[sheet]!
  const changed = Object.entries({...columns[col]!, ...change}).filter(([, value]) => value !== undefined)
  return withSheet(document, sheet, {columns: columns.with(col, Object.fromEntries(changed) as Column)})
}
