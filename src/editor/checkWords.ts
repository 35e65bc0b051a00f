import type {Words} from "../workbook/checks/finding"
import type {Workbook} from "../workbook/workbook"
import {textWithUnit} from "./display"
import {columnAt} from "./editing"
import {cellName} from "./words"

/** How checks tell a cell and its values: as the screen does. On a naming sheet a value goes by its name. */
export const checkWords = (workbook: Pick<Workbook, "document" | "isDateAt">): Words => ({
  name(at) {
    const {names, rows} = workbook.document.sheets[at.sheet]!
    const named = names && at.col === 1 ? rows[at.row]?.[0] : null
    return named ? String(named) : cellName(workbook.document, at)
  },
  shown: (at, value) => textWithUnit(value, columnAt(workbook.document, at), workbook.isDateAt(at)),
})
