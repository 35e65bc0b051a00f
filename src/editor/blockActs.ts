import type {Edit} from "../workbook/edit"
import {clearCells} from "./commands/cells"
import {guardedCount, type Filler} from "./commands/fill"
import {namesMet} from "./namesInUse"
import {doubtsIn, doubtWords} from "./pickingDoubts"
import type {Store} from "./store"
import {guardedWords, leftOutWords, ofCells} from "./words"

/** Empties what is chosen and says how many cells that was, or that there is nothing to empty, and how many worked-out cells stay. */
export function emptied(store: Store) {
  const guarded = guardedCount(store.getState())
  const edit = clearCells(store.getState())
  if (edit)
    runAsking(store, edit, "Empty", sentences(countWords(edit, "emptied"), guarded && guardedWords(guarded)))
  else store.turn(() => ({said: "Nothing to empty here: what is chosen is blank or worked out."}))
}

/** Fills and says how many cells that was, how many worked-out cells stay, and what the rule of a column left out. */
export function filled(store: Store, filler: Filler) {
  const guarded = guardedCount(store.getState())
  const {edit, leftOut} = filler(store.getState())
  const count = leftOut.length + (edit ? cellCount(edit) : 0)
  const told = sentences(
    leftOut.length && leftOutWords(leftOut, count, "filled"),
    guarded && guardedWords(guarded),
  )
  if (edit) return runAsking(store, edit, "Fill", sentences(countWords(edit, "filled"), told))
  const why = told || "it stands there already, or cannot stand there."
  store.turn(() => ({said: `Nothing was filled: ${why}`}))
}

const cellCount = (edit: Edit) => (edit.type === "enter" ? edit.cells.length : 0)

/** "3 cells filled." */
const countWords = (edit: Edit, done: string) => `${ofCells(cellCount(edit))} ${done}.`

const sentences = (...told: readonly (string | 0)[]) => told.filter(Boolean).join(" ")

/**
 * Makes an edit; where it would write over the names of values that formulas use, or raises doubts about pickings and
 * closes, says which and asks first.
 */
function runAsking(store: Store, edit: Edit, act: string, told: string) {
  const met = namesMet(store.getState().document, edit)
  const doubts = doubtsIn(store.workbook, edit)
  if (!met && !doubts.length) return void store.run(() => edit, told)
  const asks = sentences(met?.asks ?? "", doubtWords(doubts), `${act} all the same?`)
  const links = [...(met?.links ?? []), ...doubts.slice(0, 1).map(({link}) => link)]
  store.turn(() => ({question: {asks, yes: act, edit, told, links}, said: asks}))
}
