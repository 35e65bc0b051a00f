import {dayOf} from "../../functions/calendar"
import {
  contentAt,
  isSameCell,
  type CellAddress,
  type Content,
  type Document,
  type Region,
} from "../workbook/document"
import type {Edit} from "../workbook/edit"
import {formulaIn} from "../workbook/cells"
import {columnAt, extraAt} from "../workbook/extras"
import {cellText} from "../workbook/formula"
import {namesIn, standsFor} from "../workbook/names"
import {questionedAt} from "../workbook/questioned"
import {PLAIN_REGION, regionOf} from "../workbook/region"
import type {Workbook} from "../workbook/workbook"
import {cellColumn, type CellColumn} from "./cellColumn"
import {choicesAt} from "./choices"
import {enterContent, isGuarded} from "./commands/cells"
import {nameRefused} from "./commands/names"
import {textWithUnit} from "./display"
import {readEntry, readsAs, type Entry} from "./entry"
import {calledAnew, namesMet} from "./namesInUse"
import {doubtsIn} from "./pickingDoubts"
import {isPointing, pointAtSheet} from "./pointing"
import {askToOwn} from "./reading"
import {renameQuestion} from "./renamePlanting"
import {choose, chosenStep, openSheet} from "./selection"
import type {EditorState, Question, Store, Turn} from "./store"
import {whichDay} from "./whichDay"
import {cellName, rowNames} from "./words"

/** Begins editing the chosen cell with what it holds, the caret at the end; arrow keys then move the caret. */
export const startEditing: Turn = ({document, cell}) => {
  if (document.reading) return askToOwn
  const text = lineText(document, cell)
  return {
    editing: {at: cell, text, caret: text.length, arrowsLeave: false, refused: null, pointed: null},
    question: null,
  }
}

/** What stands in the line for a cell. */
export const lineText = (document: Document, at: CellAddress) =>
  readsAs(contentAt(document, at), cellColumn(document, at), formulaIn(document, at), regionOf(document))

/** Begins editing by typing: what is typed takes the place of what the cell holds. */
export const startTyping =
  (text: string): Turn =>
  ({cell, document}) =>
    document.reading
      ? askToOwn
      : {
          editing: {
            at: cell,
            text,
            caret: text.length,
            arrowsLeave: !text.startsWith("="),
            refused: null,
            pointed: null,
          },
          question: null,
        }

/**
 * Begins editing where it is not known yet what will be typed: by a dead key, or an input method. What the cell holds is
 * marked, so that it stays where nothing comes.
 */
export const startMarked: Turn = (state) => {
  const begun = startEditing(state)
  return begun.editing
    ? {...begun, editing: {...begun.editing, caret: 0, arrowsLeave: true, isMarked: true}}
    : begun
}

/** What is typed now reads so. In a formula the arrow keys move the caret. */
export const typeText =
  (text: string, caret: number): Turn =>
  ({editing, cell}) => {
    const arrowsLeave = (editing?.arrowsLeave ?? false) && !text.startsWith("=")
    const lists = editing?.lists && !text.startsWith("=") ? {lists: true as const} : {}
    return {
      editing: {at: editing?.at ?? cell, text, caret, arrowsLeave, refused: null, pointed: null, ...lists},
    }
  }

/** Opens the list of words for the cell, to choose one instead of typing it. */
export const openChoices: Turn = (state) => {
  const {document} = state
  const at = state.editing?.at ?? state.cell
  const count = choicesAt(document, at).length
  if (!count && !document.reading) return {said: `There is no list of words for ${cellName(document, at)}.`}
  const {editing, ...rest} = state.editing ? {editing: state.editing} : startMarked(state)
  if (!editing) return rest
  const said = `${count} ${count === 1 ? "word" : "words"} to choose from: the arrow keys mark one, Enter takes it.`
  return {...rest, editing: {...editing, lists: true}, said}
}

/** Closes the list of words; what is typed stays. */
export const closeChoices: Turn = ({editing}) => {
  if (!editing) return {}
  const {lists: _, ...rest} = editing
  return {editing: rest}
}

/** The words of the open list: those that begin with what is typed, or all where nothing was typed yet or none begins so. */
export function choicesNow({
  document,
  editing,
}: Pick<EditorState, "document" | "editing">): readonly string[] {
  if (!editing?.lists) return []
  const all = choicesAt(document, editing.at)
  const typed = editing.text.trim().toLowerCase()
  const begun = all.filter((word) => word.toLowerCase().startsWith(typed))
  return editing.text === lineText(document, editing.at) || begun.length === 0 ? all : begun
}

/** Puts a word of the list in the cell. */
export function takeChoice(store: Store, word: string): boolean {
  store.turn(closeChoices)
  store.turn(typeText(word, word.length))
  return keepEditing(store, 0, 0)
}

/** The arrow keys now move the caret and leave the cell no more. */
export const keepArrows: Turn = ({editing}) => ({
  editing: editing && {...editing, arrowsLeave: false, isMarked: false},
})

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
  const same = editing.text === lineText(document, cell)
  const entry = same
    ? {content: contentAt(document, cell)}
    : readFor(store, cell, editing.text, editing.refused !== null)
  if ("refused" in entry && entry.twoDays) {
    const again = (store: Store) => {
      store.turn(editAgain(editing.text))
      keepEditing(store, down, right)
    }
    const question = {...whichDay(document, entry.twoDays, again), typed: editing.text}
    store.turn(() => ({editing: null, question, said: question.asks}))
    return false
  }
  if ("refused" in entry) {
    store.turn((state) => ({editing: {...state.editing!, refused: entry.refused}, said: `${entry.refused}.`}))
    return false
  }
  const command = enterContent(cell, entry.content)
  const edit = command(store.getState())
  if (edit && isGuarded(cell)(store.getState())) {
    const name = cellName(document, cell, rowNames(store.workbook))
    const asks = `${name} is worked out. Type over it?`
    store.turn(() => ({editing: null, question: {asks, yes: "Type over it", edit}, said: asks}))
    return false
  }
  const next = {down, right}
  const asked =
    edit &&
    (emptiedName(document, edit) ??
      renameQuestion(document, cell, entry.content, next) ??
      questionOn(document, cell, entry.content, editing.text, next) ??
      doubtQuestion(store.workbook, edit, editing.text, next))
  if (asked) {
    store.turn(() => ({editing: null, question: asked, said: asked.asks}))
    return false
  }
  const anew = calledAnew(document, cell, entry.content)
  const isDone =
    anew && edit?.type === "enter"
      ? store.run(() => ({...edit, name: anew.name}), anew.told)
      : store.run(command)
  if (!isDone) store.turn(() => ({editing: null, question: null, said: "Unchanged."}))
  store.turn(chosenStep(down, right))
  return true
}

/** The question whether a name that formulas use is to be emptied; one that is typed anew is followed by them. */
function emptiedName(document: Document, edit: Edit): Question | null {
  const isEmptied = edit.type === "enter" && edit.cells.every(({content}) => content === null)
  const met = isEmptied ? namesMet(document, edit) : null
  return met && {asks: `${met.asks} Empty all the same?`, yes: "Empty", edit, links: met.links}
}

/** What typed text means in a cell, or why it cannot stand there. `isSure` keeps a formula that reads two ways. */
export function readFor(store: Store, at: CellAddress, text: string, isSure = false): Entry {
  const {document} = store.getState()
  const refused = renameRefused(store, at, text.trim())
  if (refused !== null) return {refused}
  const column = entryColumn(document, at, contentAt(document, at))
  return readEntry(text, column, yearOf(document), (formula) => store.workbook.normalized(formula), {
    region: regionOf(document),
    isSure,
    isWhole: (formula) => store.workbook.takesItsArguments(formula, at.sheet),
  })
}

/** Why a named value cannot be renamed so, or null: formulas follow a name, and would lose what is none. */
function renameRefused({getState, workbook}: Store, at: CellAddress, name: string): string | null {
  const {document} = getState()
  if (at.col > 0 || name === "" || !document.sheets[at.sheet]?.names || !standsFor(document, at)) return null
  const isSame = String(contentAt(document, at)).toLowerCase() === name.toLowerCase()
  return isSame ? null : nameRefused(document, name, workbook.standardFunctions)
}

/** A content of elsewhere as it may stand in a cell, or why it may not: by the same rules as what is typed there. */
export function fitting(document: Document, at: CellAddress, content: Content): Entry {
  const column = entryColumn(document, at, content)
  const read = (text: string, region: Region) =>
    readEntry(text, column, yearOf(document), () => null, {region})
  // A content is in stored units, and stays what it is to the last digit.
  const entry = read(String(content ?? ""), PLAIN_REGION)
  if ("content" in entry && entry.content === content) return entry
  const region = regionOf(document)
  if ("refused" in entry && region !== PLAIN_REGION)
    return read(readsAs(content, column, null, region), region)
  return "refused" in entry ? entry : read(readsAs(content, column, null), PLAIN_REGION) // words such as 007 stay words
}

/** The question that an unlikely number raises, where its column asks; null when there is none. */
function questionOn(
  document: Document,
  at: CellAddress,
  content: Content,
  typed: string,
  next: NonNullable<Question["next"]>,
): Question | null {
  const column = columnAt(document, at)!
  const odd = typeof content === "number" && !column.rule?.onlyMarks && questionedAt(document, at, content)
  if (!odd) return null
  const region = regionOf(document)
  const shown = (value: number) => textWithUnit(value, cellColumn(document, at), false, region)
  const rest = odd.others
    ? `far from the ${odd.others} others (${shown(odd.from)} to ${shown(odd.to)} would be near)`
    : `outside the usual ${shown(odd.from)} to ${shown(odd.to)}`
  const meant = odd.meant === null ? "" : ` Did you mean ${shown(odd.meant)}?`
  const entering = (one: Content): Edit => ({type: "enter", cells: [{at, content: one}]})
  return {
    asks: `${cellName(document, at)} ${shown(content as number)} is ${rest}.${meant}`,
    yes: "Keep it for this reason",
    edit: entering(content),
    ...(odd.meant === null ? {} : {rather: {words: `Use ${shown(odd.meant)}`, edit: entering(odd.meant)}}),
    reasonAt: at,
    typed,
    next,
  }
}

/** The question that a picking or a close raises which another cell speaks against; null when there is none. */
function doubtQuestion(
  workbook: Workbook,
  edit: Edit,
  typed: string,
  next: NonNullable<Question["next"]>,
): Question | null {
  const [doubt] = doubtsIn(workbook, edit)
  if (!doubt) return null
  const {told, asks, link, at} = doubt
  return {
    asks: `${told} ${asks}`,
    yes: "Keep it for this reason",
    edit,
    reasonAt: at,
    links: [link],
    typed,
    next,
  }
}

/** Makes the edit that a question asked about; a `reason` is kept as a note on the cell, after what the note said before. */
export function answerYes(store: Store, reason = "", now = new Date()): boolean {
  const {question, document} = store.getState()
  if (!question) return false
  const {edit, reasonAt, next, told, again} = question
  const was = reasonAt && extraAt(document, reasonAt)?.note
  const text = [was?.text, `Kept: ${reason}`].filter(Boolean).join("\n")
  const note = {...(was?.by ? {by: was.by} : {}), text, written: now.toISOString()}
  const extras = reasonAt ? {extras: [{at: reasonAt, note}]} : {}
  store.turn(() => ({question: null}))
  const isDone = store.run(() => edit && {...edit, ...extras}, told)
  again?.(store)
  if (next) store.turn(chosenStep(next.down, next.right))
  return isDone
}

/** Goes back to what was typed, to change it. */
export const editAgain =
  (text: string): Turn =>
  (state) => ({
    ...startTyping(text)(state),
    editing: {...startTyping(text)(state).editing!, arrowsLeave: false},
  })

/** Makes the other edit that a question offered. */
export function answerRather(store: Store) {
  const {question} = store.getState()
  if (!question?.rather) return
  const {edit, again = question.again} = question.rather
  store.turn(() => ({question: null}))
  store.run(() => edit)
  again?.(store)
  if (question.next) store.turn(chosenStep(question.next.down, question.next.right))
}

/** How a cell that holds a content takes what is typed. */
export const entryColumn = (document: Document, at: CellAddress, content: Content): CellColumn =>
  takingDates(cellColumn(document, at)!, content)

/** Where a column takes anything, a cell that holds a date takes dates in all their forms: "25 Apr" is no word there. */
export const takingDates = (column: CellColumn, content: Content): CellColumn =>
  column.format === undefined && typeof content === "string" && dayOf(content) !== null
    ? {...column, format: "date"}
    : column

/** The year of the season, to complete dates typed without one: as named, else as written beside the name of the workbook. */
export function yearOf(document: Document): number {
  const named = namesIn(document).find(({name}) => name.toLowerCase() === "season")
  const typed = named && contentAt(document, named.at)
  if (typeof typed === "number") return typed
  const {season = ""} = document
  const written = /\b(19|20)\d{2}\b/.exec(season)?.[0]
  return written ? Number(written) : new Date().getFullYear()
}

/** Chooses another cell after keeping what is being typed; what cannot be kept holds the person where they are. */
export function chooseKeeping(store: Store, to: CellAddress): boolean {
  if (!keepEditing(store, 0, 0)) return false
  store.turn(choose(to))
  return true
}

/**
 * Opens a sheet: to point at its cells while a formula waits for a reference, else after keeping what is being typed. Says
 * whether the person is there now; one who points, or has to answer first, stays where they type.
 */
export function openSheetKeeping(store: Store, sheet: number): boolean {
  if (isPointing(store.getState())) {
    store.turn(pointAtSheet(sheet))
    return false
  }
  if (!keepEditing(store, 0, 0)) return false
  store.turn(openSheet(sheet))
  const {cell, document} = store.getState()
  const said = `${document.sheets[cell.sheet]!.name} is open, at ${cellText(cell.row, cell.col)}.`
  store.turn(() => ({said}))
  return true
}
