import {sheetWith, type Content} from "../../workbook/document"
import type {Command} from "../store"

/** Puts the ranges of one planting in their row, or in a new one; the first content is the planting's name. */
export const keepRanges =
  (contents: readonly [string, ...Content[]]): Command =>
  ({document}) => {
    const sheet = sheetWith(document, "range of the study")
    if (sheet < 0 || contents.length > document.sheets[sheet]!.columns.length) return null
    const {rows} = document.sheets[sheet]!
    const found = rows.findIndex(([planting]) => planting === contents[0])
    const row = found < 0 ? rows.length : found
    return {
      type: "enter",
      cells: contents.map((content, col) => ({at: {sheet, row, col}, content})),
      name: `ranges of ${contents[0]} kept`,
    }
  }
