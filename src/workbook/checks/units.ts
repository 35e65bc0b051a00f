import {contentAt, sheetNamed, type CellAddress, type Document} from "../document"
import {referenceOf, tokens, type Token} from "../formula"
import {isDateFormat, writtenName, type Checked, type Written} from "./checked"
import {inARow, type Finding} from "./finding"

/**
 * Units that do not go together: two cells added, taken away or compared, or several columns summed, where each says its
 * unit and they differ. A date and a count of days go together; a cell without a unit says nothing, and what a
 * multiplication gives is not followed.
 */
export function units(checked: Checked): Finding[] {
  return checked.written.flatMap((written): Finding[] => {
    const mixed = mixedIn(checked, written)
    if (!mixed) return []
    const [act, ...parts] = mixed
    return [
      {
        rule: "units",
        cells: [written.at],
        sentence: `${writtenName(checked, written)} ${act} ${inARow(parts.map(({name, unit}) => `${name} in ${unit}`))}`,
      },
    ]
  })
}

interface Operand {
  readonly name: string
  readonly unit: string
}

function mixedIn(checked: Checked, {at, formula}: Written): readonly [string, ...Operand[]] | null {
  const written = tokens(formula).filter(({kind}) => kind !== "space")
  for (const [i, {kind, text}] of written.entries()) {
    if (kind === "function" && /^(SUM|AVERAGE)$/i.test(text)) {
      const summed = columnsSummed(checked, at, written[i + 2])
      if (new Set(summed.map(({unit}) => unit)).size > 1)
        return [text.toUpperCase() === "SUM" ? "sums" : "takes the mean of", ...summed]
    }
    const act = kind === "sign" ? ACTS[text] : undefined
    if (!act || !isFree(written[i - 2]) || !isFree(written[i + 2])) continue
    const [one, other] = [operandAt(checked, at, written[i - 1]), operandAt(checked, at, written[i + 1])]
    if (one && other && !goTogether(one.unit, other.unit, text)) return [act, one, other]
  }
  return null
}

const ACTS: Readonly<Record<string, string>> = {
  "+": "adds",
  "-": "takes one from the other of",
  "<": "compares",
  ">": "compares",
  "<=": "compares",
  ">=": "compares",
}

/** Whether an operand ends here, and is no factor of a product or the corner of something larger. */
const isFree = (token: Token | undefined) =>
  token === undefined || (token.kind === "sign" && /^([-+=<>(),;]|<>|<=|>=)$/.test(token.text))

function goTogether(one: string, other: string, sign: string): boolean {
  if (one === other) return true
  const isDate = one === DATE || other === DATE
  return isDate && (one === "day" || other === "day") && /^[-+]$/.test(sign)
}

const DATE = "dates"

function operandAt({document, names}: Checked, at: CellAddress, token: Token | undefined): Operand | null {
  if (token?.kind === "name") {
    const named = names.get(token.text.toLowerCase())
    const unit = named && unitOfNamed(document, named.at)
    return named && unit ? {name: named.name, unit} : null
  }
  if (token?.kind !== "reference") return null
  const {sheet: name, from, isRange} = referenceOf(token.text)
  const sheet = name === null ? at.sheet : sheetNamed(document.sheets, name)
  return isRange || from.col === null ? null : operandIn(document, sheet, from.col)
}

function operandIn({sheets}: Document, sheet: number, col: number): Operand | null {
  const column = sheets[sheet]?.columns[col]
  if (!column || sheets[sheet]!.names) return null
  const unit = isDateFormat(column.format) ? DATE : plainUnit(column.unit)
  return unit ? {name: column.heading, unit} : null
}

function columnsSummed({document}: Checked, at: CellAddress, token: Token | undefined): Operand[] {
  if (token?.kind !== "reference") return []
  const {sheet: name, from, to} = referenceOf(token.text)
  if (from.col === null || to.col === null) return []
  const sheet = name === null ? at.sheet : sheetNamed(document.sheets, name)
  const [first, last] = [Math.min(from.col, to.col), Math.max(from.col, to.col)]
  return Array.from({length: last - first + 1}, (_, i) => first + i).flatMap(
    (col) => operandIn(document, sheet, col) ?? [],
  )
}

/** The unit that a naming sheet gives in its column of that heading. */
function unitOfNamed(document: Document, at: CellAddress): string | null {
  const {columns} = document.sheets[at.sheet]!
  const unit = contentAt(document, {...at, col: columns.findIndex(({heading}) => heading === "Unit")})
  if (typeof unit !== "string" || ["text", "number", "count", "share"].includes(unit)) return null
  return unit === "date" ? DATE : plainUnit(unit)
}

const plainUnit = (unit: string | undefined) => (unit === undefined ? null : (SAME_UNIT[unit] ?? unit))

const SAME_UNIT: Readonly<Record<string, string>> = {
  days: "day",
  yr: "year",
  years: "year",
  weeks: "week",
  hours: "h",
}
