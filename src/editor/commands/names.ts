import {contentAt, isFormula, type CellAddress, type Document} from "../../workbook/document"
import {catalogue} from "../../../functions/catalogue"
import {isUsableName, namesIn} from "../../workbook/names"
import {columnAt} from "../../workbook/extras"
import {tokens} from "../../workbook/formula"
import type {Command} from "../store"
import {cellName} from "../words"

/** Why a value cannot be called so, in a sentence, or null. `functions` are the names of all functions. */
export function nameRefused(document: Document, name: string, functions: readonly string[]): string | null {
  if (name === "") return "A named value needs a name, such as Crate_weight"
  if (!isUsableName(name))
    return `“${name}” cannot be a name: use letters, digits and “_”, begin with a letter, and not like a cell such as B2`
  const twin = namesIn(document).find((one) => one.name.toLowerCase() === name.toLowerCase())
  if (twin) return `There is a value called ${twin.name} already: choose another name`
  const taken = [...functions, ...catalogue.map((one) => one.name)].some((one) => one === name.toUpperCase())
  return taken ? `${name.toUpperCase()} is a function: choose another name` : null
}

/** The sheet that new names are put on, or -1. */
export const namingSheet = ({sheets}: Document) => sheets.findIndex(({names}) => names)

/** Whether a cell holds a value of its own that can be given a name. */
export function canBeNamed(document: Document, at: CellAddress): boolean {
  const content = contentAt(document, at)
  const sheet = document.sheets[at.sheet]
  return content !== null && !isFormula(content) && !sheet?.names && namingSheet(document) >= 0
}

/** Gives the value of a cell a name: it moves to the sheet of named values, and the cell reads it from there. */
export const nameValue =
  (at: CellAddress, name: string): Command =>
  ({document}) => {
    if (!canBeNamed(document, at)) return null
    const sheet = namingSheet(document)
    const {rows, columns} = document.sheets[sheet]!
    const row = rows.length
    const told = {unit: columnAt(document, at)?.unit, "what it is": cellName(document, at)}
    const besides = Object.entries(told).flatMap(([heading, content]) => {
      const col = columns.findIndex((column, c) => c > 1 && column.heading.toLowerCase() === heading)
      return col < 0 || content === undefined ? [] : [{at: {sheet, row, col}, content}]
    })
    return {
      type: "enter",
      name: `name ${name}`,
      cells: [
        {at: {sheet, row, col: 0}, content: name},
        {at: {sheet, row, col: 1}, content: contentAt(document, at)},
        ...besides,
        {at, content: `=${name}`},
      ],
    }
  }

/** A named value with what its row says of it, and in how many formulas it is used. */
export interface NameInUse {
  readonly name: string
  readonly at: CellAddress
  readonly unit: string
  readonly about: string
  /** A formula of a column counts once. */
  readonly uses: number
}

export function namesWithUse(document: Document): readonly NameInUse[] {
  const uses = new Map<string, number>()
  for (const {columns, rows} of document.sheets) {
    const formulas = [...columns.flatMap(({formula, total}) => [formula, total]), ...rows.flat()]
    for (const formula of formulas) {
      if (!isFormula(formula)) continue
      const named = tokens(formula).filter(({kind}) => kind === "name")
      for (const name of new Set(named.map(({text}) => text.toLowerCase())))
        uses.set(name, (uses.get(name) ?? 0) + 1)
    }
  }
  return namesIn(document).map(({name, at}) => {
    const {columns, rows} = document.sheets[at.sheet]!
    const said = (heading: string) => {
      const col = columns.findIndex((column, c) => c > 1 && column.heading.toLowerCase() === heading)
      return String((col < 0 ? null : rows[at.row]?.[col]) ?? "")
    }
    return {name, at, unit: said("unit"), about: said("what it is"), uses: uses.get(name.toLowerCase()) ?? 0}
  })
}
