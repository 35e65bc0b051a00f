import {useId} from "react"
import {numberText} from "../../editor/display"
import type {CellAddress} from "../../workbook/document"
import type {Decimal} from "../../workbook/region"
import {Hatch, Rules} from "./marks"
import {needsLayout, shortBy, type Need} from "./needsLayout"
import {PictureWalk} from "./PictureWalk"
import {useWidth} from "./useWidth"
import "./pictures.css"

interface Props {
  needs: readonly Need[]
  /** The finding, as the title of the picture. */
  title: string
  /** "cutters on the busiest day of each week" */
  measures: string
  decimals: number
  decimal: Decimal
  /** Of what is at hand: "booked", "kW fitted". */
  atHandWords: string
  onGo?: ((at: CellAddress) => void) | undefined
}

const FIRST_WIDTH = 640
const LETTERS = 17

/**
 * The need of each week as a bar, filled where the week is past; what is at hand as a line in steps. The part of a bar above
 * the line is hatched and its shortage printed. Its table is the sheet below.
 */
export function NeedsByWeek({needs, title, measures, decimals, decimal, atHandWords, onGo}: Props) {
  const [place, measured] = useWidth()
  const hatch = useId()
  const layout = needsLayout(needs, {width: measured ?? FIRST_WIDTH, decimals, decimal, atHandWords})
  const {width, height, left, base, rules, columns} = layout
  const stops = columns.map(({x, within, short}, i) => {
    const top = (short ?? within).y
    return {
      x,
      y: (top + base) / 2,
      width: within.width + 8,
      height: base - top + 8,
      words: needsSentence([needs[i]!], decimals, atHandWords, decimal),
      at: needs[i]!.at,
      more: needs[i]!.made,
    }
  })
  return (
    <figure ref={place} className="needs">
      <figcaption>
        <b>{title}</b> <span className="q">{measures}</span>
      </figcaption>
      <PictureWalk
        name={measures}
        stops={stops}
        onGo={onGo}
        label={needsSentence(needs, decimals, atHandWords, decimal)}
        width={width}
        height={height}
      >
        <Hatch id={hatch} />
        <Rules rules={rules} left={left} right={width} />
        <path className="axis" d={`M${left} ${base}H${width}`} />
        <text className="quiet" x={0} y={height - 7}>
          wk
        </text>
        {columns.map(({week, isPast, x, within, short}) => (
          <g key={week}>
            <rect className={isPast ? "past-band" : "to-come thin"} {...within} />
            {short && <rect className="short" {...short} fill={`url(#${hatch})`} />}
            <text className={isPast ? "quiet" : "strong"} x={x} y={height - 7} textAnchor="middle">
              {week}
            </text>
          </g>
        ))}
        <path className="axis at-hand" d={layout.line} />
        {layout.atHand.map(({text, x, y}) => (
          <text key={x} className="halo" x={x} y={y}>
            {text}
          </text>
        ))}
        {columns.map(
          ({week, isPast, x, inside}) =>
            inside && (
              <text key={week} className={isPast ? "strong" : "held"} x={x} y={inside.y} textAnchor="middle">
                {inside.text}
              </text>
            ),
        )}
        {columns.map(({week, isPast, x, short, words, y}) =>
          words.map((line, i) => (
            <text
              key={`${week} ${i}`}
              className={short ? (isPast ? "quiet halo" : "strong halo") : isPast ? "strong" : "held"}
              x={x}
              y={y - LETTERS * (words.length - 1 - i)}
              textAnchor="middle"
            >
              {line}
            </text>
          )),
        )}
      </PictureWalk>
    </figure>
  )
}

/** "Week 22: 19 needed, 16 booked, 3 short. …", and what of it is not known. */
export function needsSentence(
  needs: readonly Need[],
  decimals: number,
  atHandWords: string,
  decimal: Decimal = ".",
): string {
  const shown = (value: number | null, words: string) =>
    value === null
      ? `not known what is ${words.split(" ").at(-1)}`
      : `${numberText(value, decimals, decimal)} ${words}`
  return needs
    .map((need) => {
      const {week, needed, atHand} = need
      const lacks = shortBy(need, decimals)
      const told = `${shown(needed, "needed")}, ${shown(atHand, atHandWords)}`
      return `Week ${week}: ${told}${lacks === null ? "" : `, ${shown(lacks, "short")}`}.`
    })
    .join(" ")
}
