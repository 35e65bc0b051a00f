import {useId} from "react"
import {numberText} from "../../editor/display"
import type {Decimal} from "../../workbook/region"
import {niceStep} from "./steps"
import {Hatch} from "./marks"
import {useWidth} from "./useWidth"
import "./pictures.css"

/** One week's need against what is at hand, in the same unit. */
export interface Need {
  readonly week: number
  readonly needed: number
  readonly atHand: number
  /** The week lies behind: its bar is filled. */
  readonly isPast: boolean
}

interface Props {
  needs: readonly Need[]
  /** The finding, as the title of the picture. */
  title: string
  /** "cutters on the busiest day of each week" */
  measures: string
  decimals: number
  decimal: Decimal
  /** Of what is at hand: "booked", "fitted". */
  atHandWords: string
}

const FIRST_WIDTH = 640
const HEIGHT = 190
const TOP = 40
const BASE = HEIGHT - 26
const LEFT = 34

/**
 * The need of each week as a bar, filled where the week is past; what is at hand as a line in steps. The part of a bar above
 * the line is hatched and its shortage printed. Its table is the sheet below.
 */
export function NeedsByWeek({needs, title, measures, decimals, decimal, atHandWords}: Props) {
  const [place, measured] = useWidth()
  const hatch = useId()
  const width = measured ?? FIRST_WIDTH
  const most = Math.max(1, ...needs.flatMap(({needed, atHand}) => [needed, atHand])) * 1.08
  const step = (width - LEFT) / Math.max(1, needs.length)
  const y = (value: number) => BASE - (value / most) * (BASE - TOP)
  const shown = (value: number) => numberText(value, decimals, decimal)
  const rule = niceStep(most)
  return (
    <figure ref={place} className="needs">
      <figcaption>
        <b>{title}</b> <span className="q">{measures}</span>
      </figcaption>
      <svg
        className="pic"
        width={width}
        height={HEIGHT}
        viewBox={`0 0 ${width} ${HEIGHT}`}
        role="img"
        aria-label={needsSentence(needs, decimals, atHandWords, decimal)}
      >
        <Hatch id={hatch} />
        {Array.from({length: Math.floor(most / rule)}, (_, i) => (i + 1) * rule).map((value) => (
          <g key={value}>
            <path className="hair" d={`M${LEFT} ${y(value)}H${width}`} />
            <text className="quiet" x={LEFT - 6} y={y(value) + 5} textAnchor="end">
              {numberText(value, undefined, decimal)}
            </text>
          </g>
        ))}
        <path className="axis" d={`M${LEFT} ${BASE}H${width}`} />
        <text className="quiet" x={0} y={HEIGHT - 7}>
          wk
        </text>
        {needs.map(({week, needed, atHand, isPast}, i) => {
          const x = LEFT + i * step + step * 0.14
          const wide = step * 0.72
          const within = Math.min(needed, atHand)
          const short = needed - atHand
          const isShort = short > 0.5 * 10 ** -decimals
          return (
            <g key={week}>
              <rect
                className={isPast ? "past-band" : "to-come thin"}
                x={x}
                y={y(within)}
                width={wide}
                height={BASE - y(within)}
              />
              {isShort && (
                <rect
                  x={x}
                  y={y(needed)}
                  width={wide}
                  height={y(atHand) - y(needed)}
                  fill={`url(#${hatch})`}
                  className="short"
                />
              )}
              {needed > 0 && (
                <text
                  className={isShort ? "strong halo" : isPast ? "strong" : "held"}
                  x={x + wide / 2}
                  y={isShort || BASE - y(needed) < 22 ? y(needed) - 5 : y(needed) + 16}
                  textAnchor="middle"
                >
                  {shown(needed)}
                  {isShort && wide > 88 && `, short ${shown(short)}`}
                </text>
              )}
              <path
                className="axis at-hand"
                d={`M${LEFT + i * step} ${y(atHand)}H${LEFT + (i + 1) * step}`}
              />
              {i > 0 && needs[i - 1]!.atHand !== atHand && (
                <path
                  className="axis at-hand"
                  d={`M${LEFT + i * step} ${y(needs[i - 1]!.atHand)}V${y(atHand)}`}
                />
              )}
              {atHand > 0 && (i === 0 || (i === needs.length - 1 && needs[0]!.atHand !== atHand)) && (
                <text
                  className="halo"
                  x={i === 0 ? LEFT + 4 : width - 2}
                  y={y(atHand) - 6}
                  textAnchor={i === 0 ? "start" : "end"}
                >
                  {shown(atHand)} {atHandWords}
                </text>
              )}
              <text
                className={isPast ? "quiet" : "strong"}
                x={x + wide / 2}
                y={HEIGHT - 7}
                textAnchor="middle"
              >
                {week}
              </text>
            </g>
          )
        })}
      </svg>
    </figure>
  )
}

/** "Week 22: 19 needed, 16 booked, 3 short. …" */
export function needsSentence(
  needs: readonly Need[],
  decimals: number,
  atHandWords: string,
  decimal: Decimal = ".",
): string {
  const shown = (value: number) => numberText(value, decimals, decimal)
  return needs
    .map(({week, needed, atHand}) => {
      const short = needed - atHand
      const isShort = short > 0.5 * 10 ** -decimals
      const told = `${shown(needed)} needed, ${shown(atHand)} ${atHandWords}`
      return `Week ${week}: ${told}${isShort ? `, ${shown(short)} short` : ""}.`
    })
    .join(" ")
}
