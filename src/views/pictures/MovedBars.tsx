import type {CellAddress} from "../../workbook/document"
import {movedLayout, type MovedRow} from "./movedLayout"
import {PictureWalk} from "./PictureWalk"
import {BOLD, fitted, fittedName} from "./placing"
import "./pictures.css"

const BAR = 16

export interface MovedBar extends MovedRow {
  readonly key: string
  /** What it says, as a sentence. */
  readonly sentence: string
  readonly at?: CellAddress | undefined
}

/** Level bars from a line of no change, each with its words and its number: less to the left, more to the right. */
export function MovedBars({
  name,
  label,
  bars,
  width,
  sides,
  least = 0,
  onGo,
}: {
  name: string
  label: string
  bars: readonly MovedBar[]
  /** px */
  width: number
  /** Above the bars to the left and to the right: "days earlier" and "later". */
  sides: readonly [string, string]
  /** The scale holds so much at the fewest. */
  least?: number
  onGo?: ((at: CellAddress) => void) | undefined
}) {
  const told = bars.map((bar) => {
    const [bold, quiet] = bar.words
    return {...bar, words: [fittedName(bold, width / BOLD), fitted(quiet, width)] as const}
  })
  const {height, middle, scale, rows} = movedLayout(told, width, {sides, least})
  const drawn = told.map(({by}, i) => {
    const length = Math.abs(by) * scale
    return {x: by < 0 ? middle - length : middle, y: rows[i]!.barY, width: length, height: BAR}
  })
  const stops = drawn.map((bar, i) => ({
    x: bar.x + bar.width / 2,
    y: bar.y + BAR / 2,
    width: bar.width + 10,
    height: BAR + 10,
    words: bars[i]!.sentence,
    at: bars[i]!.at,
  }))
  return (
    <PictureWalk name={name} label={label} width={width} height={height} stops={stops} onGo={onGo}>
      <text className="quiet" x={middle - 8} y={13} textAnchor="end">
        {sides[0]}
      </text>
      <text className="quiet" x={middle + 8} y={13}>
        {sides[1]}
      </text>
      {told.map(({key, words: [bold, quiet], by, text}, i) => {
        const {y, barY} = rows[i]!
        const bar = drawn[i]!
        return (
          <g key={key}>
            <text className="strong" x={0} y={y + 14}>
              {bold}
            </text>
            <text className="quiet" x={0} y={y + 31}>
              {quiet}
            </text>
            <path className="axis" d={`M${middle} ${barY - 4}v${BAR + 8}`} />
            <rect className="past" {...bar} />
            <text
              className="held"
              x={by < 0 ? bar.x - 5 : bar.x + bar.width + 5}
              y={barY + 13}
              textAnchor={by < 0 ? "end" : "start"}
            >
              {text}
            </text>
          </g>
        )
      })}
    </PictureWalk>
  )
}
