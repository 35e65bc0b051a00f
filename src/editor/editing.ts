import {dayOf} from "../../functions/calendar"
import {
  contentAt,
  isSameCell,
  type CellAddress,
  type Column,
  type Content,
  type Document,
} from "../workbook/document"
import {formulaIn} from "../workbook/cells"
import {enterContent, isGuarded} from "./commands/cells"
import {readEntry, readsAs, type Entry} from "./entry"
import {isPointing, pointAtSheet} from "./pointing"
import {choose, chosenStep, openSheet} from "./selection"
import type {Store, Turn} from "./store"
import {cellName} from "./words"

/** Begins editing the chosen cell with what it holds, the caret at the end; arrow keys then move the caret. */
export const startEditing: Turn = ({document, cell}) => {
  const text = readsAs(contentAt(document, cell), columnAt(document, cell), formulaIn(document, cell))
  return {
    editing: {at: cell, text, caret: text.length, arrowsLeave: false, refused: null, pointed: null},
    question: null,
  }
}

/** Begins editing by typing: what is typed takes the place of what the cell holds. */
export const startTyping =
  (text: string): Turn =>
  ({cell}) => ({
    editing: {
      at: cell,
      text,
      caret: text.length,
      arrowsLeave: !text.startsWith("="),
      refused: null,
      pointed: null,
    },
    question: null,
  })

/** What is typed now reads so. In a formula the arrow keys move the caret. */
export const typeText =
  (text: string, caret: number): Turn =>
  ({editing, cell}) => {
    const arrowsLeave = (editing?.arrowsLeave ?? false) && !text.startsWith("=")
    return {editing: {at: editing?.at ?? cell, text, caret, arrowsLeave, refused: null, pointed: null}}
  }

/** The arrow keys now move the caret and leave the cell no more. */
export const keepArrows: Turn = ({editing}) => ({editing: editing && {...editing, arrowsLeave: false}})

/** Drops what is being typed; the cell stays as it was. */
export const dropEditing: Turn = ({editing, cell}) => ({
  cell: editing?.at ?? cell,
  editing: null,
  question: null,
  said: "Unchanged.",
})

/**
 * Keeps what is being typed and chooses the next cell, `down` and `right` of this one. What cannot stand in the
 * cell stays in the line with a sentence; over a worked-out cell the person is asked first. Says whether it was kept.
 */
export function keepEditing(store: Store, down: number, right: number): boolean {
  const {editing, document} = store.getState()
  if (!editing) return true
  const cell = editing.at
  if (!isSameCell(cell, store.getState().cell)) store.turn(() => ({cell})) // back from the sheet pointed at
  const column = columnAt(document, cell)!
  const same = editing.text === readsAs(contentAt(document, cell), column, formulaIn(document, cell))
  const entry = same
    ? {content: contentAt(document, cell)}
    : readEntry(editing.text, takingDates(column, contentAt(document, cell)), yearOf(document), (text) =>
        store.workbook.normalized(text),
      )
  if ("refused" in entry) {
    store.turn((state) => ({editing: {...state.editing!, refused: entry.refused}, said: `${entry.refused}.`}))
    return false
  }
  const command = enterContent(cell, entry.content)
  const edit = command(store.getState())
  if (edit && isGuarded(cell)(store.getState())) {
    const asks = `${cellName(document, cell)} is worked out. Type over it?`
    store.turn(() => ({editing: null, question: {asks, yes: "Type over it", edit}, said: asks}))
    return false
  }
  if (!store.run(command)) store.turn(() => ({editing: null, question: null, said: "Unchanged."}))
  store.turn(chosenStep(down, right))
  return true
}

/** A content of elsewhere as it may stand in a cell, or why it may not: by the same rules as what is typed there. */
export function fitting(document: Document, at: CellAddress, content: Content): Entry {
  const column = takingDates(columnAt(document, at)!, content)
  const read = (text: string) => readEntry(text, column, yearOf(document), () => null)
  const entry = read(String(content ?? ""))
  if ("refused" in entry || entry.content === content) return entry
  return read(readsAs(content, column, null)) // words such as 007 stay words
}

/** Makes the edit that a question asked about. */
export const answerYes = (store: Store) =>
  store.run(({question}) => question?.edit ?? null, store.getState().question?.told)

/** Where a column takes anything, a cell that holds a date takes dates in all their forms: "25 Apr" is no word there. */
export const takingDates = (column: Column, content: Content): Column =>
  column.format === undefined && typeof content === "string" && dayOf(content) !== null
    ? {...column, format: "date"}
    : column

/** The year of the season, to complete dates typed without one. */
export function yearOf({season = ""}: Document): number {
  const written = /\b(19|20)\d{2}\b/.exec(season)?.[0]
  return written ? Number(written) : new Date().getFullYear()
}

export const columnAt = ({sheets}: Document, {sheet, col}: Pick<CellAddress, "sheet" | "col">) =>
  sheets[sheet]?.columns[col]

/** Chooses another cell after keeping what is being typed; what cannot be kept holds the person where they are. */
export function chooseKeeping(store: Store, to: CellAddress): boolean {
  if (!keepEditing(store, 0, 0)) return false
  store.turn(choose(to))
  return true
}

/** Opens a sheet: to point at its cells while a formula waits for a reference, else after keeping what is being typed. */
export function openSheetKeeping(store: Store, sheet: number) {
  if (isPointing(store.getState())) store.turn(pointAtSheet(sheet))
  else if (keepEditing(store, 0, 0)) store.turn(openSheet(sheet))
}
