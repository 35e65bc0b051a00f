import {COLUMN_FORMULA, contentAt, isFormula, type CellAddress, type Document} from "../document"
import {movedDown} from "../formula"
import type {Checked} from "./checked"
import type {Finding} from "./finding"

/** Cells that differ where those above and below hold one formula. In a worked-out column that is a cell typed over. */
export function oddFormulas({document, words, written}: Checked): Finding[] {
  const found: Finding[] = []
  for (const {at: first, formula: above, stands} of written) {
    const at = {...first, row: first.row + 1}
    if (stands !== "cell" || document.sheets[at.sheet]!.columns[at.col]?.formula !== undefined) continue
    const below = ownFormula(document, at, 1)
    if (below === null || movedDown(above, 2) !== below) continue
    const content = contentAt(document, at)
    const expected = movedDown(above, 1)
    if (content === expected || content === null) continue
    found.push({
      rule: "odd formula",
      cells: [at],
      sentence: `${words.name(at)} holds ${isFormula(content) ? "another formula than the cells" : "no formula, unlike the cells"} above and below it: theirs would read ${expected}`,
      fix: {words: "Put their formula in", edit: {type: "enter", cells: [{at, content: expected}]}},
    })
  }
  return found
}

function ownFormula(document: Document, {sheet, row, col}: CellAddress, down: number): string | null {
  const content = contentAt(document, {sheet, row: row + down, col})
  return isFormula(content) && content !== COLUMN_FORMULA ? content : null
}
