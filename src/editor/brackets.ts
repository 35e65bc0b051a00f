import {tokens, type Token} from "../workbook/formula"
import type {Decimal} from "../workbook/region"

/** A piece of a text: from `start` up to, but not including, `end`. */
export interface Place {
  readonly start: number
  readonly end: number
}

/** The pieces of a formula, each with its place. */
export function placedTokens(formula: string, decimal: Decimal = "."): readonly (Token & Place)[] {
  let end = 0
  return tokens(formula, decimal).map((token) => ({...token, start: end, end: (end += token.text.length)}))
}

/** The brackets of a formula: those that belong together, and those that stand alone. Brackets within words do not count. */
export interface Brackets {
  readonly pairs: readonly (readonly [open: number, close: number])[]
  readonly unclosed: readonly number[]
  readonly extra: readonly number[]
}

const OPENING: Readonly<Record<string, string>> = {")": "(", "}": "{"}

/** Pairs the brackets of a formula, round ones and braces, by where they stand in the text. */
export function bracketsIn(formula: string, decimal: Decimal = "."): Brackets {
  const pairs: [number, number][] = []
  const open: {text: string; at: number}[] = []
  const extra: number[] = []
  for (const {text, start: at} of placedTokens(formula, decimal)) {
    if (text === "(" || text === "{") open.push({text, at})
    else if (text in OPENING) {
      if (open.at(-1)?.text === OPENING[text]) pairs.push([open.pop()!.at, at])
      else extra.push(at)
    }
  }
  return {pairs, unclosed: open.map((one) => one.at), extra}
}

/** The pair of the bracket just before the caret, or else just behind it; null where there is none. */
export function pairAt(
  formula: string,
  caret: number,
  decimal: Decimal = ".",
): readonly [number, number] | null {
  if (!formula.startsWith("=")) return null
  const {pairs} = bracketsIn(formula, decimal)
  return pairs.find((pair) => pair.includes(caret - 1)) ?? pairs.find((pair) => pair.includes(caret)) ?? null
}
