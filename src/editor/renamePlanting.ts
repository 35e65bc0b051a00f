import {contentAt, isFormula, type CellAddress, type Content, type Document} from "../workbook/document"
import type {Edit} from "../workbook/edit"
import {soughtAs} from "../workbook/plantingName"
import type {Question} from "./store"

/**
 * The question that another name for a planting raises, where it is typed over the old one on the sheet of plantings: every sheet
 * finds the planting by its name, so it is to be called so everywhere. Null where the old name stands nowhere else, or another
 * planting has the new one.
 */
export function renameQuestion(
  document: Document,
  at: CellAddress,
  content: Content,
  next: NonNullable<Question["next"]>,
): Question | null {
  const {sheets} = document
  const {columns, rows} = sheets[at.sheet]!
  const was = contentAt(document, at)
  if (columns[at.col]?.part !== "name of planting" || typeof content !== "string") return null
  if (typeof was !== "string" || was === "" || isFormula(was) || isFormula(content)) return null
  const isTaken = rows.some(
    (row, i) => i !== at.row && [was, content].some((name) => isName(row[at.col], name)),
  )
  if (content === was || isTaken) return null
  const others = placesOf(document, was).filter(
    ({sheet, row, col}) => sheet !== at.sheet || row !== at.row || col !== at.col,
  )
  if (others.length === 0) return null
  const entering = (cells: readonly CellAddress[], name: string): Edit => ({
    type: "enter",
    cells: cells.map((one) => ({at: one, content})),
    name,
  })
  const onSheets = new Set(others.map(({sheet}) => sheet)).size
  const cells = `${others.length} other ${others.length === 1 ? "cell" : "cells"}`
  return {
    asks:
      `${was} stands in ${cells} on ${onSheets} ${onSheets === 1 ? "sheet" : "sheets"}, which find it by its name. ` +
      `Call it ${content} there too?`,
    yes: "Here alone",
    edit: entering([at], `name of ${was}`),
    rather: {words: "Call it so everywhere", edit: entering([at, ...others], `${was} called ${content}`)},
    next,
  }
}

const isName = (content: Content | undefined, name: string) => soughtAs(content) === soughtAs(name)

/** The cells that hold a name by itself, in capitals or not, as formulas find it. */
const placesOf = ({sheets}: Document, name: string): readonly CellAddress[] =>
  sheets.flatMap(({rows}, sheet) =>
    rows.flatMap((contents, row) =>
      contents.flatMap((content, col) => (isName(content, name) ? [{sheet, row, col}] : [])),
    ),
  )
