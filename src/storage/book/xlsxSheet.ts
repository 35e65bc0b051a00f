import {moved as movedFormula, referenceOf} from "../../workbook/formula"
import {LAST_ROW, type BookCell, type BookNote, type BookSheet, type BookValue, type Look} from "./book"
import {LIMITS} from "./limits"
import {checkPlace, dayIn, filledTo} from "./reading"
import type {XlsxLook} from "./xlsxLooks"
import {xlsxRulesReader} from "./xlsxRules"
import {plainWords} from "./xlsxWords"
import {readXml} from "./xml"

/** Days from 1899-12-30 to 1904-01-01, where a book counts from that. */
const FROM_1904 = 1462

interface About {
  readonly shared: readonly string[]
  readonly looks: readonly XlsxLook[]
  readonly notes: ReadonlyMap<string, BookNote>
  readonly room: {cells: number}
  readonly is1904: boolean
  readonly left: string[]
}

interface Reading {
  row: number
  col: number
  type: string
  style: number
  value: string
  formula: string
  shares: string | null
  isArray: boolean
}

/** Reads a sheet of cells; `room` is for how many more, and `left` takes in words what is left out. */
export function sheetIn(bytes: Uint8Array, name: string, about: About): BookSheet {
  const rows: (BookCell | null)[][] = []
  const widths: (number | null)[] = []
  const keeps = {rows: 0, columns: 0}
  const sharedFormulas = new Map<string, {formula: string; row: number; col: number}>()
  const told = new Set<string>()
  const entry = xlsxRulesReader()
  let isGuarded = false
  let row = -1
  let col = -1
  let cell: Reading | null = null
  let reads: "value" | "formula" | "words" | null = null
  let sound = 0 // within how a word is spoken
  readXml(bytes, {
    open(element, attribute) {
      entry.open(element, attribute)
      switch (element) {
        case "row":
          row = numberOf(attribute("r"), row + 2, LAST_ROW + 1) - 1
          col = -1
          break
        case "c": {
          const reference = attribute("r")
          const at = reference === null ? null : placeOf(reference)
          cell = {
            row: at?.row ?? row,
            col: at?.col ?? col + 1,
            type: attribute("t") ?? "n",
            style: Number(attribute("s") ?? 0),
            value: "",
            formula: "",
            shares: null,
            isArray: false,
          }
          col = cell.col
          break
        }
        case "v":
          reads = "value"
          break
        case "t":
          reads = sound ? null : "words"
          break
        case "rPh":
          sound++
          break
        case "f":
          reads = "formula"
          if (!cell) break
          if (attribute("t") === "shared") cell.shares = attribute("si") ?? ""
          cell.isArray = attribute("t") === "array" || attribute("t") === "dataTable"
          break
        case "col": {
          const [from, to] = [
            numberOf(attribute("min"), 1, LIMITS.columns),
            numberOf(attribute("max"), 1, LIMITS.columns),
          ]
          const width = Number(attribute("width"))
          for (let i = from - 1; i < to; i++) widths[i] = width > 0 && width < 256 ? width : null
          break
        }
        case "pane":
          if (!attribute("state")?.startsWith("frozen")) break
          keeps.rows = numberOf(attribute("ySplit"), 0, LIMITS.rows)
          keeps.columns = numberOf(attribute("xSplit"), 0, LIMITS.columns)
          break
        case "sheetProtection":
          isGuarded = /^(1|true)$/.test(attribute("sheet") ?? "")
          break
        case "conditionalFormatting":
          told.add("looks that depend on values")
          break
        case "mergeCells":
          told.add("cells that are drawn as one")
          break
        case "hyperlinks":
          told.add("links")
          break
        case "drawing":
          told.add("pictures and charts")
          break
      }
    },
    words(text) {
      entry.words(text)
      if (!cell || reads === null) return
      if (reads === "formula") {
        if (cell.formula.length <= LIMITS.text) cell.formula += text
      } else if (cell.value.length <= LIMITS.text) cell.value += text
    },
    close(element) {
      entry.close(element)
      if (element === "v" || element === "f" || element === "t") reads = null
      if (element === "rPh") sound--
      if (element !== "c" || !cell) return
      put(cell)
      cell = null
    },
  })
  for (const [reference, note] of about.notes) {
    const at = placeOf(reference)
    if (!at || at.row >= LIMITS.rows || at.col >= LIMITS.columns) continue
    const found = rows[at.row]?.[at.col]
    place(
      at.row,
      at.col,
      found ? {...found, note} : {value: null, formula: null, look: "plain", isLocked: false, note},
    )
  }
  const filled = filledTo(rows, []).map((one) => filledTo(one, null))
  const {rules, left} = entry.of(filled, about.is1904 ? FROM_1904 : 0)
  if (told.size + left.size) about.left.push(`${name}: ${[...left, ...told].join(", ")} are left out`)
  return {
    name,
    widths: filledTo(widths, null),
    rows: filled,
    keeps,
    isGuarded,
    rules,
  }

  function put(read: Reading) {
    const {look, isLocked} = about.looks[read.style] ?? {look: "plain" as Look, isLocked: true}
    const formula = formulaOf(read)
    const value = valueOf(read, look)
    if (value === null && formula === null) return
    place(read.row, read.col, {value, formula, look, isLocked, note: null})
  }

  function place(r: number, c: number, made: BookCell) {
    checkPlace(name, r, c, about.room)
    ;(rows[r] ??= [])[c] = made
  }

  function formulaOf({formula, shares, isArray, row: r, col: c}: Reading): string | null {
    if (shares !== null && !isArray) {
      const first = sharedFormulas.get(shares)
      if (formula) sharedFormulas.set(shares, {formula: `=${formula}`, row: r, col: c})
      else return first ? movedFormula(first.formula, r - first.row, c - first.col) : null
    }
    return formula.trim() ? `=${formula.trim()}` : null
  }

  function valueOf({type, value}: Reading, look: Look): BookValue {
    if (type === "s") return about.shared[Number(value)] ?? null
    if (type === "inlineStr" || type === "str") return plainWords(value)
    if (value === "") return null
    if (type === "b") return value === "1" || value === "true"
    if (type === "e") return {error: value.slice(0, 20)}
    if (type === "d") return dayIn(value)
    const number = Number(value)
    if (!Number.isFinite(number)) return null
    return about.is1904 && (look === "date" || look === "day") ? number + FROM_1904 : number
  }
}

function numberOf(text: string | null, otherwise: number, most: number): number {
  const number = text === null ? otherwise : Number(text)
  return Number.isFinite(number) && number >= 0 ? Math.min(most, Math.floor(number)) : otherwise
}

function placeOf(reference: string): {row: number; col: number} | null {
  if (!/^[A-Za-z]{1,3}[1-9][0-9]{0,6}$/.test(reference)) return null
  const {from} = referenceOf(reference)
  return {row: from.row!, col: from.col!}
}
