import {isFormula, type Document, type Sheet} from "./document"
import {referenceOf, tokens} from "./formula"

/** The sheets that a sheet rests on, itself among them: those its formulas and totals point to, and so on. */
export function sheetsBehind(document: Document, sheet: number): ReadonlySet<number> {
  const behind = new Set<number>()
  const names = namingSheets(document)
  const add = (sheet: number) => {
    if (sheet < 0 || behind.has(sheet)) return
    behind.add(sheet)
    const {sheets, usesNames} = pointedTo(document.sheets[sheet]!)
    for (const name of sheets) add(document.sheets.findIndex((one) => one.name.toLowerCase() === name))
    if (usesNames) names.forEach(add)
  }
  add(sheet)
  return behind
}

/** The sheets that a formula on a sheet rests on. */
export function sheetsBehindFormula(document: Document, formula: string, sheet: number): ReadonlySet<number> {
  const {sheets, usesNames} = pointedToBy([formula])
  const own = document.sheets.flatMap((one, i) =>
    i === sheet || sheets.has(one.name.toLowerCase()) || (usesNames && one.names) ? [i] : [],
  )
  return new Set(own.flatMap((one) => [...sheetsBehind(document, one)]))
}

const namingSheets = ({sheets}: Document) => sheets.flatMap(({names}, i) => (names ? [i] : []))

interface Pointing {
  /** In lower case. */
  readonly sheets: ReadonlySet<string>
  readonly usesNames: boolean
}

const held = new WeakMap<Sheet, Pointing>()

/** Read once for each sheet: an edit leaves the other sheets what they were. */
function pointedTo(sheet: Sheet): Pointing {
  const found = held.get(sheet) ?? pointedToBy(formulasOf(sheet))
  held.set(sheet, found)
  return found
}

function formulasOf({columns, rows}: Sheet): Set<string> {
  const formulas = new Set<string>()
  for (const {formula, total} of columns) for (const one of [formula, total]) if (one) formulas.add(one)
  for (const row of rows) for (const one of formulasIn(row)) formulas.add(one)
  return formulas
}

const inRow = new WeakMap<Sheet["rows"][number], readonly string[]>()

/** Read once for each row: an edit leaves the other rows what they were. */
function formulasIn(row: Sheet["rows"][number]): readonly string[] {
  const found = inRow.get(row) ?? row.filter(isFormula)
  inRow.set(row, found)
  return found
}

function pointedToBy(formulas: Iterable<string>): Pointing {
  const sheets = new Set<string>()
  let usesNames = false
  for (const formula of formulas)
    for (const {kind, text} of tokens(formula)) {
      const sheet = kind === "reference" && text.includes("!") ? referenceOf(text).sheet : null
      if (sheet !== null) sheets.add(sheet.toLowerCase())
      usesNames ||= kind === "name"
    }
  return {sheets, usesNames}
}
