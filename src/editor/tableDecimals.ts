import type {Decimal} from "../workbook/region"
import {numberText} from "./display"
import type {Question, Store} from "./store"

/** A number with decimals behind the sign; the other sign, a space or an apostrophe may part its thousands. */
const DECIMAL = {
  ",": /^[-+\u2212]?(\d+|[1-9]\d{0,2}([.\s'\u2019]\d{3})+),\d+$/,
  ".": /^[-+\u2212]?(\d+|[1-9]\d{0,2}([,\s'\u2019]\d{3})+)\.\d+$/,
}

/** A number that may be one with groups of thousands behind the sign. */
const GROUPED = {",": /^[-+\u2212]?[1-9]\d{0,2}(,\d{3})+$/, ".": /^[-+\u2212]?[1-9]\d{0,2}(\.\d{3})+$/}

const OTHER = {",": ".", ".": ","} as const

/** A number as a table may have it, with the sign of money before it and a unit behind: "€ ", "1 204,5", "/kg". */
const NUMBER =
  /^\s*(\p{Sc}\s*)?([-+\u2212]?\d[\d.,]*(?:[\s'\u2019]\d{3}(?!\d)[\d.,]*)*)(\s*[^\d\s.,]\D*)?\s*$/u

/** A number of a table whose decimals stand behind `taken`, with the workbook's sign there; null where it needs none. */
export function withOwnDecimal(text: string, taken: Decimal | null): string | null {
  const [, money = "", number, unit = ""] = NUMBER.exec(text) ?? []
  if (taken === null || number === undefined) return null
  const own = OTHER[taken]
  const isOther = DECIMAL[taken].test(number) || GROUPED[own].test(number)
  return isOther ? money + number.replaceAll(own, "").replace(taken, own) + unit : null
}

/** A date parted by points, which are no decimals: "25.05.2026", "25.5.". */
const POINTED_DATE = /^\d{1,2}\.\d{1,2}\.(\d{2}|\d{4})?$/

/**
 * The sign before decimals that a table has, where that is not the workbook's: some number can be read no other way, and
 * none has the workbook's own. Where one has both, as in 1.204,5, the workbook's own parts thousands in the others too.
 */
export function otherDecimal(rows: readonly (readonly string[])[], own: Decimal): Decimal | null {
  const other = OTHER[own]
  const numbers = numbersIn(rows)
  const clear = numbers.filter((text) => DECIMAL[other].test(text) && !GROUPED[other].test(text))
  const isParted = clear.some((text) => text.includes(own))
  const hasOwn = numbers.some(
    (text) =>
      text.includes(own) &&
      /\d/.test(text.slice(text.indexOf(own) + 1)) &&
      !DECIMAL[other].test(text) &&
      !(isParted && GROUPED[own].test(text)),
  )
  return clear.length && !hasOwn ? other : null
}

const numbersIn = (rows: readonly (readonly string[])[]) =>
  rows
    .flat()
    .flatMap((text) => NUMBER.exec(text)?.[2] ?? [])
    .filter((text) => !POINTED_DATE.test(text))

/**
 * A number of a table that can be read two ways, as 1,500 can, where none of the table tells which sign stands before decimals;
 * else null.
 */
export function twoNumbers(rows: readonly (readonly string[])[], own: Decimal): string | null {
  if (otherDecimal(rows, own) !== null) return null
  const numbers = numbersIn(rows)
  const tells = (text: string) => text.includes(own) || text.split(OTHER[own]).length > 2
  return numbers.some(tells) ? null : (numbers.find((text) => GROUPED[OTHER[own]].test(text)) ?? null)
}

/** The question which of the two it is; `again` reads the table anew with the answer, which holds for this table alone. */
export function whichDecimal(
  written: string,
  own: Decimal,
  again: (decimal: Decimal) => (store: Store) => void,
): Question {
  const bare = written.replace("\u2212", "-")
  const whole = numberText(Number(bare.replace(OTHER[own], "")), undefined, own)
  const parted = numberText(Number(bare.replace(OTHER[own], ".")), undefined, own)
  return {
    asks: `Is “${written}” ${whole} or ${parted}? The answer holds for all that is pasted now.`,
    rather: {words: whole, edit: null, again: again(own)},
    yes: parted,
    edit: null,
    again: again(OTHER[own]),
  }
}
