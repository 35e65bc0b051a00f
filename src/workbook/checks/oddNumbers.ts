import type {CellAddress, Column, Content, Sheet} from "../document"
import {questionedAt} from "../questioned"
import {cellsOfSheets, isDateFormat, type Checked} from "./checked"
import type {Finding} from "./finding"

/**
 * Typed and measured numbers that may be slips: outside what the column allows, questioned by its rule, or a zero where all
 * other measurements are above it. Nothing is dropped by itself.
 */
export function oddNumbers(checked: Checked): Finding[] {
  const {document, words} = checked
  const found: Finding[] = []
  const isNumber = (content: Content) => typeof content === "number"
  const numbers = cellsOfSheets(document, ({rule, kind, format}) =>
    (rule || kind === "measured") && kind !== "worked out" && !isDateFormat(format) ? isNumber : null,
  )
  for (const {at, sheet, column, content} of numbers) {
    if (typeof content !== "number") continue
    const odd =
      outsideRule(checked, at, column, content) ??
      zeroAmong(column, sheet, at, content) ??
      questioned(checked, at, content)
    if (!odd) continue
    const {why, meant, alike} = odd
    found.push({
      rule: "odd number",
      cells: [at],
      sentence: `${words.name(at)} is ${words.shown(at, content)}: ${why}`,
      ...(alike !== undefined && {alike}),
      ...(meant !== null && {
        fix: {
          words: `Put ${words.shown(at, meant)} in`,
          edit: {type: "enter", cells: [{at, content: meant}]} as const,
        },
      }),
    })
  }
  return found
}

interface Odd {
  readonly why: string
  /** What was probably meant. */
  readonly meant: number | null
  readonly alike?: string
}

function outsideRule({words}: Checked, at: CellAddress, {rule}: Column, number: number): Odd | null {
  const {least = -Infinity, most = Infinity} = rule ?? {}
  if (number < least) return {why: `the column takes ${words.shown(at, least)} or more`, meant: null}
  return number > most ? {why: `the column takes ${words.shown(at, most)} or less`, meant: null} : null
}

/** Chosen: among more numbers than this, and where at most this share are zeros, a zero looks like a blank. */
const FEW = 3
const MOST_ZEROS = 0.2

function zeroAmong({rule, kind}: Column, {rows}: Sheet, {col}: CellAddress, number: number): Odd | null {
  if (number !== 0 || kind !== "measured" || (rule?.least ?? 0) < 0) return null
  const numbers = rows.map((row) => row[col]).filter((one) => typeof one === "number")
  const zeros = numbers.filter((one) => one === 0).length
  const isRare = numbers.length > FEW && zeros <= MOST_ZEROS * numbers.length
  return isRare && numbers.every((one) => one >= 0)
    ? {why: "a zero is used as a measurement; leave the cell blank if it was not measured", meant: null}
    : null
}

function questioned({document, words}: Checked, at: CellAddress, number: number): Odd | null {
  const odd = questionedAt(document, at, number)
  if (!odd) return null
  const [from, to] = [words.shown(at, odd.from), words.shown(at, odd.to)]
  const why = odd.others
    ? `far from the ${odd.others} others (${from} to ${to} would be near)`
    : `outside the usual ${from} to ${to}`
  const ask = odd.meant === null ? "" : `; perhaps ${words.shown(at, odd.meant)} was meant`
  const alike = odd.others ? "lie far from the others of their name" : "lie outside the usual"
  return {why: why + ask, meant: odd.meant, ...(odd.meant === null && {alike})}
}
