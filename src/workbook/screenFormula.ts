import {tokens, type Token} from "./formula"
import type {Decimal} from "./region"

/**
 * A stored formula as it is shown. Where decimals take a comma, arguments are parted by ";", and in braces ";" parts
 * columns and "|" rows, as in OpenFormula 5.13. Words, names and sheets stay as they are.
 */
export const onScreen = (formula: string, decimal: Decimal): string =>
  decimal === "."
    ? formula
    : tokens(formula)
        .map((token) => pieceOnScreen(token, decimal))
        .join("")

/** A piece of a stored formula as it is shown. */
export function pieceOnScreen({kind, text}: Token, decimal: Decimal): string {
  if (decimal === ".") return text
  return kind === "number" ? text.replace(".", ",") : kind === "sign" ? (SHOWN[text] ?? text) : text
}

const SHOWN: Readonly<Record<string, string>> = {",": ";", ";": "|"}

/** A formula typed as formulas are shown, as it is stored; null where a sign of the other way of writing stands in it. */
export function fromScreen(shown: string, decimal: Decimal): string | null {
  if (decimal === ".") return shown
  const pieces = tokens(shown, decimal)
  if (pieces.some(({kind, text}) => kind === "unknown" && (text === "," || text === "."))) return null
  return pieces
    .map(({kind, text}) =>
      kind === "number" ? text.replace(",", ".") : kind === "sign" ? (STORED[text] ?? text) : text,
    )
    .join("")
}

const STORED: Readonly<Record<string, string>> = {";": ",", "|": ";"}

/** The sign between the arguments of a function. */
export const argumentSign = (decimal: Decimal) => (decimal === "," ? ";" : ",")
