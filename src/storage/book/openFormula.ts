import {
  columnLetters,
  referenceOf,
  referenceText,
  sheetText,
  tokens,
  type Corner,
} from "../../workbook/formula"
import {namedForOds} from "./formulaNames"

/**
 * A formula as OpenFormula writes it (OASIS, 1.2 part 2): references in brackets with a point before each cell, arguments
 * parted by ";", arrays by ";" and "|", and a definer before the names of our own functions.
 */
export function toOpenFormula(formula: string): string {
  let depth = 0
  const pieces = tokens(namedForOds(formula)).map(({kind, text}) => {
    if (text === "{" && kind === "sign") depth++
    if (text === "}" && kind === "sign") depth--
    if (kind === "reference") return bracketed(text)
    if (kind === "sign" && text === ",") return ";"
    return kind === "sign" && text === ";" && depth > 0 ? "|" : text
  })
  return `of:${pieces.join("")}`
}

function bracketed(text: string): string {
  const {sheet, from, to, isRange} = referenceOf(text)
  const before = sheet === null ? "" : `$${quoted(sheet)}`
  return `[${before}.${corner(from)}${isRange ? `:.${corner(to)}` : ""}]`
}

const quoted = (sheet: string) => {
  const text = sheetText(sheet)
  return text.startsWith("'") ? text : `'${text}'`
}

const corner = ({col, row, colFixed, rowFixed}: Corner) =>
  (col === null ? "" : (colFixed ? "$" : "") + columnLetters(col)) +
  (row === null ? "" : (rowFixed ? "$" : "") + (row + 1))

const CELL = String.raw`\$?[A-Za-z]{1,3}\$?[1-9][0-9]*|\$?[A-Za-z]{1,3}|\$?[1-9][0-9]*`
const BRACKETED = new RegExp(
  String.raw`^\[(?:\$?('(?:[^']|'')+'|[^\[\]'.:#]+))?\.(${CELL})(?::(?:\$?('(?:[^']|'')+'|[^\[\]'.:#]+))?\.(${CELL}))?\]$`,
)

/** The way back, from "of:=" on; null where it is no OpenFormula, or points at another file. */
export function fromOpenFormula(text: string): string | null {
  const written = /^(?:[a-z]+:)?(=[^]*)$/.exec(text)?.[1]
  if (written === undefined) return null
  let formula = ""
  let depth = 0
  // Words in quotation marks, references in brackets, and single signs.
  for (const [piece] of written.matchAll(/"(?:[^"]|"")*"?|\[(?:'(?:[^']|'')*'|[^\]'])*\]?|[^]/g)) {
    if (piece.startsWith("[")) {
      const reference = referenceIn(piece)
      if (reference === null) return null
      formula += reference
      continue
    }
    if (piece === "{") depth++
    if (piece === "}") depth--
    formula += piece === ";" ? "," : piece === "|" && depth > 0 ? ";" : piece
  }
  return formula
}

function referenceIn(piece: string): string | null {
  const found = BRACKETED.exec(piece)
  if (!found) return null
  const [, sheet, from, otherSheet, to] = found
  if (otherSheet !== undefined && otherSheet !== sheet) return null
  const name = sheet === undefined ? null : sheet.replace(/^'|'$/g, "").replaceAll("''", "'")
  const corners = to === undefined ? from! : `${from}:${to}`
  return referenceText({...referenceOf(corners), sheet: name})
}
