import type {HyperFormula} from "hyperformula"

/** A formula as the engine holds it; its parts are not public. */
interface FormulaVertex {
  readonly array?: unknown
  isComputed(): boolean
  getCellValue(): unknown
  setCellValue(value: unknown): unknown
}

interface Evaluator {
  recomputeFormulaVertexValue(vertex: FormulaVertex): unknown
}

/**
 * The engine stops at a cell whose new value is the old one, but it compares objects, and makes a new one for each date
 * and each error that it works out: all that rests on a date would be worked out anew each time, changed or not. This
 * puts the old object back where the new one says the same. An engine without this part calculates the same, more slowly.
 */
export function keepUnchanged(engine: HyperFormula): void {
  const {_evaluator: evaluator} = engine as unknown as {readonly _evaluator?: Evaluator}
  const work = evaluator?.recomputeFormulaVertexValue
  if (!evaluator || !work) return
  evaluator.recomputeFormulaVertexValue = (vertex) => {
    const before = vertex.isComputed() ? vertex.getCellValue() : undefined
    const now = work.call(evaluator, vertex)
    return !vertex.array && saysTheSame(before, now) ? vertex.setCellValue(before) : now
  }
}

function saysTheSame(one: unknown, other: unknown): boolean {
  if (one === other || !isObject(one) || !isObject(other) || one.constructor !== other.constructor)
    return false
  const parts = Object.keys(other)
  return (
    parts.length > 0 &&
    parts.length === Object.keys(one).length &&
    parts.every((part) => Object.is(one[part], other[part]))
  )
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null
