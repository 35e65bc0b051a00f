import {chosenCells} from "../block"
import type {Command} from "../store"
import {keptInView, type Format} from "../../workbook/document"
import {extraAt} from "../../workbook/extras"

/** Shows the chosen cells in a format of their own; null gives them that of their columns again. */
export const formatCells =
  (format: NonNullable<Format> | null): Command =>
  (state) => {
    const {rows} = state.document.sheets[state.cell.sheet]!
    const changes = [...chosenCells(state)]
      .filter((at) => at.row < rows.length && (extraAt(state.document, at)?.format ?? null) !== format)
      .map((at) => ({at, format}))
    return changes.length ? {type: "changeExtras", changes} : null
  }

/** Keeps so many columns of the open sheet in view while the others scroll sideways. */
export const keepColumns =
  (count: number): Command =>
  ({document, cell: {sheet}}) =>
    keptInView(document.sheets[sheet]!) === count ? null : {type: "keepColumns", sheet, count}
