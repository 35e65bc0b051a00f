import {caseCells} from "../../studies/cases"
import {isSameCell, type CellAddress, type Content, type Document} from "../../workbook/document"
import {cellsWith, extraAt, type ExtraChange} from "../../workbook/extras"
import type {Command} from "../store"
import type {RowName} from "../../workbook/trace"
import {loweredName} from "../words"

/** Why a case cannot be called so, in a sentence, or null. */
export function caseNameRefused({cases = []}: Document, name: string): string | null {
  if (name === "") return "A case needs a name: type a word or two"
  const twin = cases.find((one) => one.toLowerCase() === name.toLowerCase())
  return twin === undefined ? null : `Another case is called “${twin}”: choose another name`
}

/** Begins a case that changes nothing yet. */
export const addCase =
  (name: string): Command =>
  ({document}) =>
    caseNameRefused(document, name) === null
      ? {type: "changeCases", names: [...(document.cases ?? []), name], changes: [], name: `case ${name}`}
      : null

/** Drops a case with all that it changes. */
export const removeCase =
  (name: string): Command =>
  ({document}) => {
    const names = (document.cases ?? []).filter((one) => one !== name)
    const changes = caseCells(document, name).map(({at}) => withoutCase(document, at, name))
    return {type: "changeCases", names, changes, name: `case ${name} dropped`}
  }

/** What a cell holds in a case. Here and below, `rowName` calls rows by what their first cell works out. */
export const putInCase =
  (name: string, at: CellAddress, content: Content, rowName?: RowName): Command =>
  ({document}) => {
    const cases = extraAt(document, at)?.cases
    if (cases && name in cases && cases[name] === content) return null
    const change = {at, cases: {...cases, [name]: content}}
    return caseEdit(document, [change], `${loweredName(document, at, rowName)} in case ${name}`)
  }

/** A case changes this cell no more. */
export const takeFromCase =
  (name: string, at: CellAddress, rowName?: RowName): Command =>
  ({document}) =>
    caseEdit(
      document,
      [withoutCase(document, at, name)],
      `${loweredName(document, at, rowName)} out of case ${name}`,
    )

/** Puts what a case changes into the workbook, in one step. */
export const putCaseIn =
  (name: string): Command =>
  ({document}) => {
    const cells = caseCells(document, name)
    return cells.length ? {type: "enter", cells, name: `case ${name} put in`} : null
  }

/** Compares the cases by a cell too, or no more. */
export const compareBy =
  (at: CellAddress, rowName?: RowName): Command =>
  ({document}) => {
    const compared = cellsWith(document, (extra) => extra.compared).some((one) => isSameCell(one.at, at))
    const name = `${loweredName(document, at, rowName)} ${compared ? "not compared" : "compared"}`
    return caseEdit(document, [{at, compared: compared ? null : true}], name)
  }

const caseEdit = (document: Document, changes: readonly ExtraChange[], name: string) => ({
  type: "changeCases" as const,
  names: document.cases ?? [],
  changes,
  name,
})

function withoutCase(document: Document, at: CellAddress, name: string): ExtraChange {
  const {[name]: _, ...others} = extraAt(document, at)?.cases ?? {}
  return {at, cases: Object.keys(others).length ? others : null}
}
