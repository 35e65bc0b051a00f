import {useState, type KeyboardEvent, type MouseEvent, type ReactNode} from "react"
import type {CellAddress} from "../../workbook/document"
import "./pictures.css"

/** A mark of a picture that the arrow keys stop at: its middle, px, and its size where it is more than a dot. */
export interface Stop {
  readonly x: number
  readonly y: number
  readonly width?: number
  readonly height?: number
  /** The line or row of marks that it belongs to; left out where the picture has one alone. */
  readonly line?: string | undefined
  /** Where it stands along its line, px; left out, its `x`. */
  readonly along?: number
  /** What it says, as a sentence. */
  readonly words: string
  /** What else is worked out and said once it is reached, as sentences. */
  readonly more?: (() => string) | undefined
  /** The cell behind it, where there is one. */
  readonly at?: CellAddress | undefined
}

interface Props {
  /** What the picture is of, for those who hear it. */
  readonly name: string
  /** What it shows, in sentences. */
  readonly label: string
  /** px */
  readonly width: number
  readonly height: number
  /** Those of a line in the order in which they are stepped over. */
  readonly stops: readonly Stop[]
  /** Goes to a cell; without it Enter does nothing. */
  readonly onGo?: ((at: CellAddress) => void) | undefined
  /** What is drawn in it. */
  readonly children: ReactNode
}

const DOT = 18 // px across the ring about a dot; chosen
const REACH = 16 // px beside a mark at which a pointer still means it; chosen

/**
 * A picture that the keys walk over: left and right from mark to mark, up and down from line to line, Home and End, Enter to the
 * cell behind it, Esc out of it. A press of the pointer reaches the mark under it, a second press goes to its cell.
 */
export function PictureWalk({name, label, width, height, stops, onGo, children}: Props) {
  const [reached, setReached] = useState<number | null>(null)
  const [isHere, setHere] = useState(false)
  const stop = reached === null ? undefined : stops[Math.min(reached, stops.length - 1)]
  const picture = (
    <svg
      className="pic"
      width={width}
      height={height}
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={label}
    >
      {children}
    </svg>
  )
  if (stops.length === 0) return picture

  const press = (event: KeyboardEvent<HTMLDivElement>) => {
    const {key, altKey, ctrlKey, metaKey} = event
    if (altKey || ctrlKey || metaKey) return
    const next = stepFrom(stops, reached, key)
    if (next !== null) setReached(next)
    else if (key === "Enter" && stop?.at && onGo) onGo(stop.at)
    else if (key === "Escape") event.currentTarget.blur()
    else return
    event.preventDefault()
  }

  const point = ({clientX, clientY, currentTarget}: MouseEvent<HTMLDivElement>) => {
    const place = currentTarget.getBoundingClientRect()
    const next = markAt(stops, clientX - place.left, clientY - place.top)
    if (next !== null && next === reached && stop?.at && onGo) onGo(stop.at)
    else setReached(next)
  }

  return (
    <div
      className="walk"
      role="group"
      aria-label={`${name}, ${stops.length} ${stops.length === 1 ? "mark" : "marks"}: ${keysWords(linesOf(stops).length)}`}
      tabIndex={0}
      onKeyDown={press}
      onClick={point}
      onFocus={() => {
        setReached(null)
        setHere(true)
      }}
      onBlur={() => setHere(false)}
    >
      {picture}
      {stop && isHere && <span className="ring" style={around(stop)} />}
      {/* The words keep their room when the picture is left: what was pressed below would go from under the pointer. */}
      <p className="walked" aria-live="polite" style={isHere ? undefined : {visibility: "hidden"}}>
        {stop &&
          [stop.words, stop.more?.() ?? "", stop.at && onGo ? "Enter goes to its cell." : ""]
            .filter((words) => words !== "")
            .join(" ")}
      </p>
    </div>
  )
}

const keysWords = (lines: number) =>
  lines === 1
    ? "the arrow keys step over them"
    : `left and right step over them, up and down lead to the others of ${lines} lines`

/** The numbers of the stops, line by line. */
function linesOf(stops: readonly Stop[]): readonly (readonly number[])[] {
  const lines = new Map<string, number[]>()
  for (const [i, {line = ""}] of stops.entries()) lines.set(line, [...(lines.get(line) ?? []), i])
  return [...lines.values()]
}

/**
 * The mark that a key leads to from the one that was reached, or from none: along its line, or to the mark of the line above or
 * below that is nearest to it. Where there is one line alone, up and down lead along it too. Null for any other key.
 */
export function stepFrom(stops: readonly Stop[], reached: number | null, key: string): number | null {
  const lines = linesOf(stops)
  const here = reached === null ? -1 : lines.findIndex((line) => line.includes(reached))
  const line = lines[Math.max(0, here)]!
  const at = reached === null ? -1 : line.indexOf(reached)
  const along = ({x, along = x}: Stop) => along
  const beside = (by: number) => {
    const other = lines[Math.max(0, Math.min(lines.length - 1, here + by))]!
    const off = (one: number) => Math.abs(along(stops[one]!) - along(stops[reached!]!))
    return other.reduce((nearest, one) => (off(one) < off(nearest) ? one : nearest))
  }
  const right = () => line[Math.min(line.length - 1, at + 1)]!
  const left = () => (reached === null ? stops.length - 1 : line[Math.max(0, at - 1)]!)
  const isAlone = lines.length === 1 || reached === null
  if (key === "ArrowRight") return right()
  if (key === "ArrowLeft") return left()
  if (key === "ArrowDown") return isAlone ? right() : beside(1)
  if (key === "ArrowUp") return isAlone ? left() : beside(-1)
  if (key === "Home") return line[0]!
  return key === "End" ? line.at(-1)! : null
}

/** The mark at a place of the picture, px, or the nearest one within reach: its number, or null. */
export function markAt(stops: readonly Stop[], x: number, y: number): number | null {
  const off = stops.map((stop) => {
    const [aside, above] = [Math.abs(x - stop.x), Math.abs(y - stop.y)]
    const gap = Math.hypot(
      Math.max(0, aside - (stop.width ?? DOT) / 2),
      Math.max(0, above - (stop.height ?? DOT) / 2),
    )
    return gap + Math.hypot(aside, above) / 1000 // of marks that lie over each other, the one about whose middle it is
  })
  const nearest = Math.min(...off)
  return nearest <= REACH + 1 ? off.indexOf(nearest) : null
}

const around = ({x, y, width = DOT, height = DOT}: Stop) => ({
  left: x - width / 2,
  top: y - height / 2,
  width,
  height,
})
