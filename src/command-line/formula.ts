import {isoOf, FIRST_DAY, LAST_DAY} from "../../functions/calendar"
import type {Document} from "../workbook/document"
import {sentenceOf} from "../workbook/faults"
import {sheetText, tokens} from "../workbook/formula"
import {isFault, type Fault, type Value} from "../workbook/value"
import {Workbook} from "../workbook/workbook"
import {BAD_USAGE, readArguments, readWorkbook, runWhenCalled, type Shell} from "./common/shell"

const HELP = `Works out formulas as a cell of a workbook would.

  npm run -s formula -- '=SPEAR.HEAT(19,7,5)'             one formula or several
  npm run -s formula -- --workbook FILE '=Plantings!C2'   formulas over the sheets of a saved workbook
  npm run -s formula -- --json < formulas.txt             one formula a line, read when none is given

  --workbook FILE   the workbook whose sheets and named values the formulas may use
  --json            one object a line: {"formula", "value"} or {"formula", "error", "reason"}
  --help            this text

Between arguments stands ",", in decimals ".". A date goes in as "2026-04-25", in double quotes, and comes
out as 2026-04-25, a part of a day left off. The "=" may be left out. Empty lines are passed over.
Each value is printed as a line; of an array each row is a line, with tabs between the cells.
An error goes to standard error as its code and a sentence: #DIV/0! Divides by zero.
With --json errors stand among the values on standard output, blanks are null, arrays are lists of rows.
Exit status: 0, or 1 when a formula failed, or 2 when the call or the workbook cannot be used.`

/** A value ready to print: a date has become its ISO text. */
type Plain = number | string | boolean | null | Fault

type Rows = readonly (readonly Plain[])[]

interface Answer {
  readonly formula: string
  readonly value: Plain | Rows
}

const isRows = (value: Answer["value"]): value is Rows => Array.isArray(value)

/** Works out the formulas given as arguments, or else piped in, and prints what they give. */
export async function main(args: readonly string[], {stdin, out, err}: Shell): Promise<number> {
  const given = readArguments(args, {flags: ["--json", "--help"], values: ["--workbook"]})
  const refuse = (sentence: string) => {
    err(sentence)
    return BAD_USAGE
  }
  if ("refused" in given) return refuse(`${given.refused}. See --help.`)
  if (given.flags.has("--help")) {
    out(HELP)
    return 0
  }
  const path = given.values.get("--workbook")
  const workbook = path === undefined ? null : readWorkbook(path)
  if (workbook && "refused" in workbook) return refuse(`${workbook.refused}.`)
  const formulas = (given.words.length ? given.words : await linesOf(stdin)).flatMap(
    (one) => one.trim() || [],
  )
  if (formulas.length === 0) return refuse("There is no formula to work out. See --help.")

  const answers = workOut(formulas, workbook?.document ?? null)
  for (const answer of answers)
    if (given.flags.has("--json")) out(jsonOf(answer))
    else print(answer, out, err)
  return answers.some(hasFailed) ? 1 : 0
}

async function linesOf(stdin: Shell["stdin"]): Promise<readonly string[]> {
  const decoder = new TextDecoder()
  let text = ""
  for await (const piece of stdin ?? [])
    text += typeof piece === "string" ? piece : decoder.decode(piece, {stream: true})
  return (text + decoder.decode()).split("\n")
}

/** Every formula stands on a sheet of its own, so that arrays have room and dates keep their kind. */
function workOut(given: readonly string[], document: Document | null): readonly Answer[] {
  const own = document?.sheets ?? []
  const formulas = given.map((one) => (one.startsWith("=") ? one : `=${one}`))
  const sheets = formulas.map((formula, i) => ({
    name: `[${i}]`, // no saved sheet can have this name
    group: "Formulas",
    columns: [{heading: "Formula", kind: "worked out"} as const],
    rows: [[spilling(formula)]],
  }))
  const workbook = new Workbook({name: "Formulas", ...document, sheets: [...own, ...sheets]})
  return formulas.map((formula, i) => ({
    formula: given[i]!,
    value:
      (workbook.normalized(formula) && withoutSheet(formula, document)) ??
      valueOf(workbook, formula, own.length + i),
  }))
}

/** The engine shows no range in a cell, but it does show a choice that comes out as the range. */
const spilling = (formula: string) => {
  const [, reference, ...others] = tokens(formula).filter(({kind}) => kind !== "space")
  return reference?.kind === "reference" && others.length === 0 ? `=IF(TRUE(),${reference.text})` : formula
}

/** A reference that names no sheet would point into the sheet of the formula itself. */
function withoutSheet(formula: string, document: Document | null): Fault | null {
  const found = tokens(formula).find(({kind, text}) => kind === "reference" && !text.includes("!"))
  if (!found) return null
  const reason = document
    ? `${found.text} does not say on which sheet: write ${sheetText(document.sheets[0]!.name)}!${found.text}`
    : `${found.text} points into a sheet, but no workbook is given`
  return {code: "#REF!", reason, began: null}
}

function valueOf(workbook: Workbook, formula: string, sheet: number): Answer["value"] {
  const result = workbook.evaluate(formula, sheet)
  const plain = (value: Value, row: number, col: number): Plain => {
    const isDay = typeof value === "number" && value >= FIRST_DAY && value < LAST_DAY + 1
    return isDay && workbook.isDateAt({sheet, row, col}) ? isoOf(value) : value
  }
  if (Array.isArray(result))
    return result.map((cells: Value[], row) => cells.map((one, col) => plain(one, row, col)))
  return plain(workbook.valueAt({sheet, row: 0, col: 0}), 0, 0)
}

const cellsOf = ({value}: Answer): readonly Plain[] => (isRows(value) ? value.flat() : [value])

const hasFailed = (answer: Answer) => cellsOf(answer).some(isFault)

function print(answer: Answer, out: Shell["out"], err: Shell["err"]) {
  const {value} = answer
  if (isRows(value)) for (const row of value) out(row.map(textOf).join("\t"))
  else if (!isFault(value)) out(textOf(value))
  const sentences = cellsOf(answer).flatMap((one) => (isFault(one) ? `${one.code} ${sentenceOf(one)}.` : []))
  for (const sentence of new Set(sentences)) err(sentence)
}

function textOf(value: Plain): string {
  if (isFault(value)) return value.code
  return typeof value === "boolean" ? String(value).toUpperCase() : String(value ?? "")
}

function jsonOf({formula, value}: Answer): string {
  const faultOf = (fault: Fault) => ({error: fault.code, reason: sentenceOf(fault)})
  if (isFault(value)) return JSON.stringify({formula, ...faultOf(value)})
  return JSON.stringify({formula, value}, (_, held: unknown) => (isFault(held) ? faultOf(held) : held))
}

await runWhenCalled("formula.ts", main)
