import {catalogue} from "../../functions/catalogue"
import type {Described} from "../../functions/define"
import {described} from "../../functions/described"
import {tokens} from "../workbook/formula"
import type {Decimal} from "../workbook/region"
import {argumentSign} from "../workbook/screenFormula"

/** A name that can complete what is being typed. */
export interface Offer {
  readonly name: string
  readonly kind: "our function" | "function" | "named value"
  /** What it gives: a unit for ours, "standard function", or the value's own unit. */
  readonly gives: string
}

/** The name under the caret: what is typed of it up to the caret, and what follows to its end. */
interface Typed {
  readonly start: number
  readonly text: string
  readonly rest: string
}

/** The call that the caret stands in, and which argument it is at, counted from 0. */
export interface Call {
  readonly name: string
  readonly argument: number
  readonly definition: Described | undefined
}

/** Names that begin with what is typed at the caret: our functions first, then named values, then standard functions. */
export function offersAt(
  text: string,
  caret: number,
  names: readonly {name: string; gives: string}[],
  standard: readonly string[],
  decimal: Decimal = ".",
): readonly Offer[] {
  const typed = typedAt(text, caret, decimal)
  if (!typed) return []
  const starts = (name: string) => begins(name, typed.text)
  const holds = (name: string) => !starts(name) && name.toUpperCase().includes(typed.text.toUpperCase())
  const ours = catalogue.map(({name, returns}) => ({
    name,
    kind: "our function" as const,
    gives: returns.unit,
  }))
  const named = names.map(({name, gives}) => ({name, kind: "named value" as const, gives}))
  const known = new Set(catalogue.map(({name}) => name))
  const others = standard
    .filter((name) => !known.has(name))
    .map((name) => ({name, kind: "function" as const, gives: "standard"}))
  const all: readonly Offer[] = [...ours, ...named, ...others]
  return [...all.filter(({name}) => starts(name)), ...[...ours, ...named].filter(({name}) => holds(name))]
}

/** The text with an offer put in place of what was typed, and where the caret then stands. */
export function withOffer(
  text: string,
  caret: number,
  {name, kind}: Offer,
  decimal: Decimal = ".",
): {text: string; caret: number} {
  const typed = typedAt(text, caret, decimal)
  if (!typed) return {text, caret}
  // Of a name that the caret stands in, the offer takes the whole place; a cell or name that follows stays.
  const after = text.slice(caret)
  const isOneName = after.slice(typed.rest.length).startsWith("(") || begins(name, typed.text + typed.rest)
  const rest = isOneName ? after.slice(typed.rest.length) : after
  const put = kind === "named value" || rest.startsWith("(") ? name : `${name}(`
  return {text: text.slice(0, typed.start) + put + rest, caret: typed.start + put.length}
}

/** The innermost call round the caret. */
export function callAt(text: string, caret: number, decimal: Decimal = "."): Call | null {
  const open: {name: string | null; argument: number}[] = []
  let name: string | null = null
  let at = 0
  for (const {kind, text: piece} of tokens(text, decimal)) {
    if (at >= caret) break
    at += piece.length
    if (kind === "function") name = piece
    else if (piece === "(" || piece === "{") {
      open.push({name: piece === "(" ? name : null, argument: 0})
      name = null
    } else if (piece === ")" || piece === "}") open.pop()
    else if (piece === argumentSign(decimal) && open.length) open.at(-1)!.argument++
  }
  const call = open.findLast((one) => one.name !== null)
  if (!call?.name) return null
  const upper = call.name.toUpperCase()
  return {name: upper, argument: call.argument, definition: described.find((one) => one.name === upper)}
}

const begins = (name: string, typed: string) => name.toUpperCase().startsWith(typed.toUpperCase())

function typedAt(text: string, caret: number, decimal: Decimal): Typed | null {
  if (!text.startsWith("=")) return null
  let at = 0
  for (const {kind, text: piece} of tokens(text, decimal)) {
    const end = at + piece.length
    const isName =
      kind === "name" || kind === "function" || (kind === "reference" && /^[A-Za-z]+\d*$/.test(piece))
    if (isName && at < caret && caret <= end)
      return {start: at, text: text.slice(at, caret), rest: text.slice(caret, end)}
    at = end
  }
  return null
}
