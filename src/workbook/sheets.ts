import {newColumns} from "./columns"
import {SHEET_NAME, sheetNamed, withSheet, type Document} from "./document"
import {pointingAt, withReferences} from "./references"

/** The document with a blank sheet of one column after its last sheet. */
export const withSheetAdded = (document: Document, name: string, group: string): Document => ({
  ...document,
  sheets: [...document.sheets, {name, group, columns: newColumns([], 1), rows: []}],
})

/** The document with a sheet called otherwise; every formula that pointed at it still does. */
export const withSheetRenamed = (document: Document, sheet: number, name: string): Document =>
  withSheet(withNameInFormulas(document, sheet, name), sheet, {name})

/** The document with a sheet at another place among the sheets. No formula changes: they know sheets by name. */
export function withSheetMoved(document: Document, from: number, to: number): Document {
  const {sheets} = document
  return {...document, sheets: sheets.toSpliced(from, 1).toSpliced(to, 0, sheets[from]!)}
}

/**
 * The document with a copy of a sheet after it; where the sheet points at itself by name, the copy points at the copy.
 * Of two sheets that play one part, or name one value, the first counts.
 */
export function withSheetCopied(document: Document, sheet: number, name: string): Document {
  const copy = {...withNameInFormulas(document, sheet, name).sheets[sheet]!, name}
  return {...document, sheets: document.sheets.toSpliced(sheet + 1, 0, copy)}
}

/** The document without a sheet; what pointed at it says #REF!. */
export function withSheetRemoved(document: Document, sheet: number): Document {
  const left = withReferences(
    document,
    pointingAt(document, sheet, () => "#REF!"),
  )
  return {...left, sheets: left.sheets.toSpliced(sheet, 1)}
}

/** Why a sheet cannot be called so, in a sentence, or null. `own` is the sheet to be renamed: its own name is free to it. */
export function sheetNameRefused({sheets}: Document, name: string, own?: number): string | null {
  const {longest, without, signs} = SHEET_NAME
  if (name.trim() === "") return "A sheet needs a name, so that formulas can point at it: type a word or two"
  if (name.length > longest)
    return `“${name}” has ${name.length} characters, and a sheet's name has ${longest} at most: shorten it`
  if (!signs.test(name)) return `“${name}” holds a sign that no sheet's name may hold: leave out ${without}`
  const twin = sheetNamed(sheets, name)
  return twin < 0 || twin === own
    ? null
    : `Another sheet is called “${sheets[twin]!.name}”, and a formula could not tell the two apart: choose another name`
}

const withNameInFormulas = (document: Document, sheet: number, name: string) =>
  withReferences(
    document,
    pointingAt(document, sheet, (reference) =>
      reference.sheet === null ? reference : {...reference, sheet: name},
    ),
  )
