import type {BookCell, BookName, BookNote, BookSheet, BookValue, Look} from "./book"
import {LIMITS, Unreadable} from "./limits"
import {stylesReader} from "./odsStyles"
import {odsRulesReader} from "./odsRules"
import {fromOpenFormula} from "./openFormula"
import {checkPlace, dayIn, filledTo, namesTaken, OF_ONE_SHEET, type NameLeft} from "./reading"
import {readXml} from "./xml"

interface Cell {
  value: BookValue
  formula: string | null
  look: Look
  isLocked: boolean
  repeats: number
  words: string[]
  note: BookNote | null
  /** The name of its rule for entry. */
  rule: string | null
}

/** Reads the sheets and names of the part content.xml; `looks` holds those of named styles, and `left` takes what is left out. */
export function contentIn(bytes: Uint8Array, looks: Map<string, Look>, left: string[]) {
  const sheets: BookSheet[] = []
  const names: BookName[] = []
  const styles = stylesReader(looks)
  const room = {cells: LIMITS.cells as number}
  let sheet: {
    name: string
    rows: (BookCell | null)[][]
    keeps: {rows: number; columns: number}
    isGuarded: boolean
  } | null = null
  let columnLooks: (Look | undefined)[] = []
  let columnWidths: (number | null)[] = []
  let [row, col, rowRepeats, depth] = [0, 0, 1, 0]
  let line: (BookCell | null)[] = []
  let heads: "rows" | "columns" | null = null
  let cell: Cell | null = null
  let note: {words: string[]; by: string; date: string} | null = null
  let noteField: "by" | "date" | null = null
  let hasForeign = 0
  const told = new Set<string>()
  const otherNames: NameLeft[] = []
  const entry = odsRulesReader()

  const textLines = () => (note ? note.words : cell?.words)
  const add = (text: string) => {
    const lines = textLines()
    if (!lines?.length) return
    if (lines.at(-1)!.length < LIMITS.text) lines[lines.length - 1] += text
  }

  readXml(bytes, {
    open(element, attribute) {
      styles.open(element, attribute)
      entry.open(element, attribute)
      switch (element) {
        case "table":
          if (++depth > 1) return
          if (sheets.length >= LIMITS.sheets)
            throw new Unreadable(`It has more than ${LIMITS.sheets} sheets, which are the most`)
          sheet = {
            name: attribute("table:name") ?? "",
            rows: [],
            keeps: {rows: 0, columns: 0},
            isGuarded: attribute("table:protected") === "true",
          }
          row = 0
          columnLooks = []
          columnWidths = []
          return
        case "table-header-rows":
          heads = "rows"
          return
        case "table-header-columns":
          heads = "columns"
          return
        case "table-column": {
          if (!sheet || depth > 1) return
          const count = repeats(attribute("table:number-columns-repeated"))
          if (heads === "columns") sheet.keeps.columns = Math.min(LIMITS.columns, sheet.keeps.columns + count)
          const look = looks.get(attribute("table:default-cell-style-name") ?? "")
          const width = styles.widths.get(attribute("table:style-name") ?? "") ?? null
          for (let i = 0; i < count && columnLooks.length < LIMITS.columns; i++) {
            columnLooks.push(look)
            columnWidths.push(width)
          }
          return
        }
        case "table-row":
          if (depth > 1) return
          rowRepeats = repeats(attribute("table:number-rows-repeated"))
          line = []
          col = 0
          return
        case "table-cell":
        case "covered-table-cell":
          if (depth > 1) return
          cell = cellOf(attribute, columnLooks[col])
          if (attribute("table:number-columns-spanned") ?? attribute("table:number-rows-spanned"))
            told.add("cells that are drawn as one")
          return
        case "annotation":
          note = {words: [], by: "", date: ""}
          return
        case "creator":
          if (note) noteField = "by"
          return
        case "date":
          if (note) noteField = "date"
          return
        case "p":
          if (textLines() && textLines()!.length < MOST_LINES) textLines()!.push("")
          return
        case "s":
          add(" ".repeat(Math.min(LIMITS.text, repeats(attribute("text:c")))))
          return
        case "tab":
          add("\t")
          return
        case "line-break":
          add("\n")
          return
        case "named-range":
        case "named-expression": {
          const address = attribute("table:cell-range-address")
          const cells = address && `=[${address.includes(".") ? address : `.${address}`}]`
          addName(attribute("table:name") ?? "", cells ?? attribute("table:expression") ?? "")
          return
        }
        case "frame":
        case "shapes":
          hasForeign++
      }
    },
    words(text) {
      if (note && noteField) note[noteField] = (note[noteField] + text).slice(0, 200)
      else add(text)
    },
    close(element) {
      styles.close(element)
      switch (element) {
        case "table":
          if (--depth > 0 || !sheet) return
          const {rules, left: rulesLeft} = entry.ofSheet()
          if (told.size + rulesLeft.size)
            left.push(`${sheet.name}: ${[...rulesLeft, ...told].join(", ")} are left out`)
          told.clear()
          sheets.push({
            name: sheet.name,
            widths: columnWidths,
            rows: filledTo(sheet.rows, []),
            keeps: sheet.keeps,
            isGuarded: sheet.isGuarded,
            rules,
          })
          sheet = null
          return
        case "table-header-rows":
        case "table-header-columns":
          heads = null
          return
        case "creator":
        case "date":
          noteField = null
          return
        case "annotation":
          if (cell && note) cell.note = {text: note.words.join("\n"), by: note.by, written: note.date || null}
          note = null
          return
        case "table-cell":
        case "covered-table-cell":
          if (depth > 1 || !cell) return
          putCell(cell)
          cell = null
          return
        case "table-row":
          if (depth > 1) return
          putRow()
      }
    },
  })
  if (hasForeign) left.push("Its pictures and charts are left out")
  const taken = namesTaken(names, otherNames)
  left.unshift(...taken.left)
  return {sheets, names: taken.names}

  function addName(name: string, written: string) {
    const formula = fromOpenFormula(written.replace(/^(?:[a-z]+:)?=?/, "="))
    if (depth > 0) otherNames.push({name, why: OF_ONE_SHEET})
    else if (formula === null) otherNames.push({name, why: "cannot be read"})
    else names.push({name, formula})
  }

  function cellOf(attribute: (name: string) => string | null, byColumn: Look | undefined): Cell {
    const written = attribute("table:formula")
    const formula = written === null ? null : fromOpenFormula(written)
    if (written !== null && formula === null)
      left.push(
        `${sheet?.name ?? ""}: the formula ${written.slice(0, 60)} cannot be read, so its value is kept`,
      )
    const type = attribute("office:value-type")
    const look = looks.get(attribute("table:style-name") ?? "") ?? byColumn
    return {
      value: valueOf(type, attribute),
      formula,
      look: look ?? (type === "date" ? "date" : type === "percentage" ? "share" : "plain"),
      isLocked: true,
      repeats: repeats(attribute("table:number-columns-repeated")),
      words: [],
      note: null,
      rule: attribute("table:content-validation-name"),
    }
  }

  function putCell({value, formula, look, isLocked, repeats: count, words, note: its, rule}: Cell) {
    const text = value === WORDS ? words.join("\n").slice(0, LIMITS.text) : value
    const known =
      formula !== null && typeof text === "string" && /^#[A-Z/0!?]+[!?A]$/.test(text) ? {error: text} : text
    const isBlank = (known === null || known === "") && formula === null && !its
    if (row > 0) entry.cells(col, count, rule, isBlank)
    if (isBlank) {
      col += count
      return
    }
    // What is repeated is checked before it is laid out, one place at a time.
    for (let i = 0; i < count; i++) {
      checkPlace(sheet?.name ?? "", row, col, room)
      line[col++] = {value: known === WORDS ? null : known, formula, look, isLocked, note: its}
    }
  }

  function putRow() {
    if (!sheet) return
    if (heads === "rows") sheet.keeps.rows = Math.min(LIMITS.rows, sheet.keeps.rows + rowRepeats)
    const cells = filledTo(line, null)
    if (!cells.length) {
      row += rowRepeats
      return
    }
    for (let i = 0; i < rowRepeats; i++) {
      if (i > 0) for (const [c, one] of cells.entries()) if (one) checkPlace(sheet.name, row, c, room)
      sheet.rows[row++] = cells
    }
  }
}

const MOST_LINES = 2000

/** Stands for words that are still to come. */
const WORDS = {error: "words"}

function valueOf(type: string | null, attribute: (name: string) => string | null): BookValue {
  if (type === "string") return attribute("office:string-value")?.slice(0, LIMITS.text) ?? WORDS
  if (type === "boolean") return attribute("office:boolean-value") === "true"
  if (type === "date") return dayIn(attribute("office:date-value") ?? "")
  if (type !== "float" && type !== "percentage" && type !== "currency") return null
  const value = Number(attribute("office:value") ?? NaN)
  return Number.isFinite(value) ? value : null
}

function repeats(text: string | null): number {
  const count = text === null ? 1 : Number(text)
  return Number.isInteger(count) && count > 0 ? Math.min(count, 10_000_000) : 1
}
