import {useId} from "react"
import {dayText, percentText, quantityText} from "../../editor/display"
import type {CellAddress} from "../../workbook/document"
import type {PlantingSpears, SpearSizes} from "../../workbook/spears"
import {Rules} from "./marks"
import {PictureWalk} from "./PictureWalk"
import {textWidth} from "./placing"
import {spearLayout} from "./spearLayout"
import {spearSentence, spearTitle} from "./spearWords"
import {useWidth} from "./useWidth"
import "./pictures.css"

/** Chosen for the first drawing, before the place is measured. */
const FIRST_WIDTH = 480

/**
 * The spears of one planting: each one counted by size a small dot, its day's mean a short line with the share under the limit
 * above it; a mean alone is a dot. The line through the means with its band is solid as far as was measured and dashed to the
 * day it meets the limit. The sheet below is its table.
 */
export function SpearSize({
  one,
  sizes,
  isAlone,
  width: given,
  onGo,
}: {
  one: PlantingSpears
  sizes: SpearSizes
  /** Then the finding of the page is its title. */
  isAlone: boolean
  /** px; else that of its place. */
  width?: number
  onGo?: (at: CellAddress) => void
}) {
  const [place, measured] = useWidth()
  const plot = useId()
  const layout = spearLayout(one, sizes, given ?? measured ?? FIRST_WIDTH)
  const {width, height, left, right, top, base, limit, latest, between, meets, band} = layout
  const sentence = spearSentence(one, sizes)
  const stops = layout.dots.map(({x, y}, i) => {
    const {day, mean, counted, under, at} = one.days[i]!
    const spears = counted === null ? "" : `, ${counted} spears counted`
    const thin = under === null ? "" : `, ${percentText(under, 0, sizes.region.decimal)} under the limit`
    const words = `${dayText(day)}: mean ${quantityText(mean, 1, "mm", sizes.region)}${spears}${thin}.`
    return {x, y, words, at}
  })
  const end = meets
    ? [
        {
          x: meets.x,
          y: meets.y,
          words: `${spearTitle(one, sizes)}, by the ${one.isExpected ? "balance" : "line"}.`,
        },
      ]
    : []
  return (
    <figure ref={place} className="finding-figure">
      <figcaption>
        {!isAlone && <b>{spearTitle(one, sizes)}</b>} {sentence}
        {band?.isHidden && (
          <span className="q"> The band about the line is too narrow here to be told from it.</span>
        )}
      </figcaption>
      <PictureWalk
        name={`Spear size of ${one.planting}`}
        stops={[...stops, ...end]}
        onGo={onGo}
        label={`${one.planting}: ${sentence}`}
        width={width}
        height={height}
      >
        <text className="quiet" x={0} y={14}>
          {layout.heading}
        </text>
        <Rules rules={layout.rules} left={left} right={right} />
        {layout.weeks.map(({x, text}) => (
          <g key={text}>
            <path className="hair" d={`M${x} ${base}v5`} />
            <text
              className="quiet"
              x={Math.min(x, width - textWidth(text) / 2)}
              y={base + 19}
              textAnchor="middle"
            >
              {text}
            </text>
          </g>
        ))}
        <path className="axis" d={`M${left} ${base}H${right}`} />
        {layout.asOf !== null && (
          <path className="as-of" d={`M${layout.asOf} ${layout.shares.length ? top - 6 : 22}V${base}`} />
        )}
        {between && limit && <path className="between" d={`M${between.from} ${limit.y}H${between.to}`} />}
        {limit && <path className="axis" d={`M${left} ${limit.y}H${right}`} />}
        {band && (
          <g clipPath={`url(#${plot})`}>
            <clipPath id={plot}>
              <rect x={left} y={top} width={right - left} height={base - top} />
            </clipPath>
            <path className="band bare" d={band.area} />
            <path className="band-edge" d={band.past} />
            <path className="band-edge to-be" d={band.toCome} />
          </g>
        )}
        {layout.spears.map(({x, y}, i) => (
          <circle key={i} className="spear" cx={x} cy={y} r={2} />
        ))}
        <path className="course" d={layout.fitted} />
        <path className="course to-be" d={layout.toCome} />
        {layout.dots.map(({x, y, isAmongSpears}, i) =>
          isAmongSpears ? (
            <path key={i} className="among" d={`M${x - 9} ${y}h18`} />
          ) : (
            <circle key={i} className="sampled" cx={x} cy={y} r={4.5} />
          ),
        )}
        {meets && <circle className="turn" cx={meets.x} cy={meets.y} r={4} />}
        {layout.shares.map(({x, y, text, isAhead}) => (
          <text key={x} className={isAhead ? "halo held" : "halo"} x={x} y={y}>
            {text}
          </text>
        ))}
        {limit && (
          <text className="halo strong" x={limit.words.x} y={limit.words.y}>
            {limit.words.text}
          </text>
        )}
        {latest && (
          <text className="halo" x={latest.x} y={latest.y}>
            {latest.text}
          </text>
        )}
        {band?.words && (
          <text className="halo quiet" x={band.words.x} y={band.words.y}>
            {band.words.text}
          </text>
        )}
        {meets && (
          <text className="halo held" x={meets.words.x} y={meets.words.y}>
            {meets.words.text}
          </text>
        )}
      </PictureWalk>
    </figure>
  )
}
