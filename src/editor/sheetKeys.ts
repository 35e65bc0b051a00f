import {chooseAround, chooseColumns, chooseRows, reachEdge, reachStep, reachTo} from "./block"
import {emptied, filled} from "./blockActs"
import {isoDate} from "../workbook/clock"
import {fillDown, fillRight} from "./commands/fill"
import {keepEditing, openChoices, startEditing, startMarked, startTyping, typeText} from "./editing"
import {isComposing, nameOf, writes, type Binding, type KeyPress} from "./keyPress"
import {blockEdge, choose, chosenStep, lastFilled, showPanel, tabTarget} from "./selection"
import type {EditorState, Store} from "./store"

/** What keys of the sheet need besides the store. */
export interface Around {
  /** How many rows a screenful holds. */
  readonly page: number
  keepFileCopy(): void
}

const always = (act: (store: Store, around: Around) => void) => (store: Store, around: Around) => {
  act(store, around)
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
export const sheetBindings: readonly Binding<Around>[] = [
  {group: "Move", keys: ["ArrowLeft"], does: "One cell to the left", act: step(0, -1)},
  {group: "Move", keys: ["ArrowRight"], does: "One cell to the right", act: step(0, 1)},
  {group: "Move", keys: ["ArrowUp"], does: "One cell up", act: step(-1, 0)},
  {group: "Move", keys: ["ArrowDown"], does: "One cell down", act: step(1, 0)},
  {
    group: "Move",
    keys: ["PageUp"],
    does: "A screenful of rows up",
    act: always((s, {page}) => s.turn(chosenStep(-page, 0))),
  },
  {
    group: "Move",
    keys: ["PageDown"],
    does: "A screenful of rows down",
    act: always((s, {page}) => s.turn(chosenStep(page, 0))),
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
    act: always((s, {page}) => s.turn(reachStep(-page, 0))),
  },
  {
    group: "Choose",
    keys: ["Shift+PageDown"],
    does: "Choose a screenful of rows more downwards",
    act: always((s, {page}) => s.turn(reachStep(page, 0))),
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
  {
    group: "Edit",
    keys: ["Alt+ArrowDown"],
    does: "Open the list of words for the cell",
    act: always((store) => store.turn(openChoices)),
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
  {
    group: "Edit",
    keys: ["Ctrl+;"],
    does: "Put in today's date",
    act: always((s) => s.turn(startTyping(isoDate(new Date())))),
  },
  {
    group: "Edit",
    keys: ["Shift+F2"],
    does: "Read or write the note on the cell",
    act: always((s) => s.turn(showPanel("note"))),
  },
  {
    group: "Edit",
    keys: ["Ctrl+s"],
    does: "Keep a copy of the workbook in a file",
    isOfPage: true,
    act: always((_, {keepFileCopy}) => keepFileCopy()),
  },
  // These are the browser's own: it tells the sheet what to copy or paste.
  {group: "Copy and fill", keys: ["Ctrl+c"], does: "Copy what is chosen", act: () => false},
  {
    group: "Copy and fill",
    keys: ["Ctrl+x"],
    does: "Cut what is chosen: the next paste moves it",
    act: () => false,
  },
  {group: "Copy and fill", keys: ["Ctrl+v"], does: "Paste from the chosen cell on", act: () => false},
  {
    group: "Show",
    keys: ["Shift+F10", "ContextMenu"],
    does: "Open the list of more acts",
    act: always((s) => s.turn(() => ({actsAt: "cell"}))),
  },
  {
    group: "Show",
    keys: ["Ctrl+/"],
    does: "Show this list of keys",
    act: always((s) => s.turn(showPanel("keys"))),
  },
  {
    group: "History",
    keys: ["Ctrl+z"],
    does: "Undo",
    isOfPage: true,
    act: always((store) => store.undo()),
  },
  {
    group: "History",
    keys: ["Ctrl+y", "Ctrl+Shift+z"],
    does: "Redo",
    isOfPage: true,
    act: always((store) => store.redo()),
  },
  {
    group: "Show",
    keys: ["Ctrl+f"],
    does: "Find and replace in the workbook",
    isOfPage: true,
    act: always((store) => store.turn(showPanel("find"))),
  },
]

/** Handles a key pressed on the sheet; answers whether it was used. */
export function pressKey(store: Store, press: KeyPress, around: Around): boolean {
  const pressed = nameOf(press)
  const binding = sheetBindings.find(({keys}) => keys.includes(pressed))
  const {editing} = store.getState()
  // A key may come before the line has the keyboard's focus, or after a refusal: it belongs to what is being typed.
  if (editing && pressed === "Backspace") return typed(store, editing.text.slice(0, -1))
  if (editing && /^Ctrl\+[cxv]$/.test(pressed)) return false
  if (editing && binding) {
    const down = pressed === "Enter" ? 1 : 0
    return !keepEditing(store, down, 0) || down === 1 || binding.act(store, around)
  }
  if (binding) return binding.act(store, around)
  if (isComposing(press) && !editing) store.turn(startMarked) // the key itself goes on, to the line
  if (!writes(press)) return false
  if (editing) return typed(store, editing.text + press.key)
  store.turn(startTyping(press.key))
  return true
}

/** Handles a key pressed beside the sheet, as on a button; answers whether it was used. Nothing is, while an answer is waited for. */
export function pressPageKey(store: Store, press: KeyPress, around: Around): boolean {
  const {editing, question} = store.getState()
  if (editing || question) return false
  const pressed = nameOf(press)
  const binding = sheetBindings.find(({isOfPage, keys}) => isOfPage && keys.includes(pressed))
  return binding?.act(store, around) ?? false
}

function typed(store: Store, text: string) {
  store.turn(typeText(text, text.length))
  return true
}
