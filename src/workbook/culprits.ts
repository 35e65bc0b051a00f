import type {CellAddress} from "./document"
import {tokens} from "./formula"
import {originOf, type Input, type RowName} from "./trace"
import type {Fault} from "./value"
import type {Workbook} from "./workbook"

/**
 * The cells by which a formula fails, as far as they can be told one by one: what it divides by, where that is zero or
 * blank; text, where a number is needed. Ranges, and what is worked out within the formula, are not told.
 */
export function culpritsOf(
  workbook: Pick<Workbook, "document" | "valueAt">,
  at: CellAddress,
  {code, reason}: Pick<Fault, "code" | "reason">,
  rowName?: RowName,
): readonly Input[] {
  const {formula, inputs} = originOf(workbook, at, rowName)
  const single = inputs.filter(({cells}) => cells.length === 1)
  const valueOf = ({cells}: Input) => workbook.valueAt(cells[0]!)
  if (code === "#DIV/0!") {
    const pieces = tokens(formula ?? "").filter(({kind}) => kind !== "space")
    const divisors = new Set(pieces.filter((_, i) => pieces[i - 1]?.text === "/").map(({text}) => text))
    return single.filter((one) => divisors.has(one.text) && [0, null, ""].includes(valueOf(one) as null))
  }
  if (reason !== "Value cannot be coerced to number.") return []
  return single.filter((one) => {
    const value = valueOf(one)
    return typeof value === "string" && !Number.isFinite(Number(value)) // "" counts as 0
  })
}
