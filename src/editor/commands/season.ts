import {isoOf} from "../../../functions/calendar"
import {
  COLUMN_FORMULA,
  columnWith,
  contentAt,
  sheetWith,
  type CellAddress,
  type Content,
  type Document,
  type Part,
} from "../../workbook/document"
import type {Entry} from "../../workbook/edit"
import {lastEntered, type FieldMark} from "../../workbook/fieldActs"
import {hasPlace, type FieldContents} from "../../workbook/fieldRows"
import {planSheet, type Plan} from "../../workbook/plan"
import type {Command} from "../store"

/** Keeps the plan as it stands as the one that was agreed on a day, one row for each planting. */
export const agreePlan =
  (plan: Plan, on: string): Command =>
  ({document}) =>
    rowsEdit(
      document,
      "agreed planting",
      plan.rows.map(({planting, opens, closes, heldBy, crop, lostInWaits}) => [
        planting,
        {
          "agreed on": on,
          "agreed open": dayOrNull(opens),
          "agreed close": dayOrNull(closes) ?? (opens === null ? "not cut" : null),
          "agreed held by": heldBy,
          "agreed crop": crop === null ? null : tonnes(crop),
          "agreed lost": lostInWaits === 0 ? null : tonnes(lostInWaits),
        },
      ]),
      "plan agreed",
    )

const tonnes = (kg: number) => Number((kg / 1000).toFixed(3))

/** Takes the plan as it stands for this week's: what moves from now on is told against it. */
export const takeWeek =
  (plan: Plan): Command =>
  ({document}) =>
    rowsEdit(
      document,
      "week planting",
      plan.rows.map(({planting, closes, heldBy}) => [
        planting,
        {"close last week": dayOrNull(closes), "held by last week": heldBy},
      ]),
      "this week’s plan used",
    )

/** Moves the close of a row of the plan to a day, over its formula; null gives it the formula again. */
export const moveClose =
  (row: number, day: number | null): Command =>
  ({document}) => {
    const sheet = planSheet(document)
    const col = sheet < 0 ? -1 : columnWith(document, sheet, "close")
    if (col < 0 || row >= document.sheets[sheet]!.rows.length) return null
    if (day === null && document.sheets[sheet]!.columns[col]!.formula === undefined) return null
    const content = day === null ? COLUMN_FORMULA : isoOf(day)
    const at = {sheet, row, col}
    return contentAt(document, at) === content ? null : {type: "enter", cells: [{at, content}]}
  }

/** Closes a planting to fern on a day, with the reason: it leads over every limit of the plan. */
export const closeToFern =
  (planting: string, day: string, reason: string): Command =>
  ({document}) =>
    rowsEdit(
      document,
      "name of planting",
      [[planting, {closed: day, "why closed": reason.trim() || null}]],
      `${planting} closed to fern`,
    )

/** What the field page adds: a picking, a count of spears, or a root sample, in a new row of its sheet. */
export const addFieldRow =
  (row: FieldContents, mark: FieldMark, name: string): Command =>
  ({document}) =>
    hasPlace(document, row) ? {type: "addField", entries: [{...mark, row}], from: "here", name} : null

/** Takes back what was entered in the field last. It stays known, so that it does not come again from another device. */
export const takeFieldRowBack =
  (id: string, mark: FieldMark): Command =>
  ({document}) =>
    lastEntered(document, mark.entered)?.id === id
      ? {
          type: "addField",
          entries: [{...mark, takesBack: id}],
          from: "here",
          name: "a field row taken back",
        }
      : null

export type RowContents = readonly [key: string, contents: Partial<Record<Part, Content>>]

/** Puts contents into the rows of a sheet by the names in its column of `key`; a name that has no row gets one. */
export function rowsEdit(document: Document, key: Part, rows: readonly RowContents[], name: string) {
  const sheet = sheetWith(document, key)
  if (sheet < 0) return null
  const keyAt = columnWith(document, sheet, key)
  const existing = document.sheets[sheet]!.rows
  let next = existing.length
  const cells = rows.flatMap(([named, contents]): Entry[] => {
    const found = existing.findIndex((row) => row[keyAt] === named)
    const row = found < 0 ? next++ : found
    return cellsIn(document, {sheet, row}, {...(found < 0 ? {[key]: named} : {}), ...contents})
  })
  return cells.length ? ({type: "enter", cells, name} as const) : null
}

/** The cells of a row that would change. */
function cellsIn(
  document: Document,
  {sheet, row}: Pick<CellAddress, "sheet" | "row">,
  contents: Partial<Record<Part, Content>>,
): Entry[] {
  return Object.entries(contents).flatMap(([part, content]) => {
    const col = columnWith(document, sheet, part as Part)
    const was = document.sheets[sheet]!.rows[row]?.[col] ?? null
    return col < 0 || was === content || was === COLUMN_FORMULA ? [] : [{at: {sheet, row, col}, content}]
  })
}

const dayOrNull = (day: number | null) => (day === null ? null : isoOf(day))
