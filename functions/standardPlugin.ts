import {CellError, FunctionArgumentType, FunctionPlugin, HyperFormula} from "hyperformula"
import {parameterFor} from "./described"
import {
  engineValueOf,
  errorOf,
  errorOfFault,
  givenOf,
  noFiniteAnswer,
  standingAt,
  type Arguments,
  type EngineValue,
  type State,
} from "./engineValues"
import {CellFault, type Held} from "./parameters"
import {isRefusal} from "./refusal"
import {standardFunctions} from "./standard/catalogue"
import {isPlace, type StandardFunction} from "./standard/define"
import type {Condition, Conversion, Host, StandardParameter} from "./standard/parameters"

const argumentTypes: Record<Conversion, FunctionArgumentType> = {
  number: FunctionArgumentType.NUMBER,
  text: FunctionArgumentType.STRING,
  logical: FunctionArgumentType.BOOLEAN,
  value: FunctionArgumentType.NOERROR,
  "value or error": FunctionArgumentType.SCALAR,
  cells: FunctionArgumentType.ANY,
}

/** The engine's view of the standard functions that are added to its own: it converts and counts their arguments. */
class StandardPlugin extends FunctionPlugin implements Host {
  static {
    this.implementedFunctions = {}
    for (const definition of standardFunctions) {
      const parameters = Object.values(definition.parameters)
      this.implementedFunctions[definition.name] = {
        method: definition.name,
        parameters: parameters.map(argumentOf),
        repeatLastArgs: parameters.filter(({repeats}) => repeats).length,
        ...(definition.returns.unit === "date" && {returnNumberType: "NUMBER_DATE" as never}),
      }
      Object.defineProperty(this.prototype, definition.name, {
        value(this: StandardPlugin, call: {args: Arguments}, state: State) {
          return this.runFunction(call.args, state, this.metadata(definition.name), (...given) =>
            this.answer(definition, given),
          )
        },
      })
    }
  }

  answer(definition: StandardFunction, given: readonly (EngineValue | undefined)[]): EngineValue {
    try {
      const read = this.read(definition, given)
      if (read instanceof CellError) return read
      const result = definition.calculate(read)
      if (result instanceof CellFault) return result.origin as CellError
      if (isRefusal(result)) return errorOf(result)
      if (isPlace(result)) return standingAt(given[result.argument]!, result.row, result.col)
      return typeof result === "string" || Number.isFinite(result) ? result : noFiniteAnswer(definition.name)
    } catch (fault) {
      return errorOfFault(definition.name, fault)
    }
  }

  private read(definition: StandardFunction, given: readonly (EngineValue | undefined)[]) {
    const entries = Object.entries(definition.parameters)
    const read: Record<string, unknown> = {}
    for (const [i, value] of given.entries()) {
      const [key, parameter] = entries[parameterFor(definition.parameters, i)!]!
      const one = this.readOne(parameter, value)
      if (one instanceof CellFault && parameter.conversion !== "value or error")
        return one.origin as CellError
      if (isRefusal(one)) return errorOf(one)
      if (parameter.repeats) ((read[key] ??= []) as unknown[]).push(one)
      else read[key] = one
    }
    return read
  }

  private readOne(parameter: StandardParameter<unknown>, value: EngineValue | undefined) {
    const held = value === undefined ? null : givenOf(value, this.dependencyGraph)
    return held === null && parameter.absent ? parameter.absent.value : parameter.read(held, this)
  }

  conditionOf(held: Held): Condition | null {
    const {criterionBuilder} = this.interpreter
    const found = criterionBuilder.fromCellValue(engineValueOf(held) as never, this.arithmeticHelper)
    return found ? (one) => found.lambda(engineValueOf(one) as never) : null
  }
}

/** An argument that is left out between two commas stands for its default, not for 0. */
function argumentOf({conversion, absent}: StandardParameter<unknown>) {
  const argumentType = argumentTypes[conversion]
  if (!absent) return {argumentType}
  return absent.value === null
    ? {argumentType, optionalArg: true}
    : {argumentType, defaultValue: absent.value as number | string | boolean, emptyAsDefault: true}
}

/**
 * Gives engines built afterwards the standard functions they lack, and the standard's own in place of those of theirs
 * that go wrong: CEILING, DATEDIF, EDATE, FLOOR, INT, XNPV and the sums of squares of pairs. Calling it twice does no harm.
 */
export function registerStandardFunctions() {
  const names = Object.fromEntries(standardFunctions.map(({name}) => [name, name]))
  HyperFormula.registerFunctionPlugin(StandardPlugin as never, {enGB: names})
}
