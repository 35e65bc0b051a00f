import {COLUMN_FORMULA, type CellAddress, type Content} from "../document"
import {movedDown, tokens} from "../formula"
import {isFault, type Value} from "../value"
import {cellsOfSheets, type Checked} from "./checked"
import type {Finding} from "./finding"

/** Worked-out cells that hold something else, with what their formula gives beside it. */
export function typedOver(checked: Checked): Finding[] {
  const {document, workbook, words} = checked
  const found: Finding[] = []
  const isTypedOver = (content: Content) => content !== COLUMN_FORMULA
  const cells = cellsOfSheets(document, ({formula}) => (formula === undefined ? null : isTypedOver))
  for (const {at, content: holds} of cells) {
    const value = workbook.valueAt(at)
    const stands = holds === null ? "it is blank" : `${words.shown(at, value)} stands there`
    const gives = ownValue(checked, at)
    const given = gives === undefined ? "" : `, its formula gives ${givenWords(checked, at, gives)}`
    found.push({
      rule: "typed over",
      cells: [at],
      sentence: `${words.name(at)} is typed over: ${stands}${given}`,
      alike: "are typed over",
      fix: {words: "Put formula back", edit: {type: "enter", cells: [{at, content: COLUMN_FORMULA}]}},
    })
  }
  return found
}

/** What the formula of the column gives in this row; undefined where that shows only once it stands there. */
export function ownValue(
  {document, workbook}: Pick<Checked, "document" | "workbook">,
  at: CellAddress,
): Value | undefined {
  const formula = movedDown(document.sheets[at.sheet]!.columns[at.col]!.formula!, at.row)
  const asksItsPlace = tokens(formula).some(
    ({kind, text}) => kind === "function" && /^(ROW|COLUMN)$/i.test(text),
  )
  if (asksItsPlace) return undefined
  const value = workbook.evaluate(formula, at.sheet)
  return Array.isArray(value) ? undefined : (value as Value)
}

const givenWords = ({words}: Checked, at: CellAddress, value: Value) =>
  isFault(value) ? value.code : value === null || value === "" ? "nothing" : words.shown(at, value)
