import {referenceOf, referenceText, tokens, type Corner, type Token} from "../../workbook/formula"
import {COLUMN_ENDS} from "./book"

/** What a sheet is called on the other side, and how many rows of headings stand above its cells there. */
export interface Counterpart {
  readonly name: string
  readonly heads: number
}

/** The counterpart of the sheet of a name, without regard to case; of the formula's own sheet for null. */
export type CounterpartOf = (sheet: string | null) => Counterpart | null

/** Functions that take addresses as words or numbers, which cannot be moved along. */
const BY_WORDS = /^(INDIRECT|ADDRESS)$/

/**
 * A formula of ours by the addresses of a file, where headings stand above the cells: rows move down, a whole column is
 * that from below its heading to the row `end`, one of COLUMN_ENDS, and ROW() counts less. Null where a function takes addresses as words.
 */
export function inFile(formula: string, counterpartOf: CounterpartOf, end: number): string | null {
  const own = counterpartOf(null)!
  const pieces = moved(formula, counterpartOf, (corner, heads, side) => {
    if (corner.row !== null) return {...corner, row: corner.row + heads}
    return corner.col === null || heads === 0
      ? corner
      : {...corner, row: side === "from" ? heads : end, rowFixed: true}
  })
  return pieces && withRowCounted(pieces, (call) => (own.heads === 0 ? call : `(${call}-${own.heads})`))
}

/** The way back: null too where a formula points at a heading. */
export function fromFile(formula: string, counterpartOf: CounterpartOf): string | null {
  const own = counterpartOf(null)!
  const isCounted = new RegExp(String.raw`\((ROW\([^()]*\))-${own.heads}\)`, "gi")
  const held =
    own.heads === 0 ? formula : formula.replace(isCounted, (_, call: string) => `${COUNTED}${call}`)
  const pieces = moved(held, counterpartOf, (corner, heads) => {
    if (corner.row === null || heads === 0) return corner
    return corner.row < heads ? null : {...corner, row: corner.row - heads}
  })
  if (!pieces) return null
  const text = withRowCounted(pieces, (call, before) =>
    own.heads === 0 || before?.text === COUNTED ? call : `(${call}+${own.heads})`,
  )
  return text.replaceAll(COUNTED, "")
}

/** Marks a ROW() that has its headings taken off; no formula holds this sign. */
const COUNTED = "\ue000"

function moved(
  formula: string,
  counterpartOf: CounterpartOf,
  corner: (corner: Corner, heads: number, side: "from" | "to") => Corner | null,
): readonly Token[] | null {
  const pieces: Token[] = []
  for (const token of tokens(formula)) {
    if (token.kind === "function" && BY_WORDS.test(token.text.toUpperCase())) return null
    if (token.kind !== "reference") {
      pieces.push(token)
      continue
    }
    const reference = referenceOf(token.text)
    const there = counterpartOf(reference.sheet)
    if (!there) return null
    const sheet = reference.sheet === null ? null : there.name
    if (isWholeColumn(reference, there.heads)) {
      const [from, to] = [reference.from, reference.to].map((one) => ({...one, row: null, rowFixed: false}))
      pieces.push({...token, text: referenceText({sheet, from: from!, to: to!, isRange: true})})
      continue
    }
    const [from, to] = [corner(reference.from, there.heads, "from"), corner(reference.to, there.heads, "to")]
    if (!from || !to) return null
    pieces.push({...token, text: referenceText({...reference, sheet, from, to})})
  }
  return pieces
}

/** "B2:B10000" where a row of headings stands above, and "B1:B10000". */
const isWholeColumn = ({from, to}: {from: Corner; to: Corner}, heads: number) =>
  to.row !== null &&
  COLUMN_ENDS.includes(to.row) &&
  from.row !== null &&
  from.row <= heads &&
  from.col !== null

/** Puts something else for each call of ROW that is empty or holds one reference. */
function withRowCounted(
  pieces: readonly Token[],
  counted: (call: string, before: Token | undefined) => string,
): string {
  let text = ""
  for (let i = 0; i < pieces.length; i++) {
    const end = pieces[i]!.kind === "function" && /^row$/i.test(pieces[i]!.text) ? endOfCall(pieces, i) : -1
    if (end < 0) {
      text += pieces[i]!.text
      continue
    }
    const call = pieces.slice(i, end + 1)
    text += counted(call.map((one) => one.text).join(""), pieces[i - 1])
    i = end
  }
  return text
}

/** Where the call that begins at a piece ends: at its first closing bracket, for one without brackets within. */
const endOfCall = (pieces: readonly Token[], start: number) =>
  pieces.findIndex(({text}, i) => i > start && text === ")")
