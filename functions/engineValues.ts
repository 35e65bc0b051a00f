import type {FunctionPlugin} from "hyperformula"
import {CellError, EmptyValue, ErrorType, SimpleRangeValue} from "hyperformula"
import {CellFault, type Given, type Held} from "./parameters"
import type {ErrorCode, Refusal} from "./refusal"

// The engine does not export the types of its syntax tree, values and graph.
type Call = Parameters<FunctionPlugin["runFunctionWithReferenceArgument"]>
export type Arguments = Call[0]
export type State = Call[1]
export type EngineValue = ReturnType<FunctionPlugin["evaluateAst"]>
type EngineScalar = Exclude<EngineValue, SimpleRangeValue>
type Graph = FunctionPlugin["dependencyGraph"]

const errorTypes: Record<ErrorCode, ErrorType> = {
  "#VALUE!": ErrorType.VALUE,
  "#NUM!": ErrorType.NUM,
  "#N/A": ErrorType.NA,
  "#DIV/0!": ErrorType.DIV_BY_ZERO,
}

const codes: Partial<Record<ErrorType, string>> = {
  ...Object.fromEntries(Object.entries(errorTypes).map(([code, type]) => [type, code])),
  [ErrorType.NAME]: "#NAME?",
  [ErrorType.REF]: "#REF!",
}

/** A refusal as an error of the engine, with its sentence. */
export const errorOf = ({code, refused}: Refusal) => new CellError(errorTypes[code], refused)

/** What went wrong in a function, as an error of the engine: an exception would leave it half way through an edit. */
export const errorOfFault = (name: string, fault: unknown) =>
  new CellError(ErrorType.VALUE, `${name} failed: ${fault instanceof Error ? fault.message : fault}`)

export const noFiniteAnswer = (name: string) => new CellError(ErrorType.NUM, `${name} has no finite answer`)

/**
 * What an argument holds. A range of cells is read once and kept with the engine's own node of that range, which
 * forgets what it keeps as soon as a cell in it changes: many cells take the same climate and crop values.
 */
export function givenOf(value: EngineValue, graph: Graph): Given {
  if (!(value instanceof SimpleRangeValue)) return heldOf(value)
  const {range} = value
  const node = range && graph.getRange(range.start, range.end)
  const kept = node?.getFunctionValue(KEPT) as Held[][] | undefined
  // A range of whole columns grows with its sheet, also where its own cells stay as they are.
  if (kept?.length === value.height() && kept[0]?.length === value.width()) return kept
  const read = value.data.map((row) => row.map(heldOf))
  node?.setFunctionValue(KEPT, read)
  return read
}

const KEPT = "what our functions read"

function heldOf(value: EngineScalar): Held {
  if (value === EmptyValue) return null
  if (value instanceof CellError) return new CellFault(codes[value.type] ?? value.type, value)
  // Dates, percentages and money come as an object that keeps its number in `val`.
  return typeof value === "object" ? (value as {val: number}).val : (value as Held)
}

/** What a held value is to the engine. */
export function engineValueOf(held: Held) {
  if (held === null) return EmptyValue
  return held instanceof CellFault ? (held.origin as CellError) : held
}

/** The engine's value that stands in a row and column of an argument, a date still being a date. */
export const standingAt = (value: EngineValue, row: number, col: number): EngineValue =>
  value instanceof SimpleRangeValue ? value.data[row]![col]! : value
