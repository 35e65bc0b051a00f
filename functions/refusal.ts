/** Error codes of OpenFormula (OASIS 2011, table 4) that our functions answer with. */
export type ErrorCode = "#VALUE!" | "#NUM!" | "#N/A" | "#DIV/0!"

/** A calculation that cannot be made. `refused` is the sentence shown to the planner, without a full stop. */
export interface Refusal {
  readonly refused: string
  readonly code: ErrorCode
}

export const isRefusal = (result: unknown): result is Refusal =>
  typeof result === "object" && result !== null && "refused" in result

/** The given thing is of the wrong kind or shape: text for a number, a range for one value, sizes that differ. */
export const wrongKind = (refused: string): Refusal => ({refused, code: "#VALUE!"})

/** The number is outside its range, or the answer is impossible. */
export const outOfRange = (refused: string): Refusal => ({refused, code: "#NUM!"})

/** There is no answer yet, or none will come: not measured, never reached. */
export const notYet = (refused: string): Refusal => ({refused, code: "#N/A"})

export const dividesByZero = (refused: string): Refusal => ({refused, code: "#DIV/0!"})
