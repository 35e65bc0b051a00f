import {withSheet, type Content, type Document} from "./document"
import type {Entry} from "./edit"
import {blankRow} from "./rows"

/** The document with other contents in cells of one sheet: all at once, so that a long paste copies each row once and the list of rows once. */
export function withSheetContents(document: Document, entries: readonly Entry[]): Document {
  if (!entries.length) return document
  const {sheet} = entries[0]!.at
  const {columns, rows} = document.sheets[sheet]!
  const next = [...rows]
  for (const {at, content} of entries) {
    while (next.length <= at.row) next.push(blankRow(columns))
    const isOwn = next[at.row] !== rows[at.row]
    const row = (isOwn ? next[at.row] : [...next[at.row]!]) as Content[]
    while (row.length <= at.col) row.push(null)
    row[at.col] = content
    next[at.row] = row
  }
  return withSheet(document, sheet, {rows: next})
}
