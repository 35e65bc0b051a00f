import {
  CellError,
  EmptyValue,
  ErrorType,
  FunctionArgumentType,
  FunctionPlugin,
  HyperFormula,
  SimpleRangeValue,
} from "hyperformula"
import {catalogue} from "./catalogue"
import {answer, unitGiven, type FormulaFunction} from "./define"
import {CellFault, type Given, type Held} from "./parameters"
import {isRefusal, type ErrorCode} from "./refusal"

// The engine does not export the types of its syntax tree and state.
type Call = Parameters<FunctionPlugin["runFunctionWithReferenceArgument"]>
type Arguments = Call[0]
type State = Call[1]

const errorTypes: Record<ErrorCode, ErrorType> = {
  "#VALUE!": ErrorType.VALUE,
  "#NUM!": ErrorType.NUM,
  "#N/A": ErrorType.NA,
  "#DIV/0!": ErrorType.DIV_BY_ZERO,
}

/** The engine's view of the catalogue: one method per definition, named by the definition. */
class CataloguePlugin extends FunctionPlugin {
  static {
    this.implementedFunctions = {}
    for (const definition of catalogue) {
      this.implementedFunctions[definition.name] = {
        method: definition.name,
        // A range in place of one value is refused by us, so the engine must neither intersect nor spill.
        parameters: Object.values(definition.parameters).map(() => ({
          argumentType: FunctionArgumentType.ANY,
        })),
        vectorizationForbidden: true,
      }
      Object.defineProperty(this.prototype, definition.name, {
        value(this: CataloguePlugin, call: {args: Arguments}, state: State) {
          return this.answer(definition, call.args, state)
        },
      })
    }
  }

  /**
   * Takes the raw values of the arguments, since the engine's own conversion would turn a blank into 0,
   * "3" into 3 and TRUE into 1. An exception would leave the engine half way through an edit, so none gets out.
   */
  answer(definition: FormulaFunction, args: Arguments, state: State) {
    try {
      const values = args.map((arg) => this.given(this.evaluateAst(arg, state)))
      const result = answer(definition, values)
      if (result instanceof CellFault) return result.origin as CellError
      if (isRefusal(result)) return new CellError(errorTypes[result.code], result.refused)
      if (typeof result === "string") return result
      if (!Number.isFinite(result))
        return new CellError(ErrorType.NUM, `${definition.name} has no finite answer`)
      return unitGiven(definition, values[0]) === "date" ? this.dateOf(result) : result
    } catch (fault) {
      return new CellError(
        ErrorType.VALUE,
        `${definition.name} failed: ${fault instanceof Error ? fault.message : fault}`,
      )
    }
  }

  /**
   * What an argument holds. A range of cells is read once and kept with the engine's own node of that range, which
   * forgets what it keeps as soon as a cell in it changes: many cells take the same climate and crop values.
   */
  private given(value: EngineValue): Given {
    if (!(value instanceof SimpleRangeValue)) return held(value)
    const {range} = value
    const node = range && this.dependencyGraph.getRange(range.start, range.end)
    const kept = node?.getFunctionValue(KEPT) as Given | undefined
    if (kept) return kept
    const read = value.data.map((row) => row.map(held))
    node?.setFunctionValue(KEPT, read)
    return read
  }

  private readonly dates = new Map<number, ReturnType<FunctionPlugin["returnNumberWrapper"]>>()

  /**
   * A number as a date of the engine: the same object for the same day, since the engine compares objects, and would
   * work out anew all that rests on a date that has not changed.
   */
  private dateOf(day: number) {
    const date = this.dates.get(day) ?? this.returnNumberWrapper(day, "NUMBER_DATE" as never)
    if (this.dates.size > MOST_DATES) this.dates.clear()
    this.dates.set(day, date)
    return date
  }
}

const KEPT = "what our functions read"
const MOST_DATES = 10_000

type EngineValue = ReturnType<FunctionPlugin["evaluateAst"]>

function held(value: Exclude<EngineValue, SimpleRangeValue>): Held {
  if (value === EmptyValue) return null
  if (value instanceof CellError) return new CellFault(codes[value.type] ?? value.type, value)
  // Dates, percentages and money come as an object that keeps its number in `val`.
  return typeof value === "object" ? (value as {val: number}).val : (value as Held)
}

const codes: Partial<Record<ErrorType, ErrorCode>> = Object.fromEntries(
  Object.entries(errorTypes).map(([code, type]) => [type, code]),
)

/** Makes every formula function of the catalogue available to engines built afterwards. Calling it twice does no harm. */
export function registerCatalogue() {
  const names = Object.fromEntries(catalogue.map(({name}) => [name, name]))
  HyperFormula.registerFunctionPlugin(CataloguePlugin as never, {enGB: names})
}
