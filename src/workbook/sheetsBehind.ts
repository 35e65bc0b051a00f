import {contentAt, isFormula, type Document, type Sheet} from "./document"
import {referenceOf, tokens} from "./formula"
import {namesIn} from "./names"

/**
 * The sheets that a sheet rests on, itself among them: those its formulas and totals point to, and so on. Of a sheet that names
 * values, only what the names that are used rest on counts.
 */
export function sheetsBehind(document: Document, sheet: number): ReadonlySet<number> {
  return behindOf(document, sheet)
}

/** The sheets that a formula on a sheet rests on. */
export function sheetsBehindFormula(document: Document, formula: string, sheet: number): ReadonlySet<number> {
  return behindOf(document, sheet, formula)
}

function behindOf(document: Document, first: number, formula?: string): ReadonlySet<number> {
  const {sheets} = document
  const whole = new Set([first])
  const behind = new Set(whole)
  const places = new Map(namesIn(document).map(({name, at}) => [name.toLowerCase(), at]))
  const asked = new Set<string>()
  const follow = (pointing: Pointing) => {
    for (const name of pointing.sheets) {
      const found = sheets.findIndex((one) => one.name.toLowerCase() === name)
      if (found >= 0 && !whole.has(found)) {
        whole.add(found)
        behind.add(found)
        follow(pointedTo(sheets[found]!))
      }
    }
    for (const name of pointing.names) {
      const at = places.get(name)
      if (!at || asked.has(name)) continue
      asked.add(name)
      behind.add(at.sheet)
      const content = contentAt(document, at)
      if (isFormula(content)) follow(pointedToBy([content]))
    }
  }
  follow(pointedTo(sheets[first]!))
  if (formula !== undefined) follow(pointedToBy([formula]))
  return behind
}

interface Pointing {
  /** In lower case. */
  readonly sheets: ReadonlySet<string>
  readonly names: ReadonlySet<string>
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
  const known = inRow.get(row)
  if (known) return known
  const found = row.filter(isFormula)
  inRow.set(row, found)
  return found
}

function pointedToBy(formulas: Iterable<string>): Pointing {
  const [sheets, names] = [new Set<string>(), new Set<string>()]
  for (const formula of formulas)
    for (const {kind, text} of tokens(formula)) {
      const sheet = kind === "reference" && text.includes("!") ? referenceOf(text).sheet : null
      if (sheet !== null) sheets.add(sheet.toLowerCase())
      if (kind === "name") names.add(text.toLowerCase())
    }
  return {sheets, names}
}
