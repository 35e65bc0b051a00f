import {CellError, HyperFormula, SimpleRangeValue, type FunctionPlugin} from "hyperformula"
import type {Arguments, EngineValue, State} from "../../../functions/engineValues"
import {nothingThere} from "./emptyRanges"
import {inAll, placesWhere, rawOf} from "./keptPlaces"

type Node = Arguments[number]
type Call = {readonly args: Arguments}
interface Whole {
  filter(call: Call, state: State): EngineValue
}
type Engine = new (...given: ConstructorParameters<typeof FunctionPlugin>) => FunctionPlugin & Whole

const Engine = HyperFormula.getFunctionPlugin("FILTER") as unknown as Engine & {
  implementedFunctions: typeof FunctionPlugin.implementedFunctions
}

/**
 * FILTER of a column by conditions on columns, as in FILTER(C:C;A:A=A1;ISNUMBER(C:C)), with the rows that meet each condition
 * kept with its column as long as that holds the same. The engine makes an array as long as the sheet for each part of each
 * condition of each cell that asks. Other forms it works out in its own way.
 */
class KeptFilters extends Engine {
  static override implementedFunctions = {FILTER: Engine.implementedFunctions["FILTER"]!}

  override filter(call: Call, state: State): EngineValue {
    const [taken, ...conditions] = call.args
    const values = taken && this.column(taken, state)
    if (!values || conditions.length === 0) return super.filter(call, state)
    const met: (readonly number[])[] = []
    for (const condition of conditions) {
      const places = this.meeting(condition, values, state)
      if (!places) return super.filter(call, state)
      met.push(places)
    }
    const rows = inAll(met).map((place) => [...values.data[place]!])
    return rows.length > 0 ? SimpleRangeValue.onlyValues(rows) : nothingThere()
  }

  /** The values of a column of more than one row; null for anything else. */
  private column(node: Node, state: State): SimpleRangeValue | null {
    if (!COLUMNS.has(String(node.type))) return null
    const values = this.evaluateAst(node, state)
    return values instanceof SimpleRangeValue && values.width() === 1 && values.height() > 1 ? values : null
  }

  /** The places that meet a condition; null where it is of another form, or goes over another number of rows. */
  private meeting(node: Node, values: SimpleRangeValue, state: State): readonly number[] | null {
    const {type, left, right, procedureName, args} = node as Condition
    const sign = SIGNS[type]
    const asked = sign ? left : procedureName === "ISNUMBER" && args?.length === 1 ? args[0] : undefined
    const column = asked && this.column(asked, state)
    if (!column?.sameDimensionsAs(values)) return null
    if (!sign) return placesWhere(column, "a number stands", null, () => isNumber)
    const than = this.evaluateAst(right!, state)
    if (than instanceof CellError || than instanceof SimpleRangeValue) return null
    const compare = (this.interpreter as unknown as Comparisons)[sign]
    const raw = rawOf(than)
    const what = `${sign} ${typeof raw} ${String(raw)}`
    return placesWhere(column, "a comparison holds", what, () => (held) => compare(held, than) === true)
  }
}

type Condition = Node & {
  readonly type: string
  readonly left?: Node
  readonly right?: Node
  readonly procedureName?: string
  readonly args?: Arguments
}

const COLUMNS: ReadonlySet<string> = new Set(["CELL_RANGE", "COLUMN_RANGE"])

/** How the engine compares, by the sign of a condition. */
const SIGNS: Readonly<Record<string, keyof Comparisons>> = {
  EQUALS_OP: "equalOp",
  NOT_EQUAL_OP: "notEqualOp",
  GREATER_THAN_OP: "greaterThanOp",
  LESS_THAN_OP: "lessThanOp",
  GREATER_THAN_OR_EQUAL_OP: "greaterThanOrEqualOp",
  LESS_THAN_OR_EQUAL_OP: "lessThanOrEqualOp",
}

type Comparisons = Record<
  "equalOp" | "notEqualOp" | "greaterThanOp" | "lessThanOp" | "greaterThanOrEqualOp" | "lessThanOrEqualOp",
  (held: unknown, than: unknown) => unknown
>

const isNumber = (held: unknown) => typeof rawOf(held) === "number"

/** Engines built afterwards keep what FILTER asks of columns. */
export function keepFilters() {
  HyperFormula.registerFunctionPlugin(KeptFilters as never, {enGB: {FILTER: "FILTER"}})
}
