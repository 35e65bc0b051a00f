import {boxAround, clearest, textWidth, type Box} from "./placing"

interface Point {
  readonly x: number
  readonly y: number
}

/** px that bold letters are wider than the estimate, as a share. */
const BOLD = 1.06
const GAP = 7
/** Where the words may stand about the dot, the best first: to the side, then up and down, in half widths and heights. */
const PLACES: readonly (readonly [number, number])[] = [
  [1, 0.9],
  [1, 0],
  [1, -0.9],
  [-1, -0.9],
  [-1, -1.8],
  [0, -1.8],
  [0, 1.8],
  [1, 1.8],
  [-1, 0.9],
  [-1.5, -0.9],
  [1, 2.8],
]

/** Where words stand beside the last dot of a line: inside the room, and clear of the lines where that can be. */
export function beside(dot: Point, text: string, lines: readonly (readonly Point[])[], room: Box): Point {
  const half = (BOLD * textWidth(text)) / 2
  const high = 8
  const places = PLACES.map(([right, down]) => {
    const x = clamp(dot.x + right * (half + GAP), room.left + half, room.right - half)
    const y = clamp(dot.y + down * (high + 2), room.top + high, room.bottom - high)
    return {x: x - half, y: y + 5, box: boxAround(x, y, half, high)}
  })
  const obstacles = [boxAround(dot.x, dot.y, 4, 4), ...lines.flatMap(stretches)]
  const {x, y} = clearest(places, obstacles)!
  return {x, y}
}

/** A line as small boxes along it, px. */
export function stretches(line: readonly Point[]): Box[] {
  return line.slice(1).flatMap((to, i) => {
    const from = line[i]!
    const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / 4))
    return Array.from({length: steps + 1}, (_, n) =>
      boxAround(from.x + ((to.x - from.x) * n) / steps, from.y + ((to.y - from.y) * n) / steps, 1.5, 1.5),
    )
  })
}

const clamp = (value: number, least: number, most: number) => Math.min(most, Math.max(least, value))
