import {dayOf} from "../../functions/calendar"
import {
  contentAt,
  isFormula,
  sheetWith,
  columnWith,
  type CellAddress,
  type Document,
} from "../workbook/document"
import {columnAt} from "../workbook/extras"
import {cellColumn} from "./cellColumn"

/** A longer text is a sentence of one row, and no word to be chosen again; chosen. */
const LONGEST = 40

/**
 * The words that a cell may be given from a list: those its column takes, where it says so; else the words that stand in
 * the column already, and all names of plantings where it holds such. None where it holds numbers or dates.
 */
export function choicesAt(document: Document, at: CellAddress): readonly string[] {
  const column = columnAt(document, at)
  if (!column || document.sheets[at.sheet]!.columns[at.col]!.formula !== undefined) return []
  if (column.rule?.words) return column.rule.words
  const {format} = cellColumn(document, at)!
  if (format !== undefined && format !== "text") return []
  const {rows} = document.sheets[at.sheet]!
  const here = wordsOf(rows.map((row, i) => (i === at.row ? null : row[at.col])))
  const plantings = plantingNames(document)
  const holdsPlantings = plantings.some((name) => here.includes(name)) || /planting/.test(column.part ?? "")
  const others = here.filter((word) => !plantings.includes(word)).toSorted((a, b) => a.localeCompare(b))
  return [...(holdsPlantings ? plantings : []), ...others]
}

/** The names on the sheet of plantings, in its order. */
function plantingNames(document: Document): readonly string[] {
  const sheet = sheetWith(document, "name of planting")
  if (sheet < 0) return []
  const col = columnWith(document, sheet, "name of planting")
  return wordsOf(document.sheets[sheet]!.rows.map((_, row) => contentAt(document, {sheet, row, col})))
}

const wordsOf = (contents: readonly unknown[]): readonly string[] => [
  ...new Set(
    contents.filter(
      (one): one is string =>
        typeof one === "string" &&
        one !== "" &&
        one.length <= LONGEST &&
        !isFormula(one) &&
        dayOf(one) === null,
    ),
  ),
]
