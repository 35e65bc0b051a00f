import {memo, useId, useRef, type KeyboardEvent, type PointerEvent} from "react"
import type {Plan} from "../../workbook/plan"
import {px} from "./limitShapes"
import {MarkShape} from "./marks"
import {useSoon} from "./useSoon"
import {useWidth} from "./useWidth"
import "./pictures.css"
import {seasonCalendar, type CalendarLayout, type CalendarOptions, type CalendarRow} from "./calendarLayout"
import type {CalendarMark} from "./calendarMarks"
import {xOfDay, type Words} from "./calendarPlace"

export interface SeasonCalendarProps extends Omit<CalendarOptions, "width" | "selected"> {
  readonly plan: Plan
  readonly selected: number | null
  readonly onSelect: (row: number) => void
  /** Moves the close of a row to a day; null gives it its formula again. What belongs to one movement has one `movement`. */
  readonly onMove?: (row: number, day: number | null, movement: number) => void
  /** px; left out, the picture takes the width of the place it stands in. */
  readonly width?: number
}

/** Chosen for the first drawing, before the place is measured. */
const FIRST_WIDTH = 450
/** Chosen: narrower than this the weeks of a season cannot be told apart. */
const LEAST_WIDTH = 240
/** How near to the end of a bar the pointer takes hold of it, px; chosen. */
const GRIP = 14
const KEYS: Readonly<Record<string, number>> = {ArrowLeft: -1, ArrowRight: 1}

/**
 * The season calendar: a row for each planting with its bar from opening to close, its limits as marks, and the
 * farm's expected crop by day. Up and down move between the rows, Enter or Space selects one; left and right move its
 * close by a day, with Shift by a week, Delete gives it back to the limits, and its end can be dragged.
 */
export function SeasonCalendar({
  plan,
  selected,
  onSelect,
  onMove,
  width: given,
  ...options
}: SeasonCalendarProps) {
  const [place, measured] = useWidth()
  const title = useId()
  const hint = useId()
  const layout = seasonCalendar(plan, {
    ...options,
    selected,
    width: Math.max(given ?? measured ?? FIRST_WIDTH, LEAST_WIDTH),
  })
  const {width, height, rows} = layout
  const movement = useRef(0)
  const dragged = useRef<number | null>(null)
  const closeOf = (row: number) => plan.rows.find((one) => one.row === row)?.closes ?? null
  const {soon, now} = useSoon()
  /** The day that keys have come to while the plan still stands at a day before. */
  const keyed = useRef<{readonly row: number; readonly day: number} | null>(null)
  const begin = () => void movement.current++
  const letGo = () => {
    now()
    dragged.current = null
  }
  const moveBy = (row: number, days: number) => {
    const close = keyed.current?.row === row ? keyed.current.day : closeOf(row)
    if (close === null) return
    keyed.current = {row, day: close + days}
    soon(() => {
      keyed.current = null
      onMove?.(row, close + days, movement.current)
    })
  }
  /** The day under the pointer, or null beside the axis. */
  const dayUnder = ({clientX, currentTarget}: PointerEvent<SVGRectElement>) => {
    const {left} = currentTarget.ownerSVGElement!.getBoundingClientRect()
    const {axis} = layout
    if (!axis) return null
    const day = Math.floor(axis.first + (clientX - left - xOfDay(axis, axis.first)) / axis.perDay)
    return Math.max(axis.first, Math.min(axis.end - 1, day))
  }
  const entry = rows.some(({selected}) => selected) ? selected : rows[0]?.row
  return (
    <div ref={place} className="calendar">
      <svg
        className="pic"
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="group"
        aria-labelledby={title}
      >
        <title id={title}>
          Season calendar: opening to close of each planting, the limit that holds it, and the crop of the
          farm by day
        </title>
        <Ground layout={layout} />
        <g role="list">
          {rows.map((row) => (
            <g key={row.row} role="listitem" className={row.selected ? "season is-selected" : "season"}>
              <SeasonDrawing row={row} width={width} />
              <rect
                className="target"
                role="button"
                tabIndex={row.row === entry ? 0 : -1}
                aria-label={row.sentence}
                aria-pressed={row.selected}
                x={1}
                y={row.y + 1}
                width={width - 2}
                height={row.height - 2}
                aria-describedby={onMove && hint}
                onClick={() => onSelect(row.row)}
                onFocus={begin}
                onBlur={now}
                onKeyDown={(event) => {
                  const days = KEYS[event.key]
                  if (days !== undefined && onMove) {
                    event.preventDefault()
                    return moveBy(row.row, event.shiftKey ? 7 * days : days)
                  }
                  now()
                  if (event.key === "Delete" && onMove) onMove(row.row, null, movement.current)
                  else keyDown(event, () => onSelect(row.row))
                }}
                onPointerDown={(event) => {
                  const close = closeOf(row.row)
                  const day = dayUnder(event)
                  if (
                    !onMove ||
                    close === null ||
                    day === null ||
                    Math.abs(day - close) > GRIP / layout.axis!.perDay
                  )
                    return
                  begin()
                  dragged.current = row.row
                  event.currentTarget.setPointerCapture(event.pointerId)
                }}
                onPointerMove={(event) => {
                  const day = dayUnder(event)
                  if (dragged.current === row.row && day !== null && day !== closeOf(row.row))
                    soon(() => onMove?.(row.row, day, movement.current))
                }}
                onPointerUp={letGo}
                onPointerCancel={letGo}
              />
            </g>
          ))}
        </g>
        <FarmDrawing layout={layout} />
      </svg>
      {onMove && (
        <p id={hint} className="hide">
          Left and right move the close by a day, with Shift by a week; Delete gives it back to the limits.
        </p>
      )}
    </div>
  )
}

/** Tints and lines under the rows, and the words of the head. All of it is also in the rows' sentences or the table. */
function Ground({layout}: {readonly layout: CalendarLayout}) {
  const {width, height, headHeight, lines, weeks, asOf, rows} = layout
  return (
    <g aria-hidden="true">
      {rows.map(({row, y, height, selected}) => (
        <rect
          key={row}
          className={selected ? "tint is-on" : "tint"}
          x={0}
          y={y}
          width={width}
          height={height}
        />
      ))}
      {weeks.map(({day, x}) => (
        <path key={day} className="hair" d={`M${px(x)} ${headHeight - 6}V${height}`} />
      ))}
      {rows.map(({row, y, height}) => (
        <path key={row} className="hair" d={`M0 ${y + height - 0.5}H${width}`} />
      ))}
      <path className="axis" d={`M0 ${headHeight - 0.5}H${width}M0 ${height - 0.5}H${width}`} />
      {weeks.map(({day, x, date, number, month}) => (
        <g key={day}>
          {number !== null && (
            <text className="quiet" x={px(x + 3)} y={px(lines.week)}>
              {number}
            </text>
          )}
          {month !== null && (
            <text className="strong" x={px(x + 3)} y={px(lines.month)}>
              {month}
            </text>
          )}
          {date !== null && (
            <text className="quiet" x={px(x + 3)} y={px(lines.date)}>
              {date}
            </text>
          )}
        </g>
      ))}
      {asOf && !asOf.beyond && (
        <path className="as-of" d={`M${px(asOf.x)} ${px(lines.asOf - 6)}V${height}`} />
      )}
      {asOf && <WordsDrawing words={asOf.words} kind="strong" />}
      {rows.length === 0 && (
        <text className="quiet" x={10} y={headHeight + 23}>
          No plantings in this plan yet
        </text>
      )}
    </g>
  )
}

interface SeasonDrawingProps {
  readonly row: CalendarRow
  readonly width: number
}

/** Drawn anew where it looks another way: of fifty plantings, a close that is moved changes one. */
const SeasonDrawing = memo(
  drawnSeason,
  (was: SeasonDrawingProps, now: SeasonDrawingProps) =>
    was.width === now.width && JSON.stringify(was.row) === JSON.stringify(now.row),
)

function drawnSeason({row, width}: SeasonDrawingProps) {
  const {y, height, middle, past, toCome, tail, marks, name, words, cut, selected} = row
  const ordered = [...marks].sort((a, b) => Number(a.binding) - Number(b.binding))
  return (
    <g aria-hidden="true">
      <path className="under" d={`M0 ${y + height - 0.5}H${width}`} />
      {tail && <path className="tail" d={`M${px(tail.x)} ${middle}h${px(tail.width)}`} />}
      {past && <rect className="past" x={px(past.x)} y={middle - 4.5} width={px(past.width)} height={9} />}
      {toCome && (
        <rect
          className="to-come"
          x={px(toCome.x + 0.75)}
          y={middle - 3.75}
          width={px(Math.max(toCome.width - 1.5, 0.5))}
          height={7.5}
        />
      )}
      {ordered.map((mark) => (
        <MarkDrawing key={`${mark.name} ${mark.day} ${mark.binding}`} mark={mark} middle={middle} />
      ))}
      {name && <WordsDrawing words={name} kind="strong halo" />}
      {words && <WordsDrawing words={words} kind={cut ? "held halo" : "quiet halo"} />}
      {selected && <path className="chosen" d={`M0 ${y - 0.5}H${width}M0 ${y + height - 0.5}H${width}`} />}
    </g>
  )
}

function MarkDrawing({mark, middle}: {readonly mark: CalendarMark; readonly middle: number}) {
  const {name, x, y, dayX, radius, binding, beyond} = mark
  const out = beyond === "after" ? 1 : -1
  return (
    <>
      {x !== dayX && <path className="lead" d={`M${px(dayX)} ${middle}L${px(x)} ${px(y)}`} />}
      <MarkShape name={name} x={x} y={y} radius={radius} binding={binding} />
      {beyond && (
        <path className="lead" d={`M${px(x + out * 5.5)} ${px(y - 3)}l${out * 3} 3l${out * -3} 3`} />
      )}
    </>
  )
}

function FarmDrawing({layout: {farm}}: {readonly layout: CalendarLayout}) {
  return (
    <g aria-hidden="true">
      {farm.bars.map(({day, x, width, y, height, past}) =>
        past ? (
          <rect key={day} className="past" x={px(x)} y={px(y)} width={px(width)} height={px(height)} />
        ) : (
          <rect
            key={day}
            className="to-come thin"
            x={px(x + 0.5)}
            y={px(y + 0.5)}
            width={px(Math.max(width - 1, 0.5))}
            height={px(Math.max(height - 0.5, 0.5))}
          />
        ),
      )}
      {farm.name && <WordsDrawing words={farm.name} kind="strong halo" />}
      {farm.peak && <WordsDrawing words={farm.peak} kind="held halo" />}
    </g>
  )
}

const WordsDrawing = ({words: {text, x, y, end}, kind}: {readonly words: Words; readonly kind: string}) => (
  <text className={kind} x={px(x)} y={px(y)} textAnchor={end ? "end" : "start"}>
    {text}
  </text>
)

/** Moves the focus between the rows, or selects the one that has it. */
function keyDown(event: KeyboardEvent<SVGRectElement>, select: () => void) {
  if (event.altKey || event.ctrlKey || event.metaKey) return
  const targets = [...(event.currentTarget.ownerSVGElement?.querySelectorAll<SVGElement>(".target") ?? [])]
  const here = targets.indexOf(event.currentTarget)
  const moves: Record<string, number> = {
    ArrowUp: here - 1,
    ArrowDown: here + 1,
    Home: 0,
    End: targets.length - 1,
  }
  const to = moves[event.key]
  if (event.key === "Enter" || event.key === " ") select()
  else if (to === undefined) return
  else targets[to]?.focus()
  event.preventDefault()
}
