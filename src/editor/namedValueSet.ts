import {
  columnWith,
  contentAt,
  isFormula,
  isSameCell,
  type CellAddress,
  type Document,
  type Part,
} from "../workbook/document"
import type {Edit, Entry} from "../workbook/edit"

/**
 * The edit with what goes with a named value that is set anew, in whatever way: `day` in its row, an ISO date, and the tag
 * "typed" where it had another. What the edit itself puts there stays. A blank or a formula sets no value.
 */
export function withDaysOfNames(document: Document, edit: Edit, day: string): Edit {
  if (edit.type !== "enter") return edit
  const puts = (at: CellAddress) => edit.cells.some((one) => isSameCell(one.at, at))
  const besides = edit.cells.flatMap(({at, content}): Entry[] => {
    if (!document.sheets[at.sheet]?.names || at.col !== 1 || content === null || isFormula(content)) return []
    if (contentAt(document, at) === content) return []
    const put = (part: Part, what: string): Entry[] => {
      const held = {...at, col: columnWith(document, at.sheet, part)}
      return held.col < 0 || puts(held) || contentAt(document, held) === what
        ? []
        : [{at: held, content: what}]
    }
    return [...put("named on", day), ...put("named tag", "typed")]
  })
  return besides.length ? {...edit, cells: [...edit.cells, ...besides]} : edit
}
