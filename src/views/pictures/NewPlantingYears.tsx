import {shownIn} from "../../editor/display"
import type {CellAddress, Region} from "../../workbook/document"
import type {NewYear} from "../../workbook/replant"
import {PictureWalk} from "./PictureWalk"
import "./pictures.css"

const BAR = 76
const TOP = 20
const EACH = 28

/** The cash of a new planting by year of its life: costs hang below the line, and the year that pays them back is named. */
export function NewPlantingYears({
  years,
  black,
  region,
  onGo,
}: {
  years: readonly NewYear[]
  /** The year in which it is in the black, counted from 1; null where it never is. */
  black: number | null
  region: Region
  onGo?: (at: CellAddress) => void
}) {
  const {unit, text} = shownIn("money/ha", region)
  const flows = years.map(({yielding, other}) => yielding + other)
  const scale = BAR / Math.max(...flows.map(Math.abs), 1)
  const zero = TOP + BAR
  const ends = new Set([Math.min(...flows), Math.max(...flows)].map((cash) => flows.indexOf(cash)))
  const bars = flows.map((cash, i) => {
    const height = Math.max(1, Math.abs(cash) * scale)
    return {x: EACH * i + 4, y: cash < 0 ? zero : zero - height, width: EACH - 8, height}
  })
  const sentences = flows.map((cash, i) => {
    const paid = i + 1 === black ? ", in the black" : ""
    return `Year ${i + 1} of its life: ${text(cash, 0)} ${unit}${paid}.`
  })
  const stops = bars.map(({x, y, width, height}, i) => ({
    x: x + width / 2,
    y: y + height / 2,
    width: width + 8,
    height: height + 8,
    words: sentences[i]!,
    at: years[i]!.at,
  }))
  return (
    <PictureWalk
      name="A new planting by year of its life"
      label={sentences.join(" ")}
      width={EACH * flows.length}
      height={TOP + BAR * 2 + 40}
      stops={stops}
      onGo={onGo}
    >
      {flows.map((cash, i) => {
        const middle = EACH * (i + 0.5)
        const bar = bars[i]!
        return (
          <g key={i}>
            <rect className={cash < 0 ? "to-come" : "past"} {...bar} />
            {ends.has(i) && (
              <text
                className="strong halo"
                x={cash < 0 ? EACH * (i + 1) : middle}
                y={cash < 0 ? bar.y + bar.height - 2 : bar.y - 5}
                textAnchor={cash < 0 ? "start" : "middle"}
              >
                {text(cash, 0)}
              </text>
            )}
            <text
              className={i + 1 === black ? "held" : "quiet"}
              x={middle}
              y={TOP + BAR * 2 + 18}
              textAnchor="middle"
            >
              {i + 1}
            </text>
            {i + 1 === black && (
              <text className="held" x={middle} y={TOP + BAR * 2 + 35} textAnchor="middle">
                in the black
              </text>
            )}
          </g>
        )
      })}
      <path className="axis" d={`M0 ${zero}H${EACH * flows.length}`} />
    </PictureWalk>
  )
}
