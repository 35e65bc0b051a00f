import {decimalOf} from "../workbook/region"
import {dropEditing, keepArrows, keepEditing, openChoices, openSheetKeeping} from "./editing"
import {fixReference, withNextFixed} from "./fixing"
import {nameOf, type Binding, type KeyPress} from "./keyPress"
import {isPointing, pointStep, pointWholeColumn} from "./pointing"
import type {Store, Turn} from "./store"

/** The list of names under the line, as far as keys act on it. */
export interface NameList {
  readonly isOpen: boolean
  /** Whether arrow keys went into it. */
  readonly isChosen: boolean
  /** Whether one is marked for Tab: of names the first is, of words for the cell only one that arrow keys went to. */
  readonly isMarked: boolean
  step(by: 1 | -1): void
  take(): void
  close(): void
}

/** Where a formula waits for a reference; elsewhere the key belongs to the field. */
const point = (turn: Turn) => (store: Store) => {
  const points = isPointing(store.getState())
  if (points) store.turn(turn)
  return points
}
const pointSheet = (by: 1 | -1) => (store: Store) => {
  const {cell, document} = store.getState()
  const sheet = cell.sheet + by
  if (!isPointing(store.getState()) || !document.sheets[sheet]) return false
  openSheetKeeping(store, sheet)
  return true
}
const keepAndGo = (down: number, right: number) => (store: Store) => {
  const {editing} = store.getState()
  if (editing) keepEditing(store, down, right)
  return editing !== null
}
const arrow = (down: number, right: number) => (store: Store) =>
  store.getState().editing?.arrowsLeave ? keepAndGo(down, right)(store) : false
const listOrArrow = (down: 1 | -1) => (store: Store, list: NameList) => {
  if (!list.isOpen) return arrow(down, 0)(store)
  list.step(down)
  return true
}
const takeOr =
  (takes: (list: NameList) => boolean, otherwise: (store: Store) => boolean) =>
  (store: Store, list: NameList) => {
    if (!list.isOpen || !takes(list)) return otherwise(store)
    list.take()
    return true
  }

/** The keys of the line while a cell is being edited; all others belong to the field. */
export const lineBindings: readonly Binding<NameList>[] = [
  {
    group: "While typing",
    keys: ["Enter"],
    does: "Keep what is typed and go a cell down, or take the name chosen in the list",
    act: takeOr(({isChosen}) => isChosen, keepAndGo(1, 0)),
  },
  {
    group: "While typing",
    keys: ["Shift+Enter"],
    does: "Keep what is typed and go a cell up",
    act: keepAndGo(-1, 0),
  },
  {
    group: "While typing",
    keys: ["Tab"],
    does: "Keep what is typed and go a cell right, or take the marked name of the list",
    act: takeOr(({isMarked}) => isMarked, keepAndGo(0, 1)),
  },
  {
    group: "While typing",
    keys: ["Shift+Tab"],
    does: "Keep what is typed and go a cell left",
    act: keepAndGo(0, -1),
  },
  {
    group: "While typing",
    keys: ["Escape"],
    does: "Close the list of names, or drop what is typed",
    act: (store, list) => {
      if (list.isOpen) list.close()
      else store.turn(dropEditing)
      return true
    },
  },
  {
    group: "While typing",
    keys: ["F2"],
    does: "Let arrow keys move the caret",
    act: (store) => (store.turn(keepArrows), true),
  },
  {
    group: "While typing",
    keys: ["ArrowDown"],
    does: "Next name of the list, or keep what was typed over the cell and go down",
    act: listOrArrow(1),
  },
  {
    group: "While typing",
    keys: ["ArrowUp"],
    does: "Name before in the list, or keep what was typed over the cell and go up",
    act: listOrArrow(-1),
  },
  {
    group: "While typing",
    keys: ["Alt+ArrowDown"],
    does: "Open the list of words, to choose one instead of typing",
    act: (store) => {
      const isWords = !store.getState().editing!.text.startsWith("=")
      if (isWords) store.turn(openChoices)
      return isWords
    },
  },
  {
    group: "While typing",
    keys: ["ArrowLeft"],
    does: "Keep what was typed over the cell and go left",
    act: arrow(0, -1),
  },
  {
    group: "While typing",
    keys: ["ArrowRight"],
    does: "Keep what was typed over the cell and go right",
    act: arrow(0, 1),
  },
  {
    group: "While typing",
    keys: ["F4"],
    does: "Fix the reference at the caret: its column and row, its row, its column, neither",
    act: (store) => {
      const {editing, document} = store.getState()
      const fixes = withNextFixed(editing!.text, editing!.caret, decimalOf(document)) !== null
      if (fixes) store.turn(fixReference)
      return fixes
    },
  },
  {
    group: "While typing",
    keys: ["Ctrl+ArrowLeft"],
    does: "Point at the cell to the left",
    act: point(pointStep(0, -1)),
  },
  {
    group: "While typing",
    keys: ["Ctrl+ArrowRight"],
    does: "Point at the cell to the right",
    act: point(pointStep(0, 1)),
  },
  {
    group: "While typing",
    keys: ["Ctrl+ArrowUp"],
    does: "Point at the cell above",
    act: point(pointStep(-1, 0)),
  },
  {
    group: "While typing",
    keys: ["Ctrl+ArrowDown"],
    does: "Point at the cell below",
    act: point(pointStep(1, 0)),
  },
  {
    group: "While typing",
    keys: ["Ctrl+Shift+ArrowLeft"],
    does: "Widen the range pointed at to the left",
    act: point(pointStep(0, -1, true)),
  },
  {
    group: "While typing",
    keys: ["Ctrl+Shift+ArrowRight"],
    does: "Widen the range pointed at to the right",
    act: point(pointStep(0, 1, true)),
  },
  {
    group: "While typing",
    keys: ["Ctrl+Shift+ArrowUp"],
    does: "Widen the range pointed at upwards",
    act: point(pointStep(-1, 0, true)),
  },
  {
    group: "While typing",
    keys: ["Ctrl+Shift+ArrowDown"],
    does: "Widen the range pointed at downwards",
    act: point(pointStep(1, 0, true)),
  },
  {
    group: "While typing",
    keys: ["Ctrl+Space"],
    does: "Point at the whole column",
    act: point(pointWholeColumn),
  },
  {
    group: "While typing",
    keys: ["Alt+PageDown"],
    does: "Point at cells of the next sheet",
    act: pointSheet(1),
  },
  {
    group: "While typing",
    keys: ["Alt+PageUp"],
    does: "Point at cells of the sheet before",
    act: pointSheet(-1),
  },
]

/** Handles a key pressed in the line while a cell is being edited; answers whether it was used. */
export function pressLineKey(store: Store, press: KeyPress, list: NameList): boolean {
  const pressed = nameOf(press)
  return lineBindings.find(({keys}) => keys.includes(pressed))?.act(store, list) ?? false
}
