import {
  contentAt,
  columnWith,
  sheetWith,
  type Content,
  type Document,
  type Sheet,
} from "../../workbook/document"
import {namesIn} from "../../workbook/names"
import {planSheet} from "../../workbook/plan"
import {soughtAs} from "../../workbook/plantingName"
import type {Edit, Entry} from "../../workbook/edit"
import type {Command} from "../store"

/** What is known of a new planting. */
export interface NewPlanting {
  readonly name: string
  /** The day it was planted, in ISO form, or null. */
  readonly planted: string | null
  /** Ground, ha, or null. */
  readonly area: number | null
  /** The first day of cutting, in ISO form; where no season is typed yet, its year is the season. */
  readonly opens?: string | null
}

/** Why a planting cannot be called so, in a sentence, or null. */
export function plantingRefused(document: Document, name: string): string | null {
  if (name.trim() === "") return "A planting needs a name"
  const sheet = sheetWith(document, "name of planting")
  if (sheet < 0) return "This workbook has no sheet of plantings"
  const twin = document.sheets[sheet]!.rows.find(([one]) => soughtAs(one) === soughtAs(name.trim()))
  return twin ? `There is a planting called ${String(twin[0])} already: choose another name` : null
}

/**
 * Puts a planting after another, or at the end, on every sheet that has one row for each planting, and at the end of the
 * stands ahead, in one step.
 */
export const addPlanting =
  ({name, planted, area, opens = null}: NewPlanting, after: string | null): Command =>
  ({document}) => {
    if (plantingRefused(document, name) !== null) return null
    const edits = document.sheets.flatMap((one, sheet): Edit[] => {
      if (one.rowEach !== "planting") return []
      const place = one.rows.findIndex(([key]) => key === after)
      const row = place < 0 ? one.rows.length : place + 1
      const known: [col: number, content: Content][] = [
        [0, name],
        [plantedAt(document, sheet), planted],
        [columnWith(document, sheet, "area"), area],
        [sheet === planSheet(document) ? columnWith(document, sheet, "open") : -1, opens],
      ]
      const cells = known.flatMap(([col, content]): Entry[] =>
        col < 0 || content === null ? [] : [{at: {sheet, row, col}, content}],
      )
      const inserted: Edit[] =
        row < one.rows.length ? [{type: "insertRows", sheet, before: row, count: 1}] : []
      return [...inserted, {type: "enter", cells}]
    })
    const others: Edit = {type: "enter", cells: [...standsOf(document, [name]), ...seasonOf(document, opens)]}
    return edits.length ? {type: "several", edits: [...edits, others], name: `planting ${name} added`} : null
  }

/** The year of an opening as the season, where none is typed. */
function seasonOf(document: Document, opens: string | null): readonly Entry[] {
  const at = namesIn(document).find(({name}) => name === "Season")?.at
  return at && opens !== null && contentAt(document, at) === null
    ? [{at, content: Number(opens.slice(0, 4))}]
    : []
}

/** The plantings of their own sheet that have no row on another one that has one for each, as they are written. */
export function plantingsWithoutRows(document: Document): readonly string[] {
  const plantings = document.sheets[sheetWith(document, "name of planting")]
  const others = document.sheets.filter(({rowEach}) => rowEach === "planting").map((one) => namesSought(one))
  const ahead = sheetWith(document, GROUND)
  if (ahead >= 0) others.push(namesSought(document.sheets[ahead]!, columnWith(document, ahead, GROUND)))
  const names = new Map(plantings?.rows.map(([name]) => [soughtAs(name), name]))
  return [...names].flatMap(([key, name]) =>
    key.trim() !== "" && others.some((keys) => !keys.has(key)) ? String(name) : [],
  )
}

/** The column that says which planting's ground a stand of the years ahead stands on. */
const GROUND = "stand ground"

/** Rows of the stands ahead, at the end, for plantings that have none there: each under its own name. */
function standsOf(document: Document, plantings: readonly string[]): readonly Entry[] {
  const sheet = sheetWith(document, GROUND)
  if (sheet < 0) return []
  const ground = columnWith(document, sheet, GROUND)
  const {rows} = document.sheets[sheet]!
  const known = namesSought(document.sheets[sheet]!, ground)
  return plantings
    .filter((name) => !known.has(soughtAs(name)))
    .flatMap((content, i) =>
      [columnWith(document, sheet, "stand"), ground].map((col) => ({
        at: {sheet, row: rows.length + i, col},
        content,
      })),
    )
}

/** Gives each of them a row at the end of every sheet that has none for it, in one step. */
export const addMissingRows: Command = ({document}) => {
  const names = plantingsWithoutRows(document)
  const cells = document.sheets.flatMap((one, sheet): Entry[] => {
    if (one.rowEach !== "planting") return []
    const keys = namesSought(one)
    const missing = names.filter((name) => !keys.has(soughtAs(name)))
    return missing.map((content, i) => ({at: {sheet, row: one.rows.length + i, col: 0}, content}))
  })
  cells.push(...standsOf(document, names))
  return cells.length ? {type: "enter", cells, name: `rows of ${inWords(names)}`} : null
}

/** "Brook End", or "3 plantings". */
export const inWords = (names: readonly string[]) =>
  names.length === 1 ? names[0]! : `${names.length} plantings`

const namesSought = ({rows}: Sheet, col = 0) => new Set(rows.map((row) => soughtAs(row[col])))

/** The column of the sheet of plantings that says when each was planted: its first one of dates. */
const plantedAt = (document: Document, sheet: number) =>
  columnWith(document, sheet, "name of planting") < 0
    ? -1
    : document.sheets[sheet]!.columns.findIndex(({format}) => format === "date")
