import {cellColumn, measureAt} from "../editor/cellColumn"
import {textOf} from "../editor/display"
import {measureOf, shownNumber} from "../editor/measures"
import type {Store} from "../editor/store"
import type {AsShown} from "../storage/book/bookOf"
import type {Document} from "../workbook/document"
import {regionOf} from "../workbook/region"
import type {OutCopy} from "./keeping"

/** What a copy for other programs is made of; the forms are loaded when they are asked for. */
export async function copyOut(store: Store, copy: OutCopy, sheet: number, on: Date) {
  const {document} = store.getState()
  if (copy.form === "csv") {
    const {text, parted} = (await import("../editor/csvOut")).csvOf(store, sheet)
    const name = [document.name, document.sheets[sheet]!.name, parted].filter(Boolean).join(" ")
    return {data: text, name, ending: "csv"}
  }
  const made = await bookToSend(store, copy)
  const data =
    copy.form === "xlsx"
      ? (await import("../storage/book/xlsxOut")).writeXlsx(made.book, on)
      : (await import("../storage/book/odsOut")).writeOds(made.book, on)
  const name = copy.holds === "values" ? `${document.name} values` : document.name
  return {data, name, ending: copy.form}
}

/** What such a copy will not hold, in sentences without a full stop. */
export async function leftOutOf(store: Store, copy: OutCopy, sheet: number): Promise<readonly string[]> {
  if (copy.form !== "csv") return (await bookToSend(store, copy)).left
  const {name} = store.getState().document.sheets[sheet]!
  return [`Only the values of ${name} are in it, without formulas, notes and formats, and no other sheet`]
}

async function bookToSend(store: Store, {form, holds}: Exclude<OutCopy, {form: "csv"}>) {
  const {fullCopy, valuesCopy} = await import("../storage/book/bookOf")
  return holds === "formulas"
    ? fullCopy(store.workbook, form)
    : valuesCopy(store.workbook, asShown(store.getState().document), form)
}

/** Numbers and units of a copy of values, as the region of the workbook shows them. */
function asShown(document: Document): AsShown {
  const region = regionOf(document)
  return {
    number: (at, stored) => shownNumber(stored, measureAt(document, at)),
    unit: (stored) => measureOf(stored, region).unit,
    words: (at, stored) => textOf(stored, cellColumn(document, at), false, region),
    moreDecimals: (at) => measureAt(document, at).moreDecimals,
  }
}
