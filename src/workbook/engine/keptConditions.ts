import {
  CellError,
  FunctionArgumentType,
  HyperFormula,
  SimpleRangeValue,
  type FunctionPlugin,
} from "hyperformula"
import type {Arguments, EngineValue, State} from "../../../functions/engineValues"
import {inAll, placesWhere, rawOf} from "./keptPlaces"

type Compose = (one: unknown, other: unknown) => unknown
type Given = readonly [EngineValue[], string, unknown, Compose, (held: unknown) => unknown]

interface Aggregating {
  /** What is taken together; ranges and conditions in turn; the name; what nothing is; how two, and how one is taken. */
  computeConditionalAggregationFunction(values: SimpleRangeValue, ...given: Given): EngineValue
}
type Engine = (new (
  ...given: ConstructorParameters<typeof FunctionPlugin>
) => FunctionPlugin & Aggregating) & {
  implementedFunctions: typeof FunctionPlugin.implementedFunctions
}
const Engine = HyperFormula.getFunctionPlugin("SUMIFS") as unknown as Engine

/**
 * SUMIFS and its kin, with the rows that meet a condition kept with the range as long as it holds the same. The engine goes
 * through all rows for each cell that asks.
 *
 * One value is another than the engine's: to it a range of one cell, such as a column of a sheet with one row, is that
 * cell, and an error there one of the call. Here it is a range as any other, in which an error meets no condition.
 */
class KeptConditions extends Engine {
  static override implementedFunctions = Engine.implementedFunctions

  protected override evaluateArguments(args: [...Arguments], state: State, metadata: Metadata) {
    const parameters = this.buildMetadataForEachArgumentValue(args.length, metadata)
    const given = super.evaluateArguments(args, state, metadata)
    for (const [i, one] of given.entries()) {
      const isRange =
        parameters[i]?.argumentType === FunctionArgumentType.RANGE && POINTS.has(String(args[i]!.type))
      if (isRange && one[0] instanceof CellError) one[0] = SimpleRangeValue.fromScalar(one[0])
    }
    return given
  }

  override computeConditionalAggregationFunction(values: SimpleRangeValue, ...given: Given): EngineValue {
    const [conditions, , nothing, compose, take] = given
    const meeting: (readonly number[])[] = []
    for (let i = 0; i < conditions.length; i += 2) {
      const range = conditions[i]
      const met =
        range instanceof SimpleRangeValue && range.sameDimensionsAs(values)
          ? this.meeting(range, conditions[i + 1])
          : null
      // The engine says what is wrong.
      if (!met) return super.computeConditionalAggregationFunction(values, ...given)
      meeting.push(met)
    }
    const {data} = values
    const width = values.width()
    let all = nothing
    for (const place of inAll(meeting)) {
      const held = data[Math.floor(place / width)]![place % width]
      all = compose(all, take(held))
    }
    return all as EngineValue
  }

  /** The places of a range that meet a condition, rising; null when it is none. */
  private meeting(range: SimpleRangeValue, condition: EngineValue | undefined): readonly number[] | null {
    return placesWhere(range, "a condition is met", condition, () => {
      const read = this.read(condition)
      return read ? (held) => read.lambda(rawOf(held) as never) : null
    })
  }

  private readonly conditions = new Map<unknown, Condition>()

  /** A condition as the engine reads it, which takes longer than to try it: a formula may ask one for each row of a table. */
  private read(condition: EngineValue | undefined): Condition {
    const found = this.conditions.get(condition)
    if (found) return found
    const read = this.interpreter.criterionBuilder.fromCellValue(condition as never, this.arithmeticHelper)
    if (this.conditions.size >= MOST_READ) this.conditions.clear()
    if (read) this.conditions.set(condition, read)
    return read
  }
}

type Metadata = Parameters<FunctionPlugin["runFunctionWithReferenceArgument"]>[2]

/** What an argument is called that points at cells; of one that points at none any more nothing can be told. */
const POINTS: ReadonlySet<string> = new Set(["CELL_REFERENCE", "CELL_RANGE", "COLUMN_RANGE", "ROW_RANGE"])

type Condition = ReturnType<FunctionPlugin["interpreter"]["criterionBuilder"]["fromCellValue"]>

const MOST_READ = 10_000 // chosen

// A plugin has to have the methods of its functions itself.
for (const {method} of Object.values(Engine.implementedFunctions))
  Object.defineProperty(KeptConditions.prototype, method, {value: Reflect.get(Engine.prototype, method)})

/** Engines built afterwards keep what meets a condition. */
export function keepConditions() {
  const names = Object.keys(Engine.implementedFunctions)
  HyperFormula.registerFunctionPlugin(KeptConditions as never, {
    enGB: Object.fromEntries(names.map((name) => [name, name])),
  })
}
