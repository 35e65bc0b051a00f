import {CellMap} from "../workbook/cellMap"
import {contentAt, isFormula, isSameCell, type CellAddress, type Document} from "../workbook/document"
import type {CellMove} from "../workbook/cellsMoved"
import type {Edit} from "../workbook/edit"
import {columnAt, extraAt} from "../workbook/extras"
import {revised} from "../workbook/revised"
import {addressText} from "../workbook/cells"
import {blockText, chooseBlock, cellsShown, rowsFrom, spanOf, type ShownBlock} from "./block"
import {isGuarded} from "./commands/cells"
import {newlyBroken} from "./deletion"
import {fitting} from "./editing"
import {namesMet} from "./namesInUse"
import {doubtsIn, doubtWords} from "./pickingDoubts"
import type {EditorState, Store, Turn} from "./store"
import {guardedWords, leftOutWords, ofCells, type LeftOut} from "./words"

/** Marks cells that were copied as to be moved by the next paste in this workbook; worked-out cells stay. */
export const markCut =
  (cells: ShownBlock): Turn =>
  (state) => {
    const all = [...cellsShown(cells)]
    const guarded = all.filter(([at]) => isGuarded(at)(state)).length
    const what = blockText(spanOf(cells))
    if (guarded === all.length) return {cut: null, said: `${what} copied. ${guardedWords(guarded)}`}
    const stays = guarded ? ` ${guardedWords(guarded)}` : ""
    return {cut: cells, said: `${what} moves to where it is pasted; Esc leaves it.${stays}`}
  }

/** Leaves the cells where they are that were to be moved. */
export const leaveCut: Turn = ({cut}) => ({
  cut: null,
  said: cut ? `${blockText(spanOf(cut))} stays where it is.` : "",
})

export const isCut = ({cut}: Pick<EditorState, "cut">, {sheet, row, col}: CellAddress) =>
  cut !== null && cut.sheet === sheet && cut.rows.includes(row) && col >= cut.cols[0] && col <= cut.cols[1]

/** Moves the marked cells to the chosen cell, all of them or none; asks first where formulas would lose what they point at. */
export function moveCut(store: Store, cut: ShownBlock) {
  const state = store.getState()
  const {document} = state
  const {moves, failed, guarded, to} = movesOf(state, cut)
  if (failed.length) {
    const why = leftOutWords(failed, moves.length + failed.length, "moved")
    return store.turn(() => ({said: `Nothing was moved. ${why}`}))
  }
  if (!moves.some(({from, to}) => holds(document, from) || holds(document, to)))
    return store.turn(() => ({cut: null, said: "It stands there already."}))
  const edit: Edit = {type: "moveCells", moves}
  const told = [`${ofCells(moves.length)} moved to ${blockText(to)}.`, guarded ? guardedWords(guarded) : ""]
    .filter(Boolean)
    .join(" ")
  const question = questionOn(store, edit, told)
  if (question) return store.turn(() => ({question, said: question.asks}))
  store.run(() => edit, told)
  if (store.getState().document !== document) store.turn((now) => ({...chooseBlock(to)(now), said: now.said}))
}

const holds = (document: Document, at: CellAddress) =>
  contentAt(document, at) !== null || extraAt(document, at) !== undefined

/**
 * What each cell that moves comes to, and those that cannot stand where they would come to. Blank cells go along, so that
 * what points at a range with gaps in it follows.
 */
function movesOf(state: EditorState, cut: ShownBlock) {
  const {document, cell} = state
  const [moves, failed]: [CellMove[], LeftOut[]] = [[], []]
  let guarded = 0
  const places = rowsFrom(state, cell, cut.rows.length)
  for (const [from, down, right] of cellsShown(cut)) {
    const row = places[down]
    const to = {sheet: cell.sheet, row: row ?? from.row, col: cell.col + right}
    const content = contentAt(document, from)
    if (isGuarded(from)(state)) guarded++
    else if (row === undefined) failed.push({at: from, why: "there is no further row shown to take it"})
    else if (isSameCell(from, to)) continue
    else if (!columnAt(document, to) || isGuarded(to)(state)) {
      const why = columnAt(document, to) ? "a worked-out cell stands there" : "there is no column there"
      if (holds(document, from)) failed.push({at: to, why})
    } else {
      const entry = isFormula(content) ? {content} : fitting(document, to, content)
      if ("refused" in entry) failed.push({at: to, why: entry.refused})
      else moves.push({from, to, content: entry.content})
    }
  }
  const last = Math.min(cell.col + cut.cols[1] - cut.cols[0], document.sheets[cell.sheet]!.columns.length - 1)
  const to = spanOf({sheet: cell.sheet, rows: places, cols: [cell.col, last]})
  return {moves, failed, guarded, to}
}

function questionOn(store: Store, edit: Edit & {type: "moveCells"}, told: string) {
  const {document} = store.getState()
  const homes = new CellMap<CellAddress>()
  for (const {from, to} of edit.moves) homes.set(to, from)
  const broken = newlyBroken(document, revised(document, edit), (at) => homes.get(at) ?? at)
  const met = namesMet(document, edit)
  const doubts = doubtsIn(store.workbook, edit)
  if (!broken.length && !met && !doubts.length) return null
  const asks = [brokenWords(broken.length), met?.asks, doubtWords(doubts), "Move all the same?"]
  const links = [
    ...linksTo(document, broken),
    ...(met?.links ?? []),
    ...doubts.slice(0, 1).map(({link}) => link),
  ]
  return {asks: asks.filter(Boolean).join(" "), yes: "Move", edit, told, links}
}

const brokenWords = (count: number) =>
  count
    ? `${count} ${count === 1 ? "formula points" : "formulas point"} at what would be written over and would say #REF!.`
    : ""

const linksTo = (document: Document, places: readonly CellAddress[]) =>
  places.slice(0, MOST_LINKS).map((at) => ({at, words: addressText(document, at)}))

const MOST_LINKS = 8
