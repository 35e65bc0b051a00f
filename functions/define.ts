import {readOnce} from "./memo"
import {CellFault, choice, isRange, type Given, type Held, type Parameter} from "./parameters"
import type {Unit} from "./quantity"
import {isRefusal, notYet, wrongKind, type Refusal} from "./refusal"
import type {SourceKey} from "./sources"

export type {Refusal} from "./refusal"

// The engine calls every function with what the cells hold; `any` lets one list carry functions of all shapes.
type Parameters = Readonly<Record<string, Parameter<any>>>
type Arguments<P extends Parameters> = {
  readonly [K in keyof P]: P[K] extends Parameter<infer T> ? T : never
}

/** A number, a day (where `returns.unit` is "date") or a word. */
export type Result = number | string

/** What the hints, the help and the tests read of a function, be it ours or one of the standard. */
export interface Described {
  readonly name: string
  readonly summary: string
  /** More about the method, for the help: which published variant, what is assumed. */
  readonly about?: string
  readonly parameters: Readonly<Record<string, DescribedParameter>>
  readonly returns: {
    readonly label: string
    readonly unit: Unit
    /** Where the first argument names the outcome wanted: the outcomes by their names. */
    readonly named?: Outcomes
  }
  /** What it refuses beyond the limits of its arguments, in words for the help. */
  readonly refuses?: readonly string[]
  readonly sources: readonly [SourceKey, ...SourceKey[]]
  /** Where in its source a function of a standard is defined: "6.17.2". */
  readonly section?: string
  /** A call that can be typed as it stands, and what it gives, to as many digits as are printed. */
  readonly example: {readonly formula: string; readonly gives: Result}
}

/** What a reader needs to know of one argument. */
export interface DescribedParameter extends Pick<
  Parameter<any>,
  "label" | "unit" | "takes" | "absent" | "names"
> {
  /** The last parameters, when they repeat, may be given again and again. */
  readonly repeats?: true
}

/** One formula function of ours. Its name is in upper case with a dotted prefix that is no internet domain (OpenFormula 5.7). */
export interface FormulaFunction<P extends Parameters = Parameters> extends Described {
  readonly parameters: P
  /** Lists that belong together row by row: a blank in one leaves out that row of all. */
  readonly together?: readonly (keyof P & string)[]
  calculate(given: Arguments<P>): Result | Refusal
}

/** What a model can be asked for, by the name that is given as the first argument. */
export type Outcomes = Readonly<Record<string, {readonly label: string; readonly unit: Unit}>>

/** The unit of what a call gives: that of the outcome asked for where there are several. */
export const unitGiven = ({returns}: FormulaFunction, first: Given | undefined): Unit =>
  (typeof first === "string" && returns.named?.[first]?.unit) || returns.unit

/** The first argument of a function with several outcomes: the name of the one wanted. */
export const outcomeOf = <const O extends Outcomes>(outcomes: O): Parameter<keyof O & string> =>
  choice("What is asked for", Object.keys(outcomes) as (keyof O & string)[])

/** Gives `calculate` the types of its arguments from `parameters`. */
export const defineFunction = <const P extends Parameters>(definition: FormulaFunction<P>): FormulaFunction =>
  definition as unknown as FormulaFunction

/**
 * What a function gives for what its arguments hold. The one place where arguments are counted, errors
 * passed on, blanks told from numbers, limits kept and blank rows left out. An optional argument that is
 * blank or left out takes its default. An error that came in goes out again, the leftmost first.
 */
export function answer(definition: FormulaFunction, given: readonly Given[]): Result | Refusal | CellFault {
  const parameters = Object.entries(definition.parameters)
  const least = parameters.filter(([, {absent}]) => !absent).length
  if (given.length < least || given.length > parameters.length)
    return wrongKind(`${definition.name} takes ${howMany(least, parameters.length)}, not ${given.length}`)

  const fault = given.flatMap((value, i) => faultIn(value, parameters[i]![1].skips) ?? [])[0]
  if (fault) return fault
  const read: Record<string, any> = {}
  for (const [i, [key, parameter]] of parameters.entries()) {
    const value = given[i] ?? null
    if (value === null && parameter.absent) read[key] = parameter.absent.value
    else {
      const got = parameter.read(blankWhereSkipped(value, parameter.skips))
      if (isRefusal(got)) return got
      read[key] = got
    }
  }
  return leaveOutBlankRows(definition, read) ?? definition.calculate(read)
}

/**
 * Drops blank entries, together where lists belong together; refuses lists of different length or with nothing
 * left. An optional list that belongs to no other and is blank throughout counts as left out.
 */
function leaveOutBlankRows(
  {parameters, together = []}: FormulaFunction,
  read: Record<string, any>,
): Refusal | null {
  const lists = Object.keys(parameters).filter((key) => parameters[key]!.isList && read[key] !== null)
  const bound = lists.filter((key) => together.includes(key))
  for (const group of [bound, ...lists.filter((key) => !together.includes(key)).map((key) => [key])]) {
    const [first, ...others] = group
    if (first === undefined) continue
    const differs = others.find((key) => read[key].length !== read[first].length)
    if (differs) {
      const [a, b] = [parameters[first]!.label, parameters[differs]!.label]
      return wrongKind(
        `${a} has ${read[first].length} cells and ${b} has ${read[differs].length}: sizes differ`,
      )
    }
    const full = (_: unknown, row: number) => group.every((key) => read[key][row] !== null)
    const rows = group.map((key) => read[key].filter(full))
    if (rows[0].length === 0) {
      const {absent} = parameters[first]!
      if (!absent || together.includes(first)) return nothingLeft(group, parameters, read)
      read[first] = absent.value
      continue
    }
    for (const [i, key] of group.entries()) read[key] = rows[i]
  }
  return null
}

/** Names the list that is blank throughout; where each has something, but never in the same row, names them all. */
function nothingLeft(group: readonly string[], parameters: Parameters, read: Record<string, any>): Refusal {
  const blank = group.find((key) => read[key].every((held: unknown) => held === null))
  if (blank !== undefined) return notYet(`${parameters[blank]!.label}: not measured yet`)
  return notYet(`${group.map((key) => parameters[key]!.label).join(", ")}: no row is complete yet`)
}

/** Ranges that were found to hold no error at all. A range that is read again is the same object. */
const sound = new WeakSet<object>()

function faultIn(given: Given, skips: readonly string[] = []): CellFault | undefined {
  if (!isRange(given)) return given instanceof CellFault && !skips.includes(given.code) ? given : undefined
  if (sound.has(given)) return undefined
  let isSound = true
  for (const row of given)
    for (const held of row) {
      if (!(held instanceof CellFault)) continue
      if (!skips.includes(held.code)) return held
      isSound = false
    }
  if (isSound) sound.add(given)
  return undefined
}

/** After `faultIn` only errors that count as blanks are left in a list. A range without any stays the same object. */
const blankWhereSkipped = (given: Given, skips: readonly string[] | undefined): Given => {
  if (!skips) return given
  if (!isRange(given)) return blank(given)
  return sound.has(given) ? given : withoutFaults(given)
}

const blank = <T>(held: T) => (held instanceof CellFault ? null : held)

const withoutFaults = readOnce((range: readonly (readonly Held[])[]) => range.map((row) => row.map(blank)))

const howMany = (least: number, most: number) =>
  `${least === most ? most : `${least} to ${most}`} argument${most === 1 ? "" : "s"}`
