import type {CellAddress} from "../../workbook/document"
import {LINE, reserveFinding, reserveLayout, type Bands, type ReserveYear} from "./reserveLayout"
import {Rules} from "./marks"
import {PictureWalk} from "./PictureWalk"
import {useWidth} from "./useWidth"
import "./pictures.css"

/** Chosen for the first drawing, before the place is measured. */
const FIRST_WIDTH = 1000
/** Chosen: narrower than this the months cannot be told apart. */
const LEAST_WIDTH = 320

interface Props {
  readonly year: ReserveYear
  /** From a study: the 10, 25, 50, 75 and 90 of a hundred of the store at the end of each week. */
  readonly bands?: Bands | null
  /** Single draws of the same study, week by week, drawn thin. */
  readonly singles?: readonly (readonly number[])[]
  readonly width?: number
  /** The cell of the store at the end of a week of the year, counted from 0. */
  readonly cellOf?: (week: number) => CellAddress | undefined
  readonly onGo?: (at: CellAddress) => void
}

/**
 * The reserve of one planting through the year: the line solid up to the as-of day and dashed after it, measured samples
 * as dots with their interval and those of former years as rings, the planner's own floor, and the days of cutting. The sheet
 * below it is its table.
 */
export function ReserveThroughTheYear({year, bands = null, singles, width: given, cellOf, onGo}: Props) {
  const [place, measured] = useWidth()
  const layout = reserveLayout(year, Math.max(given ?? measured ?? FIRST_WIDTH, LEAST_WIDTH), bands, singles)
  const {width, height, left, right, base, rules, months, floor, asOf, cutting, lowest, refill} = layout
  const {planting} = year.planting
  const lines = {
    marks: [{...lowest, words: lowest.said}, ...(refill ? [refill] : []), ...layout.measured].toSorted(
      (a, b) => a.x - b.x,
    ),
    weeks: layout.weeks,
    former: layout.former.toSorted((a, b) => a.x - b.x),
  }
  const stops = Object.entries(lines).flatMap(([line, marks]) =>
    marks.map(({x, y, week, words}) => ({line, x, y, words: `${planting}: ${words}.`, at: cellOf?.(week)})),
  )
  const wide = width >= 600
  return (
    <div ref={place} className="reserve-year">
      <PictureWalk
        name="Reserve through the year"
        stops={stops}
        onGo={onGo}
        label={reserveFinding(year)}
        width={width}
        height={height}
      >
        <text className="quiet" x={0} y={14}>
          sugar in the store, {layout.unit}
        </text>
        <Rules rules={rules} left={left} right={right} gap={8} />
        {months.map(({x, words}, i) => (
          <g key={x}>
            <path className="hair" d={`M${x} ${base}v6`} />
            {(wide || i % 2 === 0) && (
              <text x={x + 3} y={base + 19} className="quiet">
                {words}
              </text>
            )}
          </g>
        ))}
        <path className="axis" d={`M${left} ${base}H${right}`} />
        {cutting && (
          <g>
            <path className="cutting" d={`M${cutting.from} ${base + 24}v5H${cutting.now}`} />
            <path className="cutting to-be" d={`M${cutting.now} ${base + 29}H${cutting.to}v-5`} />
            <text className="held" x={(cutting.from + cutting.to) / 2} y={base + 45} textAnchor="middle">
              {cutting.words}
            </text>
          </g>
        )}
        {floor && (
          <g>
            <path className="axis" d={`M${left} ${floor.y}H${right}`} />
            <text className="halo strong" x={right} y={floor.y - 6} textAnchor="end">
              {floor.words}
            </text>
          </g>
        )}
        {asOf && (
          <g>
            <path className="as-of" d={`M${asOf.x} ${20}V${base}`} />
            <text className="halo strong" x={asOf.x + 6} y={30}>
              {asOf.words}
            </text>
          </g>
        )}
        {layout.bands.map(({area, words, x, y}) => (
          <g key={words}>
            <path className="band" d={area} />
            <text className="halo quiet" x={x} y={y} textAnchor="end">
              {words}
            </text>
          </g>
        ))}
        {layout.singles.map((line) => (
          <path key={line} className="tail" d={line} />
        ))}
        <path className="course" d={layout.past} />
        <path className="course to-be" d={layout.toCome} />
        <circle className="turn" cx={lowest.x} cy={lowest.y} r={4} />
        <text className="halo held" x={lowest.wordsX} y={lowest.wordsY}>
          {lowest.words}
        </text>
        {refill && (
          <g>
            <circle className="turn" cx={refill.x} cy={refill.y} r={4} />
            <text className="halo held" x={refill.x + 10} y={refill.wordsY}>
              {refill.words}
            </text>
            <text className="halo quiet" x={refill.x + 10} y={refill.wordsY + LINE}>
              as at opening
            </text>
          </g>
        )}
        {layout.former.map(({x, y, label}) => (
          <g key={`${x} ${y}`}>
            <circle className="former" cx={x} cy={y} r={4} />
            {label && (
              <text className="halo quiet" x={label.x} y={label.y}>
                {label.text}
              </text>
            )}
          </g>
        ))}
        {layout.measured.map(({x, y, radius, top, bottom, words, wordsX, wordsY}) => (
          <g key={x}>
            <path className="interval" d={`M${x} ${top}V${bottom}`} />
            <circle className="sampled" cx={x} cy={y} r={radius} />
            <text className="halo" x={wordsX} y={wordsY}>
              {words}
            </text>
          </g>
        ))}
      </PictureWalk>
    </div>
  )
}
