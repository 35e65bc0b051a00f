import {FIRST_DAY, isoOf, LAST_DAY} from "../../../functions/calendar"
import {isoDate} from "../../workbook/clock"
import {
  COLUMN_FORMULA,
  SHEET_NAME,
  type Column,
  type Content,
  type Document,
  type Extra,
  type Format,
  type Sheet,
} from "../../workbook/document"
import {
  cellText,
  columnLetters,
  isTooIntricate,
  movedDown,
  piecesOf,
  tokens,
  type Reference,
} from "../../workbook/formula"
import {isUsableName} from "../../workbook/names"
import {columnRule} from "./bookRule"
import {isError, type Book, type BookCell, type BookSheet, type Look} from "./book"
import {namedHere} from "./formulaNames"
import {fromFile, type Counterpart} from "./bookFormula"

/** A workbook that was read and is not open yet, and what of the file could not be taken over, in sentences. */
export interface Taken {
  readonly document: Document
  readonly left: readonly string[]
  /** How many formulas came over as formulas, and how many as their values. */
  readonly formulas: number
  readonly asValues: number
}

/** What the engine knows, to tell which formulas can be read. */
export interface Knows {
  readonly functions: readonly string[]
  normalized(formula: string): string | null
}

/**
 * Makes a workbook of a book. The first row of a sheet is its headings where it holds words alone. A formula that cannot be
 * read comes over as its value, and is listed.
 */
export function documentOf(book: Book, fallbackName: string, knows: Knows, now = new Date()): Taken {
  const left: string[] = []
  const names = namesOf(book, left)
  const heads = book.sheets.map(({rows}) => (hasHeadings(rows[0] ?? []) ? 1 : 0))
  const plain = book.sheets.flatMap(({name}, i) => (heads[i] ? [] : [name]))
  if (plain.length)
    left.push(
      `No row of headings was found on ${plain.join(", ")}, so its columns are named by their letters`,
    )
  const counts = {formulas: 0, asValues: 0}
  const functions = new Set(knows.functions.map((name) => name.toUpperCase()))
  const namesKept = new Set(
    book.names.flatMap(({name, formula}) => (namedPlace(book, name, formula) ? [name.toLowerCase()] : [])),
  )
  // A name for cells alone is put as those cells; one for more is not known here, and what uses it comes over as its value.
  const replaced = new Map(
    book.names
      .filter(({name, formula}) => !namesKept.has(name.toLowerCase()) && wholeOf(formula) !== null)
      .map(({name, formula}) => [name.toLowerCase(), formula.slice(1)]),
  )
  for (const {name} of book.names) {
    const cells = replaced.get(name.toLowerCase())
    if (cells !== undefined) left.push(`The name ${name} is put as what it stands for, ${cells}`)
    else if (!namesKept.has(name.toLowerCase()))
      left.push(`The name ${name} does not stand for cells alone, so it is left out`)
  }

  const sheets = book.sheets.map((sheet, index): Sheet => {
    const counterpartOf = (name: string | null): Counterpart | null => {
      const at =
        name === null ? index : book.sheets.findIndex((one) => one.name.toLowerCase() === name.toLowerCase())
      return at < 0 ? null : {name: names[at]!, heads: heads[at]!}
    }
    const readAlone = (written: string): Read => {
      if (isTooIntricate(written)) return {why: "it is too long, or lies too deep in itself"}
      const formula = fromFile(namedHere(withoutNames(written, replaced), functions), counterpartOf)
      if (formula === null) return {why: "it points at a heading, at another file or by words"}
      const unknown = tokens(formula).find(
        ({kind, text}) => kind === "function" && !functions.has(text.toUpperCase()),
      )
      if (unknown) return {why: `there is no function ${unknown.text.toUpperCase()} here`}
      const nameless = tokens(formula).find(
        ({kind, text}) =>
          kind === "name" && !/^(true|false)$/i.test(text) && !namesKept.has(text.toLowerCase()),
      )
      if (nameless) return {why: `there is no name ${nameless.text} here`}
      const own = knows.normalized(formula)
      return own === null ? {why: "it cannot be read here"} : {formula: own}
    }
    // The rows of a column mostly hold one formula, each with its own row: it is read once, as the first row has it.
    const held = new Map<string, Read>()
    const read = (written: string, row: number): Read => {
      if (isTooIntricate(written)) return readAlone(written)
      const first = movedDown(written, -row)
      if (first.includes("#REF!")) return readAlone(written)
      const found = held.get(first) ?? readAlone(first)
      held.set(first, found)
      return "formula" in found ? {formula: movedDown(found.formula, row)} : readAlone(written)
    }
    const why = (row: number, col: number, reason: string) =>
      left.push(`${sheet.name}, ${cellText(row, col)}: ${reason}`)
    return sheetOf(sheet, names[index]!, heads[index]!, {
      read,
      why,
      counts,
      now,
      names: namedRowsOn(book, index, heads[index]!),
    })
  })
  const document: Document = {
    name: book.title.trim() || fallbackName.trim() || "Workbook",
    ...(book.subject.trim() ? {season: book.subject.trim()} : {}),
    ...(book.about.trim() ? {about: book.about.trim()} : {}),
    sheets,
  }
  return {document, left, ...counts}
}

/** Sheet names as ours may be, none twice. */
function namesOf({sheets}: Book, left: string[]): readonly string[] {
  const names: string[] = []
  for (const {name} of sheets) {
    const bare =
      name
        .replace(/[\\/?*[\]:]/g, " ")
        .trim()
        .slice(0, SHEET_NAME.longest)
        .trim() || "Sheet"
    const taken = (one: string) => names.some((other) => other.toLowerCase() === one.toLowerCase())
    let free = bare
    for (let n = 2; taken(free); n++) free = `${bare.slice(0, SHEET_NAME.longest - 4)} ${n}`
    if (free !== name) left.push(`The sheet “${name}” is called “${free}” here`)
    names.push(free)
  }
  return names
}

function hasHeadings(first: BookSheet["rows"][number]): boolean {
  const cells = first.filter((cell) => cell && (cell.value !== null || cell.formula !== null))
  return cells.length > 0 && cells.every((cell) => typeof cell!.value === "string" && cell!.formula === null)
}

const wholeOf = (formula: string): Reference | null => {
  const pieces = piecesOf(formula)
  const [sign, reference] = pieces
  return pieces.length === 2 && sign === "=" && typeof reference === "object" ? reference : null
}

/** Where a name stands as ours do, beside its value: the name in column A, what it names in column B of the row. */
function namedPlace({sheets}: Book, name: string, formula: string): {sheet: number; row: number} | null {
  const reference = wholeOf(formula)
  if (!reference || reference.isRange || reference.sheet === null || reference.from.col !== 1) return null
  const sheet = sheets.findIndex((one) => one.name.toLowerCase() === reference.sheet!.toLowerCase())
  const row = reference.from.row
  if (sheet < 0 || row === null || !isUsableName(name)) return null
  return sheets[sheet]!.rows[row]?.[0]?.value === name ? {sheet, row} : null
}

/** Whether a sheet names its values: each usable word of its first column is a name of the book. */
function namedRowsOn(book: Book, index: number, heads: number): boolean {
  const named = new Set(
    book.names.flatMap(({name, formula}) => {
      const place = namedPlace(book, name, formula)
      return place?.sheet === index ? [place.row] : []
    }),
  )
  if (!named.size) return false
  const known = new Set(book.names.map(({name}) => name.toLowerCase()))
  return book.sheets[index]!.rows.every((cells, row) => {
    const word = cells[0]?.value
    return row < heads || typeof word !== "string" || !isUsableName(word) || known.has(word.toLowerCase())
  })
}

const withoutNames = (formula: string, replaced: ReadonlyMap<string, string>) =>
  replaced.size === 0
    ? formula
    : tokens(formula)
        .map(({kind, text}) => (kind === "name" ? (replaced.get(text.toLowerCase()) ?? text) : text))
        .join("")

/** A formula as it stands here, or why it cannot. */
type Read = {readonly formula: string} | {readonly why: string}

interface Reading {
  /** Reads what stands in a row of the sheet, counted from the first below its headings. */
  read(written: string, row: number): Read
  why(row: number, col: number, reason: string): void
  readonly counts: {formulas: number; asValues: number}
  readonly now: Date
  /** Whether each row names a value. */
  readonly names: boolean
}

function sheetOf(sheet: BookSheet, name: string, heads: number, reading: Reading): Sheet {
  const {rows} = sheet
  const width = Math.max(1, ...rows.map((row) => row.length))
  const columns = Array.from({length: width}, (_, col) => {
    const [column, rule] = [columnOf(sheet, heads, col), sheet.rules[col]]
    const own = rule && columnRule(rule, column.format)
    if (rule && !own) reading.why(0, col, "the rule for entry of its column is left out")
    return own ? {...column, rule: own} : column
  })
  const extras: Extra[] = []
  const contents = rows.slice(heads).map((cells, row) =>
    Array.from({length: width}, (_, col): Content => {
      const cell = cells[col]
      if (!cell) return null
      if (cell.note) extras.push({row, col, note: noteOf(cell.note, reading.now)})
      return contentOf(cell, row, heads, col, reading)
    }),
  )
  while (contents.length && contents.at(-1)!.every((content) => content === null)) contents.pop()
  const kept = columns.map((column, col) => withColumnFormula(column, contents, col))
  for (const [r, cells] of rows.slice(heads, heads + contents.length).entries())
    for (const [col, cell] of cells.entries()) {
      const format = cell ? formatOf(cell.look) : undefined
      if (!cell || format === undefined || format === kept[col]!.format || contents[r]![col] === null)
        continue
      if (typeof cell.value !== "number") continue
      const at = extras.findIndex((extra) => extra.row === r && extra.col === col)
      if (at < 0) extras.push({row: r, col, format})
      else extras[at] = {...extras[at]!, format}
    }
  const keeps = Math.min(sheet.keeps.columns, width)
  const inside = extras.filter(({row}) => row < contents.length)
  return {
    name,
    group: "Sheets",
    ...(reading.names ? {names: true} : {}),
    ...(keeps === 1 ? {} : {keeps}),
    columns: kept,
    ...(inside.length ? {extras: inside} : {}),
    rows: contents,
  }
}

function columnOf({rows, widths}: BookSheet, heads: number, col: number): Column {
  const written = heads ? rows[0]?.[col]?.value : null
  const words = typeof written === "string" ? written.trim() : ""
  const [, heading = "", unit = ""] = /^(.*\S)\s*\(([^()]{1,20})\)$/.exec(words) ?? []
  const looks = new Map<Look, number>()
  for (const row of rows.slice(heads)) {
    const cell = row[col]
    if (cell && cell.value !== null) looks.set(cell.look, (looks.get(cell.look) ?? 0) + 1)
  }
  const look = [...looks].toSorted(([, a], [, b]) => b - a)[0]?.[0] ?? "plain"
  const format = formatOf(look)
  const width = widths[col]
  return {
    heading: heading || words || `Column ${columnLetters(col)}`,
    ...(unit ? {unit} : {}),
    kind: "typed",
    ...(format === undefined ? {} : {format}),
    ...(width ? {width: Math.min(40, Math.max(2, Math.round(width * 5) / 10))} : {}),
  }
}

function formatOf(look: Look): Format | undefined {
  if (look === "plain" || look === "heading") return undefined
  if (look === "rate") return "share"
  return look === "words" ? "text" : look
}

function noteOf({text, by, written}: NonNullable<BookCell["note"]>, now: Date) {
  const when =
    written !== null && !Number.isNaN(Date.parse(written)) ? written : `${isoDate(now)}T00:00:00.000Z`
  return {text: text.trim() || "(blank)", ...(by.trim() ? {by: by.trim()} : {}), written: when}
}

function contentOf(
  {value, formula, look}: BookCell,
  row: number,
  heads: number,
  col: number,
  reading: Reading,
): Content {
  if (formula !== null) {
    const read = reading.read(formula, row)
    if ("formula" in read) {
      reading.counts.formulas++
      return read.formula
    }
    reading.counts.asValues++
    reading.why(row + heads, col, `${read.why}, so its value is kept`)
  }
  if (isError(value)) {
    if (formula === null) reading.why(row + heads, col, `the error ${value.error} is left blank`)
    return null
  }
  if (typeof value === "number") {
    if (!Number.isFinite(value)) return null
    const isDay = (look === "date" || look === "day") && Number.isInteger(value)
    return isDay && value >= FIRST_DAY && value <= LAST_DAY ? isoOf(value) : value
  }
  if (typeof value !== "string") return value
  if (value === "") return null
  if (value.startsWith("=")) {
    reading.why(row + heads, col, "its words begin with “=”, so an apostrophe was put before them")
    return `'${value}`
  }
  return value
}

/** The column with the formula that most of its rows follow, which then hold "=" for it. */
function withColumnFormula(column: Column, rows: Content[][], col: number): Column {
  const counts = new Map<string, number>()
  let filled = 0
  const firsts = rows.map((row, r) => {
    const content = row[col]!
    if (content !== null) filled++
    if (typeof content !== "string" || !content.startsWith("=")) return null
    const first = movedDown(content, -r)
    counts.set(first, (counts.get(first) ?? 0) + 1)
    return first
  })
  const [formula, count] = [...counts].toSorted(([, a], [, b]) => b - a)[0] ?? ["", 0]
  if (count < 2 || count * 2 <= filled || formula.includes("#REF!")) return column
  for (const [r, first] of firsts.entries()) if (first === formula) rows[r]![col] = COLUMN_FORMULA
  return {...column, kind: "worked out", formula}
}
