import {tokens, type Token} from "../formula"
import {decimalOf} from "../region"
import {pieceOnScreen} from "../screenFormula"
import {writtenName, type Checked} from "./checked"
import type {Finding} from "./finding"

/**
 * Numbers that a formula calculates with: they belong in a cell or a named value, where they can be seen, changed and
 * given a source. Told once for a column. Not among them: whole arguments of a function, such as a count of decimals
 * or a share, what is compared, powers, places in a text or a range, small whole steps such as six days more, and the
 * numbers of the calendar and of units.
 */
export function typedNumbers(checked: Checked): Finding[] {
  return checked.written.flatMap((written): Finding[] => {
    const numbers = calculatedWith(written.formula)
    if (numbers.length === 0) return []
    const decimal = decimalOf(checked.document)
    const shown = numbers.map((text) => pieceOnScreen({kind: "number", text}, decimal))
    const typed = numbers.length === 1 ? "the number" : "the numbers"
    return [
      {
        rule: "number in a formula",
        cells: [written.at],
        sentence: `${writtenName(checked, written)} has ${typed} ${shown.join(decimal === "," ? "; " : ", ")} typed inside its formula: a named value could say what that is and where it is from`,
      },
    ]
  })
}

/** Chosen: counts, days, weeks, months, hours, minutes and seconds, hundreds, and units that are thousands of each other. */
const KNOWN = new Set([0, 1, 2, 7, 10, 12, 24, 52, 60, 100, 365, 366, 1000, 3600, 10_000, 86_400, 1_000_000])

/** Functions whose numbers are places, not amounts. */
const PLACES = new Set(["MID", "LEFT", "RIGHT", "INDEX", "CHOOSE", "OFFSET"])

/** Chosen: a whole number up to this that is added or taken away is a step of so many days, months or rows. */
const LARGEST_STEP = 12

/** The numbers of a formula that stand beside +, −, * or /, once each. */
export function calculatedWith(formula: string): readonly string[] {
  const written = tokens(formula).filter(({kind}) => kind !== "space")
  const found = new Set<string>()
  const within: string[] = [] // the functions, or nothing, whose brackets are open
  for (const [i, {kind, text}] of written.entries()) {
    if (text === "(")
      within.push(written[i - 1]?.kind === "function" ? written[i - 1]!.text.toUpperCase() : "")
    if (text === ")") within.pop()
    if (kind !== "number" || KNOWN.has(Number(text)) || within.some((one) => PLACES.has(one))) continue
    const [before, after] = [written[i - 1], written[i + 1]]
    const isPower = before?.text === "^" || (before?.text === "-" && written[i - 2]?.text === "^")
    const hasSign = isArithmetic(before) && !isOperand(written[i - 2])
    const joined = isArithmetic(hasSign ? written[i - 2] : before) || isArithmetic(after)
    const isStep =
      Number.isInteger(Number(text)) && Number(text) <= LARGEST_STEP && !isFactor(before) && !isFactor(after)
    if (joined && !isPower && !isStep) found.add(text)
  }
  return [...found]
}

const isArithmetic = (token: Token | undefined) => token?.kind === "sign" && /^[-+*/^]$/.test(token.text)

const isFactor = (token: Token | undefined) => token?.kind === "sign" && /^[*/^]$/.test(token.text)

/** Whether what stands before a sign makes it an operation, not the sign of a number. */
const isOperand = (token: Token | undefined) =>
  token !== undefined &&
  (["number", "reference", "name", "text"].includes(token.kind) || [")", "%", "}"].includes(token.text))
