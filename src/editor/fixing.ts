import {referenceOf, referenceText, type Corner} from "../workbook/formula"
import {decimalOf, type Decimal} from "../workbook/region"
import {placedTokens, type Place} from "./brackets"
import type {Turn} from "./store"

/** The next way to fix a corner by "$": none, both, the row, the column, none. A whole column or row has two ways. */
function nextFixed(corner: Corner): Pick<Corner, "colFixed" | "rowFixed"> {
  const {row, col, colFixed, rowFixed} = corner
  if (row === null) return {colFixed: !colFixed, rowFixed: false}
  if (col === null) return {colFixed: false, rowFixed: !rowFixed}
  return {colFixed: !colFixed, rowFixed: colFixed === rowFixed}
}

/** The formula with the reference at the caret fixed in the next way, and where that reference then stands; null without one. */
export function withNextFixed(
  text: string,
  caret: number,
  decimal: Decimal = ".",
): {text: string; place: Place} | null {
  if (!text.startsWith("=")) return null
  const found = placedTokens(text, decimal).find(
    ({kind, start, end}) => kind === "reference" && start <= caret && caret <= end,
  )
  if (!found) return null
  const reference = referenceOf(found.text)
  const {from, to} = reference
  const fixed = nextFixed(from) // both corners go as the first
  const written = referenceText({...reference, from: {...from, ...fixed}, to: {...to, ...fixed}})
  const {start} = found
  return {
    text: text.slice(0, start) + written + text.slice(found.end),
    place: {start, end: start + written.length},
  }
}

/** Fixes the reference at the caret by "$" in the next way; the caret goes to its end. */
export const fixReference: Turn = ({editing, document}) => {
  const next = editing && withNextFixed(editing.text, editing.caret, decimalOf(document))
  if (!next) return {}
  const {text, place} = next
  const pointed = editing.pointed && {...editing.pointed, ...place} // it can still be pointed elsewhere
  return {
    editing: {...editing, text, caret: place.end, refused: null, arrowsLeave: false, pointed},
    said: `${text.slice(place.start, place.end)}.`,
  }
}
