import {formulaIn} from "./cells"
import type {CellAddress, Document} from "./document"
import {referenceOf, tokens, type Reference, type Token} from "./formula"
import {namesIn} from "./names"
import {cellsOf, sheetOf, type RowsTaken} from "./trace"
import type {Value} from "./value"
import type {Workbook} from "./workbook"

type Read = Pick<Workbook, "document" | "valueAt">

/** The pieces of one argument, from the first up to before the last. */
interface Span {
  readonly from: number
  readonly to: number
}
interface Call {
  readonly name: string
  readonly args: readonly Span[]
}

/**
 * Which rows of its ranges a formula takes, by the reference as written: the one that INDEX picks, by a number or by MATCH, and
 * those that meet the conditions of SUMIFS and its kin. A range that the formula takes whole anywhere, or by a condition that
 * is worked out within it, is not among them.
 */
export function rowsTaken(workbook: Read, at: CellAddress): RowsTaken {
  const pieces = tokens(formulaIn(workbook.document, at) ?? "").filter(({kind}) => kind !== "space")
  const reading = {workbook, at, pieces, calls: callsIn(pieces)}
  const byPiece = new Map<number, readonly number[]>()
  for (const call of reading.calls.values()) {
    const taken = call.name === "INDEX" ? picked(reading, call) : chosen(reading, call)
    for (const [piece, rows] of taken) byPiece.set(piece, rows)
  }
  const all = new Map<string, Set<number> | null>()
  for (const [i, {kind, text}] of pieces.entries()) {
    if (kind !== "reference") continue
    const [rows, before] = [byPiece.get(i), all.get(text)]
    all.set(text, rows === undefined || before === null ? null : new Set([...(before ?? []), ...rows]))
  }
  return new Map([...all].flatMap(([text, rows]) => (rows ? [[text, rows]] : [])))
}

interface Reading {
  readonly workbook: Read
  readonly at: CellAddress
  readonly pieces: readonly Token[]
  /** By the piece that is the function's name. */
  readonly calls: ReadonlyMap<number, Call>
}

type Taken = readonly (readonly [piece: number, rows: readonly number[]])[]

/** The row that INDEX picks of its range, and of the range that its MATCH looks in. */
function picked(reading: Reading, {args: [range, which]}: Call): Taken {
  if (!range || !which || !isRange(reading, range)) return []
  const match = reading.calls.get(which.from)
  if (match?.name !== "MATCH") {
    const number = valueOf(reading, which)
    return typeof number === "number" ? [[range.from, [firstRow(reading, range) + number - 1]]] : []
  }
  const [key, among, how] = match.args
  if (!key || !among || !how || !isRange(reading, among)) return []
  const [wanted, place] = [valueOf(reading, key), reading.pieces[how.from]?.text]
  if (wanted === undefined || (place !== "0" && place !== "1")) return []
  const values = valuesIn(reading, among)
  const found =
    place === "0"
      ? values.findIndex((value) => isEqual(value, wanted))
      : values.findLastIndex((value) => typeof value === typeof wanted && value! <= wanted!)
  const rows = (of: Span) => (found < 0 ? [] : [firstRow(reading, of) + found])
  return [
    [range.from, rows(range)],
    [among.from, rows(among)],
  ]
}

/** The functions that take the rows that meet conditions: how many arguments stand before the first of these. */
const BEFORE_CONDITIONS: Readonly<Record<string, number>> = {
  COUNTIF: 0,
  COUNTIFS: 0,
  SUMIFS: 1,
  AVERAGEIFS: 1,
  MINIFS: 1,
  MAXIFS: 1,
}

function chosen(reading: Reading, {name, args}: Call): Taken {
  const before = BEFORE_CONDITIONS[name]
  const ranges = args.filter((_, i) => i < before! || (i - before!) % 2 === 0)
  if (before === undefined || !ranges.every((range) => isRange(reading, range))) return []
  let places: readonly number[] | null = null
  for (let i = before; i + 1 < args.length; i += 2) {
    const meets = conditionOf(reading, args[i + 1]!)
    if (!meets) return []
    const values = valuesIn(reading, args[i]!)
    const met = [...values.keys()].filter((place) => meets(values[place]!))
    places = places === null ? met : places.filter((place) => met.includes(place))
  }
  return ranges.map((range) => [range.from, (places ?? []).map((place) => firstRow(reading, range) + place)])
}

type Meets = (value: Value) => boolean

/** A condition that is one value, or a sign and a value, as in "<="&A1; null for any other. */
function conditionOf(reading: Reading, {from, to}: Span): Meets | null {
  const [first, join] = [reading.pieces[from]!, reading.pieces[from + 1]]
  const text = first.kind === "text" ? first.text.slice(1, -1) : null
  const [, sign = "", rest = ""] = /^(<>|<=|>=|[<>=])?(.*)$/.exec(text ?? "")!
  const isJoined = text !== null && rest === "" && join?.text === "&"
  const wanted =
    text === null || isJoined
      ? valueOf(reading, {from: isJoined ? from + 2 : from, to})
      : rest !== "" && !Number.isNaN(Number(rest))
        ? Number(rest)
        : rest
  if (wanted === undefined || wanted === null || wanted === "" || to - from > (isJoined ? 3 : 1)) return null
  if (sign === "" || sign === "=") return (value) => isEqual(value, wanted)
  if (sign === "<>") return (value) => !isEqual(value, wanted)
  if (typeof wanted !== "number") return null
  const compare = COMPARES[sign]!
  return (value) => typeof value === "number" && compare(value, wanted)
}

const COMPARES: Readonly<Record<string, (a: number, b: number) => boolean>> = {
  "<": (a, b) => a < b,
  "<=": (a, b) => a <= b,
  ">": (a, b) => a > b,
  ">=": (a, b) => a >= b,
}

const isEqual = (a: Value, b: Value) =>
  typeof a === "string" && typeof b === "string" ? a.toLowerCase() === b.toLowerCase() : a === b

/** The value of an argument that is one cell, name, number or text; undefined for any other. */
function valueOf({workbook, at, pieces}: Reading, {from, to}: Span): Value | undefined {
  const {kind, text} = pieces[from] ?? NOTHING
  if (to - from !== 1) return undefined
  if (kind === "number") return Number(text)
  if (kind === "text") return text.slice(1, -1)
  if (kind === "name") {
    const named = namesIn(workbook.document).find(({name}) => name.toLowerCase() === text.toLowerCase())
    return named && workbook.valueAt(named.at)
  }
  if (kind !== "reference") return undefined
  const [cell, ...others] = cellsIn(workbook.document, at, referenceOf(text))
  return cell && others.length === 0 ? workbook.valueAt(cell) : undefined
}

const NOTHING: Token = {kind: "unknown", text: ""}

/** Whether an argument is a range of one column. */
function isRange({pieces}: Reading, {from, to}: Span): boolean {
  if (to - from !== 1 || pieces[from]!.kind !== "reference") return false
  const reference = referenceOf(pieces[from]!.text)
  return reference.isRange && reference.from.col !== null && reference.from.col === reference.to.col
}

const firstRow = ({pieces}: Reading, {from}: Span) => referenceOf(pieces[from]!.text).from.row ?? 0

function valuesIn({workbook, at, pieces}: Reading, {from}: Span): readonly Value[] {
  return cellsIn(workbook.document, at, referenceOf(pieces[from]!.text)).map((cell) => workbook.valueAt(cell))
}

/** All cells of a reference, whichever planting the formula's row is about. */
function cellsIn(document: Document, at: CellAddress, reference: Reference): readonly CellAddress[] {
  const sheet = sheetOf(document, at, reference)
  return sheet < 0 ? [] : cellsOf(document, {...at, sheet}, sheet, reference)
}

/** The calls of functions in a formula, by the piece of their name. */
function callsIn(pieces: readonly Token[]): ReadonlyMap<number, Call> {
  const calls = new Map<number, Call>()
  const open: {name: number | null; from: number; args: Span[]}[] = []
  for (const [i, {kind, text}] of pieces.entries()) {
    if (kind !== "sign") continue
    if (text === "(" || text === "{") {
      const isCall = text === "(" && pieces[i - 1]?.kind === "function"
      open.push({name: isCall ? i - 1 : null, from: i + 1, args: []})
      continue
    }
    const inner = open.at(-1)
    if (!inner || (text !== "," && text !== ")" && text !== "}")) continue
    inner.args.push({from: inner.from, to: i})
    inner.from = i + 1
    if (text === ",") continue
    open.pop()
    if (inner.name !== null)
      calls.set(inner.name, {name: pieces[inner.name]!.text.toUpperCase(), args: inner.args})
  }
  return calls
}
