import {LIMIT_NAMES, shapeOf} from "./limitShapes"

interface MarkShapeProps {
  readonly name: string
  readonly x: number
  readonly y: number
  readonly radius: number
  /** The limit that holds: drawn in the colour of what was chosen. */
  readonly binding?: boolean
}

/** The shape of a limit, to be drawn in a picture. */
export function MarkShape({name, x, y, radius, binding = false}: MarkShapeProps) {
  const {path, drawn} = shapeOf(name)
  const d = path(x, y, radius)
  const kind = `mark ${drawn}${binding ? " binding" : ""}`
  if (drawn !== "lines") return <path className={kind} d={d} />
  // A line has no edge of its own: the ground behind it keeps it apart from what it crosses.
  return (
    <>
      <path className={binding ? "mark-ground binding" : "mark-ground"} d={d} />
      <path className={kind} d={d} />
    </>
  )
}

export interface LimitMarkProps {
  readonly name: string
  readonly binding?: boolean
  /** Width and height, px. */
  readonly size?: number
}

/** The mark of a limit as a small picture in a line of words, which must name it: the mark itself is not read out. */
export function LimitMark({name, binding = false, size = 16}: LimitMarkProps) {
  return (
    <svg className="pic limit-mark" width={size} height={size} viewBox="0 0 16 16" aria-hidden="true">
      <MarkShape name={name} x={8} y={8} radius={5.5} binding={binding} />
    </svg>
  )
}

/** What each mark of the season calendar stands for. */
export function CalendarKey({names = LIMIT_NAMES}: {readonly names?: readonly string[]}) {
  return (
    <ul className="key" aria-label="Marks in the calendar">
      {names.map((name) => (
        <li key={name}>
          <LimitMark name={name} />
          {name}
        </li>
      ))}
    </ul>
  )
}

/** Slanting lines that fill a shape, for `fill="url(#id)"` in the picture that holds it. */
export const Hatch = ({id}: {id: string}) => (
  <defs>
    <pattern id={id} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <path className="axis" d="M0 0V6" />
    </pattern>
  </defs>
)

/** A level line across a picture, and the number that it stands for. */
export interface Rule {
  readonly y: number
  readonly text: string
}

/** Level lines between two sides of a picture, their numbers at the left. */
export const Rules = ({
  rules,
  left,
  right,
  gap = 6,
}: {
  rules: readonly Rule[]
  left: number
  right: number
  gap?: number
}) =>
  rules.map(({y, text}) => (
    <g key={text}>
      <path className="hair" d={`M${left} ${y}H${right}`} />
      <text className="quiet" x={left - gap} y={y + 5} textAnchor="end">
        {text}
      </text>
    </g>
  ))
