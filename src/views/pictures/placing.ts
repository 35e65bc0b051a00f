/** A rectangle in the picture, px. */
export interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

export const boxAround = (x: number, y: number, halfWidth: number, halfHeight: number): Box => ({
  left: x - halfWidth,
  right: x + halfWidth,
  top: y - halfHeight,
  bottom: y + halfHeight,
})

/** Area that two boxes share, px². Boxes that only touch share none. */
export function overlap(one: Box, other: Box): number {
  const wide = Math.min(one.right, other.right) - Math.max(one.left, other.left)
  const high = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top)
  return wide > 0 && high > 0 ? wide * high : 0
}

export const overlaps = (box: Box, others: readonly Box[]): number =>
  others.reduce((area, other) => area + overlap(box, other), 0)

/** The first candidate whose box is clear of all obstacles, or the one that shares the least area with them. */
export function clearest<T extends {readonly box: Box}>(
  candidates: readonly T[],
  obstacles: readonly Box[],
): T | undefined {
  let best: T | undefined
  let least = Infinity
  for (const candidate of candidates) {
    const area = overlaps(candidate.box, obstacles)
    if (area === 0) return candidate
    if (area < least) [best, least] = [candidate, area]
  }
  return best
}

/** Size of the letters in a picture, px: the small size of the tokens. */
export const LETTER = 14

/**
 * About how wide a text is in the sans, px, rather too wide than too narrow. Chosen by classes of letters, so that
 * the layout needs no page to measure on and comes out the same everywhere.
 */
export function textWidth(text: string, size = LETTER): number {
  let width = 0
  for (const letter of text) {
    let one = widths.get(letter)
    if (one === undefined) widths.set(letter, (one = letterWidth(letter)))
    width += size * one
  }
  return width
}

/** Of each letter that was met: a calendar of 50 rows asks for thousands at each step of a close that is moved. */
const widths = new Map<string, number>()

function letterWidth(letter: string) {
  if (/[ ijl.,:;'|!]/.test(letter)) return 0.28
  if (/[frt()/\u2013-]/.test(letter)) return 0.37
  if (/[mwMW\u2190\u2192\u2026]/.test(letter)) return 0.88
  if (/[A-Z]/.test(letter)) return 0.63
  if (/[\u2e80-\uffff]/.test(letter)) return 1
  return 0.55
}

/** The room that words take whose line begins at `x` and stands on `y`, px. */
export const boxOfText = (text: string, x: number, y: number): Box => ({
  left: x,
  right: x + textWidth(text),
  top: y - 11,
  bottom: y + 3,
})

/** How much wider a name is in the strong weight of its pictures. */
export const BOLD = 1.06

/** Letters of a last word that stays when a name is cut short: "12" or "East" may be all that tells it from others. Chosen. */
const SHORT_WORD = 4

/** The text, cut short with an ellipsis where it is wider than the room for it; a short last word stays behind that. */
export function fitted(text: string, room: number): string {
  if (textWidth(text) <= room) return text
  const last = text.slice(text.lastIndexOf(" ") + 1)
  const end = last.length < text.length && last.length <= SHORT_WORD ? `\u2026 ${last}` : "\u2026"
  const letters = [...text]
  while (letters.length > 1 && textWidth(letters.join("") + end) > room) letters.pop()
  return letters.join("").trimEnd() + end
}

/** "Bottom Mead…: 6 Jun to 7 Jun": the name cut short for what is said of it, which stays whole where it has the room. */
export function fittedName(said: string, room: number): string {
  const at = said.lastIndexOf(": ")
  const [name, what] = [said.slice(0, at), said.slice(at)]
  const left = room - textWidth(what)
  return at < 0 || left < textWidth("\u2026") ? fitted(said, room) : fitted(name, left) + what
}
