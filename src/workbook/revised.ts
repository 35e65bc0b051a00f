import {withColumnsInserted, withColumnsRemoved} from "./columns"
import {contentAt, withSheet, type Column, type Document} from "./document"
import type {ColumnChange, Edit, Entry} from "./edit"
import {withExtras} from "./extras"
import {withFieldEntries} from "./fieldRows"
import {isName, isTaken, standsFor, withNameChanged} from "./names"
import {withRegion} from "./region"
import {withoutReading} from "./reading"
import {blankRow, withRowsInserted, withRowsRemoved} from "./rows"
import {withSheetAdded, withSheetCopied, withSheetMoved, withSheetRemoved, withSheetRenamed} from "./sheets"
import {withRowsMoved} from "./sorting"

/** The document after an edit. */
export function revised(document: Document, edit: Edit): Document {
  switch (edit.type) {
    case "enter":
      return withExtras(withContents(document, edit.cells), edit.extras ?? [])
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
      return withFieldEntries(document, edit.entries)
    case "setRegion":
      return withRegion(document, edit.region)
    case "makeOwn":
      return {...withoutReading(document), name: `${document.name}, own copy`}
  }
}

function withContents(document: Document, entries: readonly Entry[]): Document {
  let next = document
  for (const {at, content} of entries) {
    const {columns, rows, names} = next.sheets[at.sheet]!
    const was = contentAt(next, at)
    const renames = names && at.col === 0 && was !== content && isName(content)
    const isRename = renames && standsFor(next, at) && !isTaken(next, content, at)
    const added = Array.from({length: Math.max(0, at.row + 1 - rows.length)}, () => blankRow(columns))
    const grown = [...rows, ...added]
    const row = [...grown[at.row]!]
    while (row.length <= at.col) row.push(null)
    row[at.col] = content
    next = withSheet(next, at.sheet, {rows: grown.with(at.row, row)})
    if (isRename) next = withNameChanged(next, was as string, content)
  }
  return next
}

function withColumnChanged(document: Document, sheet: number, col: number, change: ColumnChange): Document {
  const {columns} = document.sheets[sheet]!
  const changed = Object.entries({...columns[col]!, ...change}).filter(([, value]) => value !== undefined)
  return withSheet(document, sheet, {columns: columns.with(col, Object.fromEntries(changed) as Column)})
}
