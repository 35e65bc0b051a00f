import {sheetWith, type CellAddress, type Document} from "../workbook/document"
import type {Edit} from "../workbook/edit"
import {newId, withActsKept, type FieldMark} from "../workbook/fieldActs"
import {isoDate} from "../workbook/clock"
import type {SortKey} from "../workbook/sorting"
import {planSheet} from "../workbook/plan"
import type {Change} from "../workbook/value"
import {Workbook} from "../workbook/workbook"
import type {ShownBlock} from "./block"
import {withDaysOfNames} from "./namedValueSet"
import {askToOwn} from "./reading"
import {sortMarks} from "./sortMarks"
import {shownRow} from "./selection"
import {editName, rowNames, whatMoved} from "./words"

/** One act in the history: the document before it (or after it, when it waits to be redone) and its name. */
export interface Step {
  readonly document: Document
  readonly name: string
  /** It opened another workbook, which keeps what was entered in the field by itself. */
  readonly opens?: true
  /** It sorted rows of a sheet: `order[i]` is the row that comes to row i when this step is taken. */
  readonly sorts?: {readonly sheet: number; readonly order: readonly number[]}
  /** Acts of one movement, such as that of a close along the calendar, are one step: those of the same word here. */
  readonly joins?: string
}

/** A reference that was put into the formula by pointing at cells: where it stands in the text, and what it covers. */
export interface Pointed {
  readonly start: number
  readonly end: number
  /** Where pointing began; a range is widened from here. */
  readonly from: CellAddress
  /** The corner that was pointed at last. */
  readonly to: CellAddress
  /** Covers whole columns, from that of `from` to that of `to`. */
  readonly isColumns: boolean
}

/** What is being typed, before it is kept. */
export interface Editing {
  /** The cell it will stand in. Another sheet may be open meanwhile, to point at cells there. */
  readonly at: CellAddress
  readonly text: string
  /** Where the caret stands in the text. */
  readonly caret: number
  /** All of the text is marked: what is typed first takes its place. */
  readonly isMarked?: boolean
  /** The list of words for the cell is open. */
  readonly lists?: true
  /** Whether arrow keys leave the cell (typing began by typing) or move the caret (editing began on purpose). */
  readonly arrowsLeave: boolean
  /** Why the text cannot be kept, said after a try. */
  readonly refused: string | null
  /** Pointing again puts another reference in its place; anything else that is typed makes it null. */
  readonly pointed: Pointed | null
}

/** A piece that is to be pasted: as it was copied, and as it would be read. */
export interface PastePiece {
  readonly at: CellAddress
  readonly copied: string
  readonly reads: string | null
  readonly why: string | null
}

/** A question that waits for a yes before an edit is made. */
export interface Question {
  readonly asks: string
  readonly yes: string
  /** Null where the answer only says how something is to be read, which `again` then does. */
  readonly edit: Edit | null
  /** What is told of the edit before what it moved. */
  readonly told?: string
  /** Another edit that is offered first, in words: what was probably meant. */
  readonly rather?: {
    readonly words: string
    readonly edit: Edit | null
    /** In the place of the question's own. */
    readonly again?: (store: Store) => void
  }
  /** The cell that keeps the reason as a note: a reason has to be given. */
  readonly reasonAt?: CellAddress
  /** What was typed, to be changed instead. */
  readonly typed?: string
  /** What is done once the edit is made: what was typed or pasted is read anew. */
  readonly again?: (store: Store) => void
  /** Where the person goes on after an answer. */
  readonly next?: {readonly down: number; readonly right: number}
  /** How each piece that is to be pasted would be read, or why it cannot be. */
  readonly preview?: readonly PastePiece[]
  /** Cells that the question speaks of. */
  readonly links?: readonly {readonly at: CellAddress; readonly words: string}[]
}

/** Rows that are shown alone. They stay the same while their cells change or rows are sorted, until rows come or go. */
export interface Only {
  readonly sheet: number
  readonly rows: readonly number[]
  /** "Planting is Long Acre" */
  readonly words: string
}

/** What stands beside the content line. */
export type Panel =
  | "where from"
  | "note"
  | "planting"
  | "versions"
  | "names"
  | "cases"
  | "checks"
  | "help"
  | "keys"
  | "region"
  | "find"
  | "work back"
  | "column"
  | "sheet"
  | "send out"
  | "bring in"

export interface EditorState {
  readonly document: Document
  readonly undoable: readonly Step[]
  readonly redoable: readonly Step[]
  /** The chosen cell; its sheet is the one that is open. A row just below the last is the next row to fill. */
  readonly cell: CellAddress
  /** The corner of the chosen cells that lies across from the chosen one; null while that is the only one. */
  readonly reach: {readonly row: number; readonly col: number} | null
  /** The next cell that is tapped or clicked is the one to choose up to. */
  readonly awaitsCorner: boolean
  /** The cells that the next paste moves, until the workbook is changed in another way. */
  readonly cut: ShownBlock | null
  /** The rows of a sheet that are shown, where not all are; and what they have in common. */
  readonly only: Only | null
  readonly editing: Editing | null
  readonly question: Question | null
  /** The book of sheets, or the page for entering in the field. */
  readonly page: "book" | "field"
  readonly panel: Panel
  /** Where the list of more acts on the chosen cells is open: by its button, at the chosen cell or at a place of the window, px. */
  readonly actsAt: "button" | "cell" | {readonly x: number; readonly y: number} | null
  /** How often the person asked to find something: each time the field for it takes the keyboard's focus. */
  readonly asksToFind: number
  /** What can be done instead of the last act, until the next one. */
  readonly offer: {readonly words: string; readonly act: (store: Store) => void} | null
  /** What was last said to the person at the screen. */
  readonly said: string
  /** The worked-out values that the last act changed. */
  readonly changes: readonly Change[]
  /** The same of the last act that changed any: a count typed after a mean moves nothing, and takes no news away. */
  readonly moved: readonly Change[]
}

/** How long the page is held at a time to work out what nobody looks at, ms; chosen, so that a key that is pressed is answered. */
const AT_A_TIME = 16

/** Edits after which each value stands where it did, or is followed to where it stands. */
const TELLS_CHANGES: ReadonlySet<Edit["type"]> = new Set(["enter", "moveCells", "moveRows", "addField"])

/** What a person does: gives the change it makes, or null when there is nothing to do. */
export type Command = (state: EditorState) => Edit | null

/** A change of what is open, chosen, typed or asked; it cannot touch the document. */
export type Turn = (state: EditorState) => Partial<Omit<EditorState, "document" | "undoable" | "redoable">>

export type Store = ReturnType<typeof createStore>

/**
 * The editor's one store. Views read `state` and call `run`, `turn`, `undo`, `redo` or `open`; nothing else writes.
 *
 * An act is shown as soon as the open sheet is worked out; `later` chooses when the rest is, and what it moved is told; it hears
 * whether the act is one of several steps that follow each other, as of a date that is dragged.
 */
export function createStore(
  document: Document,
  later: (act: () => void, isStep: boolean) => void = (act) => act(),
  mark: () => FieldMark = unnamedMark,
  today: () => string = () => isoDate(new Date()),
) {
  const workbook = new Workbook(document)
  const listeners = new Set<() => void>()
  const sorted = sortMarks(workbook)
  let state: EditorState = {
    document,
    undoable: [],
    redoable: [],
    cell: firstCell(document),
    reach: null,
    awaitsCorner: false,
    cut: null,
    only: null,
    editing: null,
    question: null,
    page: "book",
    panel: "where from",
    actsAt: null,
    asksToFind: 0,
    offer: null,
    said: "",
    changes: [],
    moved: [],
  }

  const become = (next: EditorState) => {
    state = next
    for (const listener of listeners) listener()
  }

  const shown = (next: Document, change: Partial<EditorState>, said: string, sorts?: Step["sorts"]) =>
    become(
      withCellInside({
        ...state,
        only: stillOnly(state, next, sorts),
        editing: null,
        question: null,
        offer: null,
        cut: null,
        document: next,
        changes: [],
        moved: [],
        said,
        ...change,
      }),
    )

  /** Works out what an act left for later, a little at a time; a newer act sees to what is left itself. */
  const onceWorkedOut = (next: Document, act: () => void, isStep = false) => {
    const goOn = () => {
      if (state.document !== next) return
      if (workbook.settleFor(AT_A_TIME)) act()
      else later(goOn, false)
    }
    later(goOn, isStep)
  }

  /** What an act moved, once all of it is worked out. */
  const tellChanges = (next: Document, saying: (moved: string) => string, isStep = false) =>
    onceWorkedOut(
      next,
      () => {
        const {changes} = workbook
        const moved = changes.length ? changes : state.moved
        become({...state, changes, moved, said: saying(whatMoved(next, changes))})
      },
      isStep,
    )

  /** The document of a step, without losing an act of the field: what was entered may have left for another device. */
  const at = ({document: next, opens}: Step) => (opens ? next : withActsKept(state.document, next, mark))

  const show = (step: Step, history: Partial<EditorState>, said: string) => {
    const document = at(step)
    shown(workbook.show(document, state.cell.sheet), history, said, step.sorts)
    tellChanges(document, () => state.said)
  }

  return {
    getState: () => state,
    workbook,
    valueAt: workbook.valueAt.bind(workbook),
    subscribe(listener: () => void) {
      listeners.add(listener)
      return () => void listeners.delete(listener)
    },
    canRun: (command: Command) => command(state) !== null,
    turn(turn: Turn) {
      become({...state, ...turn(state)})
    },
    /** The column that the rows of a sheet were sorted by, for as long as they stand in that order. */
    sortedBy: sorted.of,
    markSorted(sheet: number, keys: readonly SortKey[]) {
      sorted.mark(sheet, keys)
      become({...state})
    },
    /**
     * Makes the edit of a command; `told` comes before what it moved. Says whether there was one. With `joins` it is part of
     * the step before, where that has the same word. A named value that is set anew is dated. In a reading copy it asks instead whether to make an own copy.
     */
    run(command: Command, told = "", joins?: string): boolean {
      const edit = command(state)
      if (!edit) return false
      if (state.document.reading && edit.type !== "makeOwn") {
        become({...state, editing: null, ...askToOwn})
        return true
      }
      const name = editName(state.document, edit, rowNames(workbook))
      const sorts = edit.type === "moveRows" ? {sheet: edit.sheet, order: edit.order} : undefined
      const step: Step = {
        document: state.document,
        name,
        ...(joins === undefined ? {} : {joins}),
        ...(sorts && {sorts: reversed(sorts)}),
      }
      const isJoined = joins !== undefined && state.undoable.at(-1)?.joins === joins
      const next = workbook.revise(withDaysOfNames(state.document, edit, today()), state.cell.sheet)
      const history = {undoable: isJoined ? state.undoable : [...state.undoable, step], redoable: []}
      const first = told || (edit.type === "enter" ? "" : `Done: ${step.name}.`)
      const moved = edit.type === "enter" ? state.moved : []
      shown(next, {...history, moved}, first, sorts)
      // Where rows or columns come and go, another value in a cell is no news of that cell; a sort is followed by its rows.
      if (TELLS_CHANGES.has(edit.type))
        tellChanges(next, (moved) => (first ? `${first} ${moved}` : moved), joins !== undefined)
      else onceWorkedOut(next, () => {})
      return true
    },
    undo(): boolean {
      const step = state.undoable.at(-1)
      if (!step) return false
      const redoable = [...state.redoable, backTo(state.document, step)]
      const undoable = state.undoable.slice(0, -1)
      show(step, {undoable, redoable}, `Undone: ${step.name}.`)
      return true
    },
    redo(): boolean {
      const step = state.redoable.at(-1)
      if (!step) return false
      const undoable = [...state.undoable, backTo(state.document, step)]
      const redoable = state.redoable.slice(0, -1)
      show(step, {undoable, redoable}, `Done again: ${step.name}.`)
      return true
    },
    /** Opens another workbook. What was open is one undo away. */
    open(next: Document) {
      const step: Step = {document: state.document, name: `opening ${next.name}`, opens: true}
      const undoable = [...state.undoable, step]
      const cell = firstCell(next)
      sorted.forget()
      shown(workbook.show(next), {undoable, redoable: [], cell, reach: null}, `${next.name} is open.`)
    },
  }
}

/** Where a workbook opens: a reading copy on the page for whoever reads it, any other on its plan. */
function firstCell(document: Document): CellAddress {
  const page = document.reading ? sheetWith(document, "page line") : -1
  return {sheet: Math.max(0, page < 0 ? planSheet(document) : page), row: 0, col: 0}
}

/** The way back over a step: to what is shown now, under the same name. */
const backTo = (document: Document, {name, opens, sorts}: Step): Step => ({
  document,
  name,
  ...(opens && {opens}),
  ...(sorts && {sorts: reversed(sorts)}),
})

function reversed({sheet, order}: NonNullable<Step["sorts"]>): NonNullable<Step["sorts"]> {
  const back: number[] = []
  for (const [to, from] of order.entries()) back[from] = to
  return {sheet, order: back}
}

const unnamedMark = (): FieldMark => ({id: newId(), device: "a device", entered: new Date().toISOString()})

/** Rows that come or go would make others of those that are shown; rows that are sorted are followed. */
function stillOnly({document, only}: EditorState, next: Document, sorts: Step["sorts"]): Only | null {
  if (!only) return null
  const [was, now] = [document.sheets[only.sheet], next.sheets[only.sheet]]
  if (was?.name !== now?.name || was?.rows.length !== now?.rows.length) return null
  if (sorts?.sheet !== only.sheet) return only
  return {...only, rows: sorts.order.flatMap((from, to) => (only.rows.includes(from) ? [to] : []))}
}

/** After rows or sheets went away the chosen cell may lie outside, or not be shown: the nearest one that is is chosen. */
function withCellInside(state: EditorState): EditorState {
  const {document, cell} = state
  const sheet = Math.min(cell.sheet, document.sheets.length - 1)
  const {rows, columns} = document.sheets[sheet]!
  const inside = {sheet, row: Math.min(cell.row, rows.length), col: Math.min(cell.col, columns.length - 1)}
  if (inside.sheet !== cell.sheet || inside.row !== cell.row || inside.col !== cell.col)
    return {...state, cell: inside, reach: null}
  const row = shownRow(state, sheet, cell.row)
  if (row !== cell.row) return {...state, cell: {...cell, row}, reach: null}
  const reaches = !state.reach || (state.reach.row <= rows.length && state.reach.col < columns.length)
  return reaches ? state : {...state, reach: null}
}
