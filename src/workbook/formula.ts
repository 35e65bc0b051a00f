import type {Decimal} from "./region"

/** One piece of a formula's text. All pieces, joined, give the text back. */
export interface Token {
  readonly kind:
    "space" | "text" | "number" | "reference" | "function" | "name" | "sign" | "error" | "unknown"
  readonly text: string
}

/** A reference as written: the sheet if it names one, and its corners. A whole column has no row, a whole row no column. */
export interface Reference {
  readonly sheet: string | null
  readonly from: Corner
  /** Equal to `from` for a single cell. */
  readonly to: Corner
  /** Written with a colon: a range of one cell, as in "B7:B7", is not the same as the cell. */
  readonly isRange: boolean
}
export interface Corner {
  readonly col: number | null
  readonly row: number | null
  readonly colFixed: boolean
  readonly rowFixed: boolean
}

const SHEET = String.raw`(?:'(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!`
const OWN_SHEET = new RegExp(`^${SHEET}`, "u")
const CELL = String.raw`\$?[A-Za-z]{1,3}\$?[1-9][0-9]*`
const COLUMN = String.raw`\$?[A-Za-z]{1,3}`
const ROW = String.raw`\$?[1-9][0-9]*`
// The sheet may be said again at the second corner: "Plan!A1:Plan!A3".
const REFERENCE = String.raw`(?<sheet>${SHEET})?(?:${CELL}(?::\k<sheet>?${CELL})?|${COLUMN}:\k<sheet>?${COLUMN}|${ROW}:\k<sheet>?${ROW})(?![\p{L}\p{N}_.(])`

const kindsOf = (number: string, signs: string) =>
  (
    [
      ["space", String.raw`\s+`],
      ["text", String.raw`"(?:[^"]|"")*"?`],
      ["error", String.raw`#(?:N/A|DIV/0!|[A-Z]+[!?])`],
      ["reference", REFERENCE],
      ["number", number],
      ["function", String.raw`[\p{L}_][\p{L}\p{N}_.]*(?=\s*\()`],
      ["name", String.raw`[\p{L}_][\p{L}\p{N}_.]*`],
      ["sign", String.raw`<>|<=|>=|[-+*/^&=<>%(){};:!${signs}]`],
      ["unknown", String.raw`[^]`],
    ] as const
  ).map(([kind, pattern]) => [kind, new RegExp(pattern, "uy")] as const)

/** What pieces look like, by the sign before decimals. */
const KINDS = {
  ".": kindsOf(String.raw`[0-9]+(?:\.[0-9]*)?(?:[eE][+-]?[0-9]+)?|\.[0-9]+`, ","),
  ",": kindsOf(String.raw`[0-9]+(?:,[0-9]*)?(?:[eE][+-]?[0-9]+)?|,[0-9]+`, "|"),
}

/**
 * Splits a formula into its pieces, as it is stored or, with another sign before `decimal`s, as it is shown (see
 * screenFormula.ts). Never fails: what it does not know is a piece of kind "unknown". Those of formulas as they are stored are
 * held, since each check reads all of them after each act.
 */
export function tokens(formula: string, decimal: Decimal = "."): readonly Token[] {
  return decimal === "." ? split(formula) : tokensIn(formula, decimal)
}

const split = holding((formula) => tokensIn(formula, "."))

function tokensIn(formula: string, decimal: Decimal): readonly Token[] {
  const found: Token[] = []
  for (let at = 0; at < formula.length;) {
    for (const [kind, pattern] of KINDS[decimal]) {
      pattern.lastIndex = at
      const text = pattern.exec(formula)?.[0]
      if (!text) continue
      found.push({kind, text})
      at += text.length
      break
    }
  }
  return found
}

/** Reads a piece of kind "reference". */
export function referenceOf(text: string): Reference {
  const written = OWN_SHEET.exec(text)?.[0] ?? ""
  const sheet = written === "" ? null : written.slice(0, -1).replace(/^'|'$/g, "").replaceAll("''", "'")
  const [from, to] = text.replaceAll(written, "").split(":") as [string, string?]
  return {sheet, from: cornerOf(from), to: cornerOf(to ?? from), isRange: to !== undefined}
}

/** The reference as text, the way the engine writes it. */
export function referenceText({sheet, from, to, isRange}: Reference): string {
  const corners = isRange ? `${cornerText(from)}:${cornerText(to)}` : cornerText(from)
  return sheetPrefix(sheet) + corners
}

/** A sheet's name as written in a formula, quoted where it has to be: the engine reads no more than Latin letters unquoted. */
export const sheetText = (name: string) =>
  /^[A-Za-z\u00c0-\u02af_][A-Za-z0-9\u00c0-\u02af_]*$/.test(name) ? name : `'${name.replaceAll("'", "''")}'`

const sheetPrefix = (sheet: string | null) => (sheet === null ? "" : `${sheetText(sheet)}!`)

/** A formula taken apart: its references, and the texts between them. */
export type Pieces = readonly (string | Reference)[]

/** Takes a formula apart. */
export const piecesOf: (formula: string) => Pieces = holding((formula) =>
  tokens(formula).map(({kind, text}) => (kind === "reference" ? referenceOf(text) : text)),
)

/** Holds what was read of the formulas that were read last: one serves all rows of a column. */
export function holding<T>(read: (formula: string) => T): (formula: string) => T {
  const held = new Map<string, T>()
  return (formula) => {
    const found = held.get(formula)
    if (found !== undefined) return found
    if (held.size >= MOST_HELD) held.clear()
    const made = read(formula)
    held.set(formula, made)
    return made
  }
}

const MOST_HELD = 1000 // chosen: more than a workbook has columns

export const formulaText = (pieces: Pieces) =>
  pieces.map((piece) => (typeof piece === "string" ? piece : referenceText(piece))).join("")

/** The formula as it reads `down` rows further down: relative rows move along, those with "$" stay. */
export function movedDown(formula: string, down: number): string {
  if (down === 0) return formula
  let text = ""
  for (const part of partsByRow(formula)) {
    if (typeof part === "number" && part + down < 0) return formulaText(piecesDown(piecesOf(formula), down))
    text += typeof part === "number" ? part + down + 1 : part
  }
  return text
}

/** The texts of a formula and, between them, its rows that move along, counted from 0. */
const partsByRow: (formula: string) => readonly (string | number)[] = holding((formula) => {
  const [parts, text]: [(string | number)[], string[]] = [[], []]
  const take = (corner: Corner) => {
    if (corner.row === null || corner.rowFixed) return text.push(cornerText(corner))
    return parts.push(text.splice(0).join("") + columnText(corner), corner.row)
  }
  for (const piece of piecesOf(formula)) {
    if (typeof piece === "string") text.push(piece)
    else {
      text.push(sheetPrefix(piece.sheet))
      take(piece.from)
      if (!piece.isRange) continue
      text.push(":")
      take(piece.to)
    }
  }
  return [...parts, text.join("")]
})

/** The formula as it reads somewhere else: relative rows and columns move along, those with "$" stay. */
export const moved = (formula: string, down: number, right: number): string =>
  down === 0 && right === 0 ? formula : formulaText(piecesMoved(piecesOf(formula), down, right))

/** As `movedDown`, of a formula taken apart. */
export const piecesDown = (pieces: Pieces, down: number): Pieces => piecesMoved(pieces, down, 0)

function piecesMoved(pieces: Pieces, down: number, right: number): Pieces {
  const move = ({row, col, rowFixed, colFixed}: Corner): Corner => ({
    row: row === null || rowFixed ? row : row + down,
    col: col === null || colFixed ? col : col + right,
    rowFixed,
    colFixed,
  })
  const isOff = ({row, col}: Corner) => (row ?? 0) < 0 || (col ?? 0) < 0
  return pieces.map((piece) => {
    if (typeof piece === "string") return piece
    const from = move(piece.from)
    const to = piece.isRange ? move(piece.to) : from
    return isOff(from) || isOff(to) ? "#REF!" : {...piece, from, to}
  })
}

/** The formula with whole rows, as in "2:3", put as the cells from column A to the last column of their sheet. */
export function withRowsAsCells(formula: string, lastColumnOf: (sheet: string | null) => number): string {
  if (!/[0-9]:\$?[0-9]/.test(formula)) return formula
  return tokens(formula)
    .map(({kind, text}) => {
      if (kind !== "reference") return text
      const {sheet, from, to, isRange} = referenceOf(text)
      if (from.col !== null) return text
      const last = lastColumnOf(sheet)
      return referenceText({sheet, from: {...from, col: 0}, to: {...to, col: last}, isRange})
    })
    .join("")
}

/** Whether an array in braces holds a cell or a name. The engine (3.5.0) would not follow it when it changes, or throw. */
export function hasCellInBraces(formula: string): boolean {
  if (!formula.includes("{")) return false
  let depth = 0
  return tokens(formula).some(({kind, text}) => {
    if (kind === "sign") depth += text === "{" ? 1 : text === "}" ? -1 : 0
    return depth > 0 && (kind === "reference" || kind === "name")
  })
}

/** Chosen: the longest and deepest that ECMA-376 programs are widely said to take, and more signs than anyone writes. */
const LONGEST = 8192
const DEEPEST = 64
const MOST_SIGNS = 500

/** Whether a formula is so long, or lies so deep in itself, that the engine's reader, which calls itself, would run out of room. */
export function isTooIntricate(formula: string): boolean {
  if (formula.length <= DEEPEST) return false
  if (formula.length > LONGEST) return true
  let [depth, signs, isQuoted] = [0, 0, false]
  for (const sign of formula) {
    if (sign === '"') isQuoted = !isQuoted
    if (isQuoted) continue
    if (sign === "(" || sign === "{") depth++
    else if (sign === ")" || sign === "}") depth--
    else if ("+-*/^&=<>%".includes(sign)) signs++
    if (depth > DEEPEST || signs > MOST_SIGNS) return true
  }
  return false
}

/** The formula with every use of a named value given its new name. */
export const renamed = (formula: string, was: string, now: string) =>
  tokens(formula)
    .map(({kind, text}) => (kind === "name" && text.toLowerCase() === was.toLowerCase() ? now : text))
    .join("")

/** "A", "B", ... "Z", "AA": the letters of a column counted from 0. */
export function columnLetters(col: number): string {
  let letters = ""
  for (let n = col + 1; n > 0; n = Math.floor((n - 1) / 26))
    letters = String.fromCharCode(65 + ((n - 1) % 26)) + letters
  return letters
}

export const cellText = (row: number, col: number) => `${columnLetters(col)}${row + 1}`

const columnNumber = (letters: string) =>
  [...letters.toUpperCase()].reduce((n, letter) => n * 26 + letter.charCodeAt(0) - 64, 0) - 1

function cornerOf(text: string): Corner {
  const [, colFixed, letters, rowFixed, digits] = /^(\$?)([A-Za-z]*)(\$?)([0-9]*)$/.exec(text)!
  // "$3" is a fixed row: its only "$" is read as the first.
  const fixed = letters ? rowFixed === "$" : colFixed === "$" || rowFixed === "$"
  return {
    col: letters ? columnNumber(letters) : null,
    row: digits ? Number(digits) - 1 : null,
    colFixed: Boolean(letters) && colFixed === "$",
    rowFixed: Boolean(digits) && fixed,
  }
}

const cornerText = (corner: Corner) =>
  columnText(corner) + (corner.row === null ? "" : (corner.rowFixed ? "$" : "") + (corner.row + 1))

const columnText = ({col, colFixed}: Corner) =>
  col === null ? "" : (colFixed ? "$" : "") + columnLetters(col)
