import {CellError, ErrorType, HyperFormula, SimpleRangeValue, type FunctionPlugin} from "hyperformula"
import type {Arguments, EngineValue, State} from "../../../functions/engineValues"

type Call = {readonly args: Arguments}
/** How the engine itself works such a function out: with all its arguments. */
interface Eager {
  conditionalIf(call: Call, state: State): EngineValue
  iferror(call: Call, state: State): EngineValue
  ifna(call: Call, state: State): EngineValue
}
type Engine = new (...given: ConstructorParameters<typeof FunctionPlugin>) => FunctionPlugin & Eager

const Engine = HyperFormula.getFunctionPlugin("IF") as unknown as Engine & {
  implementedFunctions: typeof FunctionPlugin.implementedFunctions
}
const {IF, IFERROR, IFNA} = Engine.implementedFunctions
const CONDITION = IF!.parameters![0]!

/**
 * IF, IFERROR and IFNA that work out only the branch they give, as the standard has it (OpenFormula 6.15.4 to 6.15.6). The
 * engine works out both, so that a cell costs all that it could show. Formulas that fill several cells, and branches that
 * are left out, are treated in the engine's own way.
 */
class OneBranch extends Engine {
  static override implementedFunctions = {IF: IF!, IFERROR: IFERROR!, IFNA: IFNA!}

  override conditionalIf(call: Call, state: State): EngineValue {
    const {args} = call
    if (args.length < 2 || args.length > 3 || args.some(isLeftOut) || fillsCells(state))
      return super.conditionalIf(call, state)
    const asked = this.evaluateAst(args[0]!, state)
    if (asked instanceof CellError) return asked
    const isTrue = asked instanceof SimpleRangeValue ? null : this.coerceToType(asked, CONDITION, state)
    if (typeof isTrue !== "boolean") return super.conditionalIf(call, state)
    const branch = args[isTrue ? 1 : 2]
    return branch ? this.evaluateAst(branch, state) : false
  }

  override iferror(call: Call, state: State): EngineValue {
    return this.unless(call, state, () => true) ?? super.iferror(call, state)
  }

  override ifna(call: Call, state: State): EngineValue {
    return this.unless(call, state, ({type}) => type === ErrorType.NA) ?? super.ifna(call, state)
  }

  private unless({args}: Call, state: State, isMeant: (fault: CellError) => boolean): EngineValue | null {
    if (args.length !== 2 || args.some(isLeftOut) || fillsCells(state)) return null
    const tried = this.evaluateAst(args[0]!, state)
    if (tried instanceof SimpleRangeValue) return null
    return tried instanceof CellError && isMeant(tried) ? this.evaluateAst(args[1]!, state) : tried
  }
}

const isLeftOut = ({type}: Arguments[number]) => String(type) === "EMPTY"

const fillsCells = ({formulaVertex}: State) => formulaVertex !== undefined && "array" in formulaVertex

/** Engines built afterwards work out only the branches they give. */
export function workOutOneBranch() {
  HyperFormula.registerFunctionPlugin(OneBranch as never, {
    enGB: {IF: "IF", IFERROR: "IFERROR", IFNA: "IFNA"},
  })
}
