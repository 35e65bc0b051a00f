import {textWidth, LETTER, type Box} from "./placing"

// What the parts of the season calendar share: its days across, px, and the room of its words.

/** From the first day to the day after the last. */
export interface Axis {
  readonly first: number
  readonly end: number
  readonly perDay: number
}

export interface Words {
  readonly text: string
  readonly x: number
  /** Of the base line. */
  readonly y: number
  readonly end: boolean
}

export interface Span {
  readonly x: number
  readonly width: number
}

export interface Place {
  readonly axis: Axis | null
  readonly top: number
  readonly rowHeight: number
  readonly width: number
  readonly inside: boolean
  readonly asOf: number | null
}

/** px kept free at both ends of the axis, so that the largest mark is never cut. Chosen. */
export const EDGE = 10

/** The left edge of a day. */
export const xOfDay = (axis: Axis, day: number): number => EDGE + (day - axis.first) * axis.perDay

export const onAxis = (axis: Axis, day: number) => Math.min(Math.max(day, axis.first), axis.end)

/** The part of a stretch of days that is on the axis, or null when none of it is. */
export function spanOf(axis: Axis, from: number, to: number): Span | null {
  const x = xOfDay(axis, onAxis(axis, from))
  const width = xOfDay(axis, onAxis(axis, to)) - x
  return width > 0 ? {x, width} : null
}

/** The room that words take, with `margin` px after them. */
export function boxOfWords({text, x, y, end}: Words, margin = 0): Box {
  const wide = textWidth(text)
  const left = end ? x - wide : x
  return {left, right: left + wide + margin, top: y - LETTER * 0.72, bottom: y + LETTER * 0.22}
}
