import {clearCell} from "./commands/cells"
import {
  dropEditing,
  keepArrows,
  keepEditing,
  openSheetKeeping,
  startEditing,
  startTyping,
  typeText,
} from "./editing"
import {fixReference, withNextFixed} from "./fixing"
import {isPointing, pointStep, pointWholeColumn} from "./pointing"
import {blockEdge, choose, chosenStep, lastFilled, tabTarget} from "./selection"
import type {Store, Turn} from "./store"

/** What a key event must have; a browser's KeyboardEvent has it. */
export interface KeyPress {
  readonly key: string
  readonly shiftKey: boolean
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly altKey: boolean
}

/** A key and what it does; `With` is what its act needs besides the store. */
interface Binding<With> {
  /** "Ctrl" stands for Cmd too, on machines that have it. */
  readonly keys: readonly string[]
  readonly does: string
  /** Answers whether the key was used. */
  readonly act: (store: Store, needs: With) => boolean
}

/** The list of names under the line, as far as keys act on it. */
export interface NameList {
  readonly isOpen: boolean
  /** Whether arrow keys went into it. */
  readonly isChosen: boolean
  step(by: 1 | -1): void
  take(): void
  close(): void
}

const always = (act: (store: Store, page: number) => void) => (store: Store, page: number) => {
  act(store, page)
  return true
}
const step = (down: number, right: number) => always((store) => store.turn(chosenStep(down, right)))
const jump = (down: number, right: number) =>
  always((store) => store.turn(choose(blockEdge(store.getState(), down, right))))
const along = (col: number) => always((store) => store.turn(choose({...store.getState().cell, col})))
const tab = (forward: boolean) => (store: Store) => {
  const to = tabTarget(store.getState(), forward)
  if (to) store.turn(choose(to))
  return to !== null // at the end Tab leaves the sheet
}

/** The keys of the sheet while no cell is being edited (W3C grid pattern, with the exceptions that data entry needs). */
export const bindings: readonly Binding<number>[] = [
  {keys: ["ArrowLeft"], does: "One cell to the left", act: step(0, -1)},
  {keys: ["ArrowRight"], does: "One cell to the right", act: step(0, 1)},
  {keys: ["ArrowUp"], does: "One cell up", act: step(-1, 0)},
  {keys: ["ArrowDown"], does: "One cell down", act: step(1, 0)},
  {keys: ["PageUp"], does: "A screenful of rows up", act: always((s, page) => s.turn(chosenStep(-page, 0)))},
  {
    keys: ["PageDown"],
    does: "A screenful of rows down",
    act: always((s, page) => s.turn(chosenStep(page, 0))),
  },
  {keys: ["Home"], does: "First cell of the row", act: along(0)},
  {keys: ["End"], does: "Last cell of the row", act: along(Infinity)},
  {
    keys: ["Ctrl+Home"],
    does: "First cell of the sheet",
    act: always((s) => s.turn(choose({...s.getState().cell, row: 0, col: 0}))),
  },
  {
    keys: ["Ctrl+End"],
    does: "Last cell that holds anything",
    act: always((s) => s.turn(choose(lastFilled(s.getState())))),
  },
  {keys: ["Ctrl+ArrowLeft"], does: "Next edge of filled cells to the left", act: jump(0, -1)},
  {keys: ["Ctrl+ArrowRight"], does: "Next edge of filled cells to the right", act: jump(0, 1)},
  {keys: ["Ctrl+ArrowUp"], does: "Next edge of filled cells upwards", act: jump(-1, 0)},
  {keys: ["Ctrl+ArrowDown"], does: "Next edge of filled cells downwards", act: jump(1, 0)},
  {keys: ["Tab"], does: "Next cell; Esc, then Tab, leaves the sheet", act: tab(true)},
  {keys: ["Shift+Tab"], does: "Cell before", act: tab(false)},
  {keys: ["Enter", "F2"], does: "Edit what the cell holds", act: always((store) => store.turn(startEditing))},
  {keys: ["Delete"], does: "Empty the cell", act: always((store) => emptied(store))},
  {keys: ["Backspace"], does: "Empty the cell and type", act: always((store) => store.turn(startTyping("")))},
  {keys: ["Ctrl+z"], does: "Undo", act: always((store) => store.undo())},
  {keys: ["Ctrl+y", "Ctrl+Shift+z"], does: "Redo", act: always((store) => store.redo())},
]

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
    keys: ["Enter"],
    does: "Keep what is typed and go a cell down, or take the name chosen in the list",
    act: takeOr(({isChosen}) => isChosen, keepAndGo(1, 0)),
  },
  {keys: ["Shift+Enter"], does: "Keep what is typed and go a cell up", act: keepAndGo(-1, 0)},
  {
    keys: ["Tab"],
    does: "Keep what is typed and go a cell right, or take the marked name of the list",
    act: takeOr(() => true, keepAndGo(0, 1)),
  },
  {keys: ["Shift+Tab"], does: "Keep what is typed and go a cell left", act: keepAndGo(0, -1)},
  {
    keys: ["Escape"],
    does: "Close the list of names, or drop what is typed",
    act: (store, list) => {
      if (list.isOpen) list.close()
      else store.turn(dropEditing)
      return true
    },
  },
  {keys: ["F2"], does: "Let arrow keys move the caret", act: (store) => (store.turn(keepArrows), true)},
  {
    keys: ["ArrowDown"],
    does: "Next name of the list, or keep what was typed over the cell and go down",
    act: listOrArrow(1),
  },
  {
    keys: ["ArrowUp"],
    does: "Name before in the list, or keep what was typed over the cell and go up",
    act: listOrArrow(-1),
  },
  {keys: ["ArrowLeft"], does: "Keep what was typed over the cell and go left", act: arrow(0, -1)},
  {keys: ["ArrowRight"], does: "Keep what was typed over the cell and go right", act: arrow(0, 1)},
  {
    keys: ["F4"],
    does: "Fix the reference at the caret: its column and row, its row, its column, neither",
    act: (store) => {
      const {text, caret} = store.getState().editing!
      const fixes = withNextFixed(text, caret) !== null
      if (fixes) store.turn(fixReference)
      return fixes
    },
  },
  {keys: ["Ctrl+ArrowLeft"], does: "Point at the cell to the left", act: point(pointStep(0, -1))},
  {keys: ["Ctrl+ArrowRight"], does: "Point at the cell to the right", act: point(pointStep(0, 1))},
  {keys: ["Ctrl+ArrowUp"], does: "Point at the cell above", act: point(pointStep(-1, 0))},
  {keys: ["Ctrl+ArrowDown"], does: "Point at the cell below", act: point(pointStep(1, 0))},
  {
    keys: ["Ctrl+Shift+ArrowLeft"],
    does: "Widen the range pointed at to the left",
    act: point(pointStep(0, -1, true)),
  },
  {
    keys: ["Ctrl+Shift+ArrowRight"],
    does: "Widen the range pointed at to the right",
    act: point(pointStep(0, 1, true)),
  },
  {
    keys: ["Ctrl+Shift+ArrowUp"],
    does: "Widen the range pointed at upwards",
    act: point(pointStep(-1, 0, true)),
  },
  {
    keys: ["Ctrl+Shift+ArrowDown"],
    does: "Widen the range pointed at downwards",
    act: point(pointStep(1, 0, true)),
  },
  {keys: ["Ctrl+Space"], does: "Point at the whole column", act: point(pointWholeColumn)},
  {keys: ["Alt+PageDown"], does: "Point at cells of the next sheet", act: pointSheet(1)},
  {keys: ["Alt+PageUp"], does: "Point at cells of the sheet before", act: pointSheet(-1)},
]

/** Handles a key pressed in the line while a cell is being edited; answers whether it was used. */
export function pressLineKey(store: Store, press: KeyPress, list: NameList): boolean {
  const pressed = nameOf(press)
  return lineBindings.find(({keys}) => keys.includes(pressed))?.act(store, list) ?? false
}

/** Handles a key pressed on the sheet; answers whether it was used. `page` is how many rows a screenful holds. */
export function pressKey(store: Store, press: KeyPress, page: number): boolean {
  const pressed = nameOf(press)
  const binding = bindings.find(({keys}) => keys.includes(pressed))
  const {editing} = store.getState()
  // A key may come before the line has the keyboard's focus, or after a refusal: it belongs to what is being typed.
  if (editing && pressed === "Backspace") return typed(store, editing.text.slice(0, -1))
  if (editing && binding) {
    const down = pressed === "Enter" ? 1 : 0
    return !keepEditing(store, down, 0) || down === 1 || binding.act(store, page)
  }
  if (binding) return binding.act(store, page)
  if (!writes(press)) return false
  if (editing) return typed(store, editing.text + press.key)
  store.turn(startTyping(press.key))
  return true
}

function typed(store: Store, text: string) {
  store.turn(typeText(text, text.length))
  return true
}

/** With Alt, or Ctrl and Alt, other letters are written; the plain ones are keys of the system. */
function writes({key, ctrlKey, metaKey, altKey}: KeyPress): boolean {
  if ([...key].length !== 1 || metaKey) return false
  return altKey ? !/^[a-z0-9\s]$/i.test(key) : !ctrlKey
}

function emptied(store: Store) {
  if (!store.run(clearCell))
    store.turn(() => ({said: "Nothing to empty here: the cell is blank or worked out."}))
}

function nameOf({key, shiftKey, ctrlKey, metaKey, altKey}: KeyPress): string {
  const letter = key === " " ? "Space" : [...key].length === 1 ? key.toLowerCase() : key
  const control = ctrlKey || metaKey ? "Ctrl+" : ""
  const shift = shiftKey && (letter.length > 1 || control) ? "Shift+" : ""
  return `${control}${altKey ? "Alt+" : ""}${shift}${letter}`
}
