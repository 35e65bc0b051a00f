import type {Described, Result} from "../define"
import type {CellFault} from "../parameters"
import type {Refusal} from "../refusal"
import type {StandardParameter} from "./parameters"

type Parameters = Readonly<Record<string, StandardParameter<any>>>
type Arguments<P extends Parameters> = {
  readonly [K in keyof P]: P[K] extends StandardParameter<infer T> ? T : never
}

/** The value that stands in a cell of an argument, whatever it is: a date stays a date. All counted from 0. */
export interface Place {
  readonly argument: number
  readonly row: number
  readonly col: number
}

/** One function of the OpenFormula standard that the engine lacks, or has otherwise than the standard. */
export interface StandardFunction<P extends Parameters = Parameters> extends Described {
  /** The section of the standard, part 2 of OpenDocument 1.2. */
  readonly section: string
  readonly parameters: P
  calculate(given: Arguments<P>): Result | Place | Refusal | CellFault
}

/** Gives `calculate` the types of its arguments from `parameters`. */
export const defineStandard = <const P extends Parameters>(
  definition: Omit<StandardFunction<P>, "sources">,
): StandardFunction => ({...definition, sources: ["openFormula"]}) as unknown as StandardFunction

export const isPlace = (result: unknown): result is Place =>
  typeof result === "object" && result !== null && "argument" in result
