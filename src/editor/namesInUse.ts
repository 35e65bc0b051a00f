import {
  contentAt,
  isFormula,
  isSameCell,
  type CellAddress,
  type Content,
  type Document,
} from "../workbook/document"
import type {Edit} from "../workbook/edit"
import {addressText} from "../workbook/cells"
import {tokens} from "../workbook/formula"
import {namesIn, standsFor, type Named} from "../workbook/names"
import {revised} from "../workbook/revised"
import type {Question} from "./store"

/** What the formulas that use named values would meet, in sentences, with links to them. */
type Met = Required<Pick<Question, "asks" | "links">>

/**
 * What an edit would do to formulas that use named values by writing over their names or taking them out; null when
 * none is touched. What is called anew is followed by the formulas.
 */
export function namesMet(document: Document, edit: Edit): Met | null {
  const touched =
    edit.type === "moveCells"
      ? namesPartedBy(document, edit)
      : namesIn(document).filter(({at}) => touches(document, edit, at))
  if (!touched.length) return null
  const after = revised(document, edit)
  const still = new Set(namesIn(after).map(({name}) => name.toLowerCase()))
  const met = touched.flatMap(({name, at}) => {
    const users = usersOfName(document, name)
    const isFollowed = usersOfName(after, name).length === 0
    const now = edit.type === "enter" ? contentAt(after, {...at, col: 0}) : null
    if (!users.length || (isFollowed && now === null)) return []
    const use = users.length === 1 ? `1 formula uses ${name}` : `${users.length} formulas use ${name}`
    if (isFollowed) return [{users, words: `${use} by its name and would call it ${now}.`}]
    if (!still.has(name.toLowerCase())) return [{users, words: `${use} by its name and would say #NAME?.`}]
    return [{users, words: `${use}, which would be the name of another value.`}]
  })
  if (!met.length) return null
  const users = [...new Map(met.flatMap((one) => one.users).map((at) => [addressText(document, at), at]))]
  const links = users.slice(0, MOST_LINKS).map(([words, at]) => ({at, words}))
  return {asks: met.map(({words}) => words).join(" "), links}
}

/** The names that stand for another value once cells have moved: where both move together they go on as they are. */
function namesPartedBy(document: Document, edit: Edit & {type: "moveCells"}): readonly Named[] {
  const home = (at: CellAddress) => edit.moves.find(({from}) => isSameCell(from, at))?.to ?? at
  const isTouched = ({at: {sheet}}: Named) =>
    edit.moves.some(({from, to}) => from.sheet === sheet || to.sheet === sheet)
  const touched = namesIn(document).filter(isTouched)
  if (!touched.length) return []
  const after = new Map(namesIn(revised(document, edit)).map(({name, at}) => [name.toLowerCase(), at]))
  return touched.filter(({name, at}) => {
    const now = after.get(name.toLowerCase())
    return !now || !isSameCell(now, home(at))
  })
}

/** What is told of a named value that is called anew in its cell, and what that is called in the history; null elsewhere. */
export function calledAnew(
  document: Document,
  at: CellAddress,
  content: Content,
): {readonly name: string; readonly told: string} | null {
  const isName = at.col === 0 && document.sheets[at.sheet]?.names && standsFor(document, at)
  const was = contentAt(document, at)
  if (!isName || typeof content !== "string" || content === was) return null
  const users = usersOfName(document, String(was)).length
  const follow = users === 1 ? "1 formula follows" : `${users} formulas follow`
  return {name: `${was} called ${content}`, told: `${was} is called ${content}: ${follow}.`}
}

/** Whether an edit puts other content into the cell of a name, or takes its row out. `at` is the cell of the value. */
function touches(document: Document, edit: Edit, {sheet, row}: CellAddress): boolean {
  if (edit.type === "removeRows")
    return edit.sheet === sheet && row >= edit.first && row < edit.first + edit.count
  if (edit.type !== "enter") return false
  const was = String(contentAt(document, {sheet, row, col: 0})).toLowerCase()
  return edit.cells.some(
    ({at, content}) =>
      at.sheet === sheet && at.row === row && at.col === 0 && String(content).toLowerCase() !== was,
  )
}

/** The formulas that use a named value; one of a column stands in its first cell, and counts once. */
export function usersOfName({sheets}: Document, name: string): readonly CellAddress[] {
  const sought = name.toLowerCase()
  const uses = (formula: unknown) =>
    isFormula(formula) &&
    formula.toLowerCase().includes(sought) &&
    tokens(formula).some(({kind, text}) => kind === "name" && text.toLowerCase() === sought)
  return sheets.flatMap(({columns, rows}, sheet) => [
    ...columns.flatMap(({formula, total}, col) =>
      uses(formula) || uses(total) ? [{sheet, row: 0, col}] : [],
    ),
    ...rows.flatMap((contents, row) =>
      contents.flatMap((content, col) => (uses(content) ? [{sheet, row, col}] : [])),
    ),
  ])
}

const MOST_LINKS = 8
