import {contentAt, type CellAddress} from "../document"
import {tokens, type Token} from "../formula"
import {isUsableName} from "../names"
import {wordsIn, type Checked} from "./checked"
import type {Finding} from "./finding"

/** Named values that the pictures and the plan look for by their names, without a formula. */
const READ_BY_PROGRAM = new Set(["as_of", "season", "shown_planting", "spear_limit"])

/** Named values that nothing uses, that are used and blank, that no formula can call, or whose name another row has. */
export function namedValues(checked: Checked): Finding[] {
  const {document, names, workbook} = checked
  const {called, needed} = calledNames(checked)
  const found: Finding[] = []
  const tell = (at: CellAddress, sentence: string, alike?: string) =>
    found.push({rule: "named value", cells: [at], sentence, ...(alike && {alike})})
  for (const [sheet, {names: isNaming, rows}] of document.sheets.entries()) {
    if (!isNaming) continue
    for (const [row, [key]] of rows.entries()) {
      const name = wordsIn(key ?? null)
      if (name === null) continue
      const at = {sheet, row, col: 0}
      const value = {sheet, row, col: 1}
      const lower = name.toLowerCase()
      const named = names.get(lower)
      if (!isUsableName(name))
        tell(
          at,
          `No formula can call ${name}: a name has letters, digits and _ only, and does not read as a cell`,
        )
      else if (named!.at.row !== row || named!.at.sheet !== sheet)
        tell(at, `${name} is named twice: formulas mean the value in row ${named!.at.row + 1}`)
      else if (needed.has(lower) && contentAt(document, value) === null)
        tell(value, `${name} is blank, and formulas use it`, "are blank, and formulas use them")
      else if (!called.has(lower) && !READ_BY_PROGRAM.has(lower) && workbook.usersOf(value).length === 0)
        tell(at, `${name} is used nowhere`, "are used nowhere")
    }
  }
  return found
}

/** The names that formulas call, also those of columns that have no row yet; and those that some formula needs a value of. */
function calledNames({written}: Checked) {
  const called = new Set<string>()
  const needed = new Set<string>()
  for (const {formula} of written) {
    const pieces = tokens(formula).filter(({kind}) => kind !== "space")
    const names = pieces.flatMap(({kind, text}) => (kind === "name" ? [text.toLowerCase()] : []))
    for (const name of names) called.add(name)
    const asked = new Set(
      pieces.flatMap(({text}, at) => (asksForBlank(pieces.slice(at, at + 3)) ? [text.toLowerCase()] : [])),
    )
    for (const name of names) if (!asked.has(name)) needed.add(name)
  }
  return {called, needed}
}

/** Whether a formula asks if a named value is blank: `Spear_share=""`. It knows then what to do without one. */
const asksForBlank = ([name, sign, text]: readonly Token[]) =>
  name?.kind === "name" && sign?.text === "=" && text?.text === '""'
