import type {CellError} from "hyperformula"
import {FunctionArgumentType, FunctionPlugin, HyperFormula} from "hyperformula"
import {catalogue} from "./catalogue"
import {answer, unitGiven, type FormulaFunction} from "./define"
import {errorOf, errorOfFault, givenOf, noFiniteAnswer, type Arguments, type State} from "./engineValues"
import {CellFault} from "./parameters"
import {isRefusal} from "./refusal"

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
      const values = args.map((arg) => givenOf(this.evaluateAst(arg, state), this.dependencyGraph))
      const result = answer(definition, values)
      if (result instanceof CellFault) return result.origin as CellError
      if (isRefusal(result)) return errorOf(result)
      if (typeof result === "string") return result
      if (!Number.isFinite(result)) return noFiniteAnswer(definition.name)
      return unitGiven(definition, values[0]) === "date" ? this.dateOf(result) : result
    } catch (fault) {
      return errorOfFault(definition.name, fault)
    }
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

const MOST_DATES = 10_000

/** Makes every formula function of the catalogue available to engines built afterwards. Calling it twice does no harm. */
export function registerCatalogue() {
  const names = Object.fromEntries(catalogue.map(({name}) => [name, name]))
  HyperFormula.registerFunctionPlugin(CataloguePlugin as never, {enGB: names})
}
