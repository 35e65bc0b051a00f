import {moved as movedFormula, referenceOf} from "../../workbook/formula"
import {
  LAST_ROW,
  type Book,
  type BookCell,
  type BookName,
  type BookNote,
  type BookSheet,
  type BookValue,
  type Look,
} from "./book"
import {LIMITS, Unreadable} from "./limits"
import {checkPlace, dayIn, filledTo, namesTaken, OF_ONE_SHEET, propertiesIn, type NameLeft} from "./reading"
import {readXml} from "./xml"
import {xlsxRulesReader} from "./xlsxRules"
import {openZip, type Zip} from "./zip"

/** Days from 1899-12-30 to 1904-01-01, where a book counts from that. */
const FROM_1904 = 1462

/**
 * Reads a file of ECMA-376. Formulas are given as they are written, with "=" before them; those of a table shared by several
 * cells are moved to each. Throws `Unreadable` with a sentence.
 */
export function readXlsx(bytes: Uint8Array): {readonly book: Book; readonly left: readonly string[]} {
  const zip = openZip(bytes)
  const main = targetOf(zip, "", /\/officeDocument$/) ?? "xl/workbook.xml"
  const workbook = workbookIn(part(zip, main))
  if (!workbook.sheets.length) throw new Unreadable("It has no sheets")
  if (workbook.sheets.length > LIMITS.sheets)
    throw new Unreadable(`It has ${workbook.sheets.length} sheets, and ${LIMITS.sheets} are the most`)
  const left = [...workbook.left]
  const relations = relationsOf(zip, main)
  const shared = wordsIn(zip, find(relations, /\/sharedStrings$/))
  const looks = looksIn(zip, find(relations, /\/styles$/))
  const room = {cells: LIMITS.cells as number}
  const sheets = workbook.sheets.flatMap(({name, id}): BookSheet[] => {
    const relation = relations.get(id)
    const bytes = relation && relation.type.endsWith("/worksheet") ? zip.part(relation.target) : null
    if (!relation || !bytes) {
      left.push(`“${name}” is no sheet of cells, or its part is missing`)
      return []
    }
    const notes = notesIn(zip, relation.target)
    return [sheetIn(bytes, name, {shared, looks, notes, room, is1904: workbook.is1904, left})]
  })
  if (!sheets.length) throw new Unreadable("It has no sheet of cells")
  if (zip.names.some((name) => /vbaProject|macrosheets/i.test(name)))
    left.push("Its macros are left out; none was run")
  if (zip.names.some((name) => /externalLinks\//.test(name)))
    left.push("It points at other files; those were not opened")
  if (zip.names.some((name) => /\/(charts|media|pivotTables)\//.test(name)))
    left.push("Its pictures and charts are left out")
  return {book: {...propertiesIn(zip.part("docProps/core.xml")), sheets, names: workbook.names}, left}
}

function part(zip: Zip, name: string): Uint8Array {
  const bytes = zip.part(name)
  if (!bytes) throw new Unreadable(`Its part ${name.slice(0, 60)} is missing`)
  return bytes
}

interface Relation {
  readonly type: string
  readonly target: string
}

/** What a part points at within the file, by the id of each pointer; what lies outside is left out. */
function relationsOf(zip: Zip, name: string): ReadonlyMap<string, Relation> {
  const [folder, file] = [name.slice(0, name.lastIndexOf("/") + 1), name.slice(name.lastIndexOf("/") + 1)]
  const bytes = zip.part(`${folder}_rels/${file}.rels`)
  const relations = new Map<string, Relation>()
  if (bytes)
    readXml(bytes, {
      open(element, attribute) {
        const [id, target] = [attribute("Id"), attribute("Target")]
        if (
          element !== "Relationship" ||
          id === null ||
          target === null ||
          attribute("TargetMode") === "External"
        )
          return
        relations.set(id, {type: attribute("Type") ?? "", target: within(folder, target)})
      },
    })
  return relations
}

const targetOf = (zip: Zip, name: string, type: RegExp) => find(relationsOf(zip, name), type)
const find = (relations: ReadonlyMap<string, Relation>, type: RegExp) =>
  [...relations.values()].find((one) => type.test(one.type))?.target

/** The name of a part that is pointed at from a folder: "../comments1.xml". */
function within(folder: string, target: string): string {
  if (target.startsWith("/")) return target.slice(1)
  const path = folder.split("/").slice(0, -1)
  for (const step of target.split("/"))
    if (step === "..") path.pop()
    else if (step !== ".") path.push(step)
  return path.join("/")
}

function workbookIn(bytes: Uint8Array) {
  const sheets: {name: string; id: string}[] = []
  const names: BookName[] = []
  const others: NameLeft[] = []
  let is1904 = false
  let name: string | null = null
  let words = ""
  readXml(bytes, {
    open(element, attribute) {
      if (element === "workbookPr") is1904 = /^(1|true)$/.test(attribute("date1904") ?? "")
      if (element === "sheet")
        sheets.push({name: attribute("name") ?? "", id: attribute("r:id") ?? attribute("id") ?? ""})
      if (element === "definedName") {
        const written = attribute("name") ?? ""
        const [isOfForm, isOfSheet] = [written.startsWith("_xlnm."), attribute("localSheetId") !== null]
        name = isOfForm || isOfSheet ? null : written
        if (isOfSheet && !isOfForm) others.push({name: written, why: OF_ONE_SHEET})
        words = ""
      }
    },
    words(text) {
      if (name !== null && words.length <= LIMITS.text) words += text
    },
    close(element) {
      if (element !== "definedName") return
      if (name !== null && words) names.push({name, formula: `=${words}`})
      name = null
    },
  })
  return {sheets, ...namesTaken(names, others), is1904}
}

function wordsIn(zip: Zip, name: string | undefined): readonly string[] {
  const bytes = name === undefined ? null : zip.part(name)
  const found: string[] = []
  if (!bytes) return found
  let words = ""
  let within = 0
  let isReading = false
  readXml(bytes, {
    open(element) {
      if (element === "si") words = ""
      if (element === "rPh") within++
      isReading = element === "t" && within === 0
    },
    words(text) {
      if (isReading && words.length < LIMITS.text) words += text
    },
    close(element) {
      if (element === "rPh") within--
      if (element === "si") found.push(plainWords(words))
      isReading = false
    },
  })
  return found
}

const plainWords = (text: string) =>
  text
    .slice(0, LIMITS.text)
    .replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(parseInt(code, 16)))

/** The looks of the cells' styles, by their numbers, and whether each is locked. */
function looksIn(zip: Zip, name: string | undefined): readonly {look: Look; isLocked: boolean}[] {
  const bytes = name === undefined ? null : zip.part(name)
  const codes = new Map<number, string>(Object.entries(BUILT_IN).map(([id, code]) => [Number(id), code]))
  const looks: {look: Look; isLocked: boolean}[] = []
  let isInside = false
  if (bytes)
    readXml(bytes, {
      open(element, attribute) {
        if (element === "numFmt") codes.set(Number(attribute("numFmtId")), attribute("formatCode") ?? "")
        if (element === "cellXfs") isInside = true
        if (isInside && element === "xf")
          looks.push({look: lookOf(codes.get(Number(attribute("numFmtId"))) ?? "General"), isLocked: true})
        if (isInside && element === "protection" && looks.length)
          looks[looks.length - 1] = {
            ...looks.at(-1)!,
            isLocked: !/^(0|false)$/.test(attribute("locked") ?? "1"),
          }
      },
      close(element) {
        if (element === "cellXfs") isInside = false
      },
    })
  return looks
}

/** Formats that the form has numbers for (ECMA-376, 18.8.30). */
const BUILT_IN: Readonly<Record<number, string>> = {
  1: "0",
  2: "0.00",
  3: "#,##0",
  4: "#,##0.00",
  9: "0%",
  10: "0.00%",
  14: "m/d/yyyy",
  15: "d-mmm-yy",
  16: "d-mmm",
  17: "mmm-yy",
  22: "m/d/yy h:mm",
  37: "#,##0",
  38: "#,##0",
  39: "#,##0.00",
  40: "#,##0.00",
  49: "@",
}

/** What the code of a format comes nearest to here. */
export function lookOf(code: string): Look {
  const [first = ""] = code.slice(0, 200).split(";")
  const bare = first.replace(/"[^"]*"|\\.|\[[^\]]*\]|_./g, "")
  if (bare.includes("@")) return "words"
  if (/[yd]/i.test(bare) && !/general/i.test(bare)) return /y/i.test(bare) ? "date" : "day"
  if (bare.includes("%")) return "share"
  const decimals = /[0#](?:\.([0#?]*))?$/.exec(bare.trim())
  if (!decimals || /[eE]|general/i.test(bare)) return "plain"
  return Math.min(9, decimals[1]?.length ?? 0) as Look
}

function notesIn(zip: Zip, sheet: string): ReadonlyMap<string, BookNote> {
  const name = targetOf(zip, sheet, /\/comments$/)
  const bytes = name === undefined ? null : zip.part(name)
  const notes = new Map<string, BookNote>()
  if (!bytes) return notes
  const authors: string[] = []
  let author: string | null = null
  let note: {ref: string; by: string; text: string} | null = null
  let isReading = false
  readXml(bytes, {
    open(element, attribute) {
      if (element === "author") author = ""
      if (element === "comment")
        note = {ref: attribute("ref") ?? "", by: authors[Number(attribute("authorId"))] ?? "", text: ""}
      isReading = element === "t"
    },
    words(text) {
      if (author !== null) author += text
      else if (note && isReading && note.text.length < LIMITS.text) note.text += text
    },
    close(element) {
      if (element === "author") {
        authors.push(plainWords(author ?? ""))
        author = null
      }
      if (element === "comment" && note && notes.size < LIMITS.cells) {
        notes.set(note.ref.toUpperCase(), {text: plainWords(note.text), by: note.by, written: null})
        note = null
      }
      isReading = false
    },
  })
  return notes
}

interface About {
  readonly shared: readonly string[]
  readonly looks: readonly {look: Look; isLocked: boolean}[]
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

function sheetIn(bytes: Uint8Array, name: string, about: About): BookSheet {
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
