import {clearCell} from "./commands/cells"
import {keepEditing, startEditing, startTyping, typeText} from "./editing"
import {blockEdge, choose, chosenStep, lastFilled, showPanel, tabTarget} from "./selection"
import type {Store} from "./store"

/** What a key event must have; a browser's KeyboardEvent has it. */
export interface KeyPress {
  readonly key: string
  readonly shiftKey: boolean
  readonly ctrlKey: boolean
  readonly metaKey: boolean
  readonly altKey: boolean
}

interface Binding {
  /** "Ctrl" stands for Cmd too, on machines that have it. */
  readonly keys: readonly string[]
  readonly does: string
  /** Answers whether the key was used. */
  readonly act: (store: Store, page: number) => boolean
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
export const bindings: readonly Binding[] = [
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
  {
    keys: ["Ctrl+f"],
    does: "Find and replace in the workbook",
    act: always((store) => store.turn(showPanel("find"))),
  },
]

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
  const letter = [...key].length === 1 ? key.toLowerCase() : key
  const control = ctrlKey || metaKey ? "Ctrl+" : ""
  const shift = shiftKey && (letter.length > 1 || control) ? "Shift+" : ""
  return `${control}${altKey ? "Alt+" : ""}${shift}${letter}`
}
