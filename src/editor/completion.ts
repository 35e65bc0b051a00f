import {catalogue} from "../../functions/catalogue"
import type {Described} from "../../functions/define"
import {described} from "../../functions/described"
import {namedArguments, type NamedArgument} from "../../functions/standard/argumentNames"
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
  /** The names of the arguments, where the function is one of the engine's own. */
  readonly named: Readonly<Record<string, NamedArgument>> | undefined
}

/** Standard functions that are typed most, in the order they are offered; chosen. */
const COMMON =
  "SUM SUMIF SUMIFS AVERAGE AVERAGEIF COUNT COUNTA COUNTIF MIN MAX IF IFERROR ROUND MEDIAN AND OR NOT ABS INDEX MATCH VLOOKUP DATE TODAY YEAR MONTH DAY".split(
    " ",
  )

/**
 * Names that begin with what is typed at the caret: first what is typed whole, then the commonest of the standard functions,
 * our functions, named values, and the other standard functions by the alphabet.
 */
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
  const known = new Set(standard.filter((name) => isForPeople(name) && !ourNames.has(name)))
  const offer = (name: string) => ({name, kind: "function" as const, gives: "standard"})
  const common = COMMON.filter((name) => known.has(name))
  const others = [...known].filter((name) => !common.includes(name)).sort()
  const all: readonly Offer[] = [...common.map(offer), ...ours, ...named, ...others.map(offer)]
  const isWhole = ({name}: Offer) => name.toUpperCase() === typed.text.toUpperCase()
  const beginning = all.filter(({name}) => starts(name))
  return [
    ...beginning.filter(isWhole),
    ...beginning.filter((one) => !isWhole(one)),
    ...[...ours, ...named].filter(({name}) => holds(name)),
  ]
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
  const definition = described.find((one) => one.name === upper)
  return {name: upper, argument: call.argument, definition, named: namedArguments(upper)}
}

const ourNames = new Set(catalogue.map(({name}) => name))
const explained = new Set(described.map(({name}) => name))

/** The engine has names besides that say nothing to a person: its operators, its own version. */
const isForPeople = (name: string) => explained.has(name) || namedArguments(name) !== undefined

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
