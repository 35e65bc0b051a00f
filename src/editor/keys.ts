import {chooseAround, chooseColumns, chooseRows, reachEdge, reachStep, reachTo} from "./block"
import {guardedWords} from "./clipboard"
import {clearCells} from "./commands/cells"
import {fillDown, fillRight, guardedCount} from "./commands/fill"
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
import {blockEdge, choose, chosenStep, lastFilled, showPanel, tabTarget} from "./selection"
import type {Command, EditorState, Store, Turn} from "./store"

/** What a key event must have; a browser's KeyboardEvent has it. */
export interface KeyPress {
  readonly key: string
  readonly shiftKey: boolean
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly altKey: boolean
}

/** A key and what it does; `With` is what its act needs besides the store. */
export interface Binding<With = never> {
  readonly group: "Move" | "Choose" | "Edit" | "Copy and fill" | "History" | "Show" | "While typing"
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
const reach = (down: number, right: number) => always((store) => store.turn(reachStep(down, right)))
const reachJump = (down: number, right: number) => always((store) => store.turn(reachEdge(down, right)))
const reachAlong = (to: (state: EditorState) => {readonly row: number; readonly col: number}) =>
  always((store) => {
    const {row, col} = to(store.getState())
    store.turn(reachTo(row, col))
  })
const farRow = ({cell, reach}: EditorState) => (reach ?? cell).row
const along = (col: number) => always((store) => store.turn(choose({...store.getState().cell, col})))
const tab = (forward: boolean) => (store: Store) => {
  const to = tabTarget(store.getState(), forward)
  if (to) store.turn(choose(to))
  return to !== null // at the end Tab leaves the sheet
}

/** The keys of the sheet while no cell is being edited (W3C grid pattern, with the exceptions that data entry needs). */
export const bindings: readonly Binding<number>[] = [
  {group: "Move", keys: ["ArrowLeft"], does: "One cell to the left", act: step(0, -1)},
  {group: "Move", keys: ["ArrowRight"], does: "One cell to the right", act: step(0, 1)},
  {group: "Move", keys: ["ArrowUp"], does: "One cell up", act: step(-1, 0)},
  {group: "Move", keys: ["ArrowDown"], does: "One cell down", act: step(1, 0)},
  {
    group: "Move",
    keys: ["PageUp"],
    does: "A screenful of rows up",
    act: always((s, page) => s.turn(chosenStep(-page, 0))),
  },
  {
    group: "Move",
    keys: ["PageDown"],
    does: "A screenful of rows down",
    act: always((s, page) => s.turn(chosenStep(page, 0))),
  },
  {group: "Move", keys: ["Home"], does: "First cell of the row", act: along(0)},
  {group: "Move", keys: ["End"], does: "Last cell of the row", act: along(Infinity)},
  {
    group: "Move",
    keys: ["Ctrl+Home"],
    does: "First cell of the sheet",
    act: always((s) => s.turn(choose({...s.getState().cell, row: 0, col: 0}))),
  },
  {
    group: "Move",
    keys: ["Ctrl+End"],
    does: "Last cell that holds anything",
    act: always((s) => s.turn(choose(lastFilled(s.getState())))),
  },
  {group: "Move", keys: ["Ctrl+ArrowLeft"], does: "Next edge of filled cells to the left", act: jump(0, -1)},
  {group: "Move", keys: ["Ctrl+ArrowRight"], does: "Next edge of filled cells to the right", act: jump(0, 1)},
  {group: "Move", keys: ["Ctrl+ArrowUp"], does: "Next edge of filled cells upwards", act: jump(-1, 0)},
  {group: "Move", keys: ["Ctrl+ArrowDown"], does: "Next edge of filled cells downwards", act: jump(1, 0)},
  {group: "Choose", keys: ["Shift+ArrowLeft"], does: "Choose one column more to the left", act: reach(0, -1)},
  {
    group: "Choose",
    keys: ["Shift+ArrowRight"],
    does: "Choose one column more to the right",
    act: reach(0, 1),
  },
  {group: "Choose", keys: ["Shift+ArrowUp"], does: "Choose one row more upwards", act: reach(-1, 0)},
  {group: "Choose", keys: ["Shift+ArrowDown"], does: "Choose one row more downwards", act: reach(1, 0)},
  {
    group: "Choose",
    keys: ["Shift+PageUp"],
    does: "Choose a screenful of rows more upwards",
    act: always((s, page) => s.turn(reachStep(-page, 0))),
  },
  {
    group: "Choose",
    keys: ["Shift+PageDown"],
    does: "Choose a screenful of rows more downwards",
    act: always((s, page) => s.turn(reachStep(page, 0))),
  },
  {
    group: "Choose",
    keys: ["Shift+Home"],
    does: "Choose to the first cell of the row",
    act: reachAlong((s) => ({row: farRow(s), col: 0})),
  },
  {
    group: "Choose",
    keys: ["Shift+End"],
    does: "Choose to the last cell of the row",
    act: reachAlong((s) => ({row: farRow(s), col: Infinity})),
  },
  {
    group: "Choose",
    keys: ["Ctrl+Shift+Home"],
    does: "Choose to the first cell of the sheet",
    act: reachAlong(() => ({row: 0, col: 0})),
  },
  {
    group: "Choose",
    keys: ["Ctrl+Shift+End"],
    does: "Choose to the last cell that holds anything",
    act: reachAlong(lastFilled),
  },
  {
    group: "Choose",
    keys: ["Ctrl+Shift+ArrowLeft"],
    does: "Choose to the next edge to the left",
    act: reachJump(0, -1),
  },
  {
    group: "Choose",
    keys: ["Ctrl+Shift+ArrowRight"],
    does: "Choose to the next edge to the right",
    act: reachJump(0, 1),
  },
  {
    group: "Choose",
    keys: ["Ctrl+Shift+ArrowUp"],
    does: "Choose to the next edge upwards",
    act: reachJump(-1, 0),
  },
  {
    group: "Choose",
    keys: ["Ctrl+Shift+ArrowDown"],
    does: "Choose to the next edge downwards",
    act: reachJump(1, 0),
  },
  {
    group: "Choose",
    keys: ["Ctrl+Space"],
    does: "Choose the whole column",
    act: always((s) => s.turn(chooseColumns)),
  },
  {
    group: "Choose",
    keys: ["Shift+Space"],
    does: "Choose the whole row",
    act: always((s) => s.turn(chooseRows)),
  },
  {
    group: "Choose",
    keys: ["Ctrl+a"],
    does: "Choose the filled cells around; again, the whole sheet",
    act: always((s) => s.turn(chooseAround)),
  },
  {group: "Move", keys: ["Tab"], does: "Next cell; Esc, then Tab, leaves the sheet", act: tab(true)},
  {group: "Move", keys: ["Shift+Tab"], does: "Cell before", act: tab(false)},
  {
    group: "Edit",
    keys: ["Enter", "F2"],
    does: "Edit what the cell holds",
    act: always((store) => store.turn(startEditing)),
  },
  {group: "Edit", keys: ["Delete"], does: "Empty what is chosen", act: always((store) => emptied(store))},
  {
    group: "Edit",
    keys: ["Backspace"],
    does: "Empty the cell and type",
    act: always((store) => store.turn(startTyping(""))),
  },
  {
    group: "Copy and fill",
    keys: ["Ctrl+d"],
    does: "Fill down from the first chosen row",
    act: always((s) => filled(s, fillDown)),
  },
  {
    group: "Copy and fill",
    keys: ["Ctrl+r"],
    does: "Fill right from the first chosen column",
    act: always((s) => filled(s, fillRight)),
  },
  {group: "Edit", keys: ["Ctrl+;"], does: "Put in today's date", act: always((s) => putToday(s))},
  // These are the browser's own: it tells the sheet what to copy or paste.
  {group: "Copy and fill", keys: ["Ctrl+c"], does: "Copy what is chosen", act: () => false},
  {group: "Copy and fill", keys: ["Ctrl+x"], does: "Copy what is chosen and empty it", act: () => false},
  {group: "Copy and fill", keys: ["Ctrl+v"], does: "Paste from the chosen cell on", act: () => false},
  {
    group: "Show",
    keys: ["Shift+F10", "ContextMenu"],
    does: "Open the list of more acts",
    act: always((s) => s.turn(() => ({showsActs: true}))),
  },
  {
    group: "Show",
    keys: ["Ctrl+/"],
    does: "Show this list of keys",
    act: always((s) => s.turn(showPanel("keys"))),
  },
  {group: "History", keys: ["Ctrl+z"], does: "Undo", act: always((store) => store.undo())},
  {group: "History", keys: ["Ctrl+y", "Ctrl+Shift+z"], does: "Redo", act: always((store) => store.redo())},
  {
    group: "Show",
    keys: ["Ctrl+f"],
    does: "Find and replace in the workbook",
    act: always((store) => store.turn(showPanel("find"))),
  },
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
    act: takeOr(() => true, keepAndGo(0, 1)),
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
      const {text, caret} = store.getState().editing!
      const fixes = withNextFixed(text, caret) !== null
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

/** Handles a key pressed on the sheet; answers whether it was used. `page` is how many rows a screenful holds. */
export function pressKey(store: Store, press: KeyPress, page: number): boolean {
  const pressed = nameOf(press)
  const binding = bindings.find(({keys}) => keys.includes(pressed))
  const {editing} = store.getState()
  // A key may come before the line has the keyboard's focus, or after a refusal: it belongs to what is being typed.
  if (editing && pressed === "Backspace") return typed(store, editing.text.slice(0, -1))
  if (editing && /^Ctrl\+[cxv]$/.test(pressed)) return false
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

/** Empties what is chosen; says so when there is nothing to empty, and how many worked-out cells stay. */
export function emptied(store: Store) {
  const guarded = guardedCount(store.getState())
  if (!store.run(clearCells, guarded ? guardedWords(guarded) : ""))
    store.turn(() => ({said: "Nothing to empty here: what is chosen is blank or worked out."}))
}

/** Fills and says how many worked-out cells stay. */
export function filled(store: Store, command: Command) {
  const guarded = guardedCount(store.getState())
  if (!store.run(command, guarded ? guardedWords(guarded) : ""))
    store.turn(() => ({
      said: guarded
        ? `Nothing was filled: ${guardedWords(guarded)}`
        : "Nothing was filled: it stands there already, or cannot stand there.",
    }))
}

function putToday(store: Store) {
  const now = new Date()
  const day = [now.getFullYear(), now.getMonth() + 1, now.getDate()]
  store.turn(startTyping(day.map((part) => String(part).padStart(2, "0")).join("-")))
}

function nameOf({key, shiftKey, ctrlKey, metaKey, altKey}: KeyPress): string {
  const letter = key === " " ? "Space" : [...key].length === 1 ? key.toLowerCase() : key
  const control = ctrlKey || metaKey ? "Ctrl+" : ""
  const shift = shiftKey && (letter.length > 1 || control) ? "Shift+" : ""
  return `${control}${altKey ? "Alt+" : ""}${shift}${letter}`
}
