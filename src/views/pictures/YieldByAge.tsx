import {memo} from "react"
import {percentText, quantityText, shownIn} from "../../editor/display"
import type {CellAddress} from "../../workbook/document"
import type {LenderPage} from "../../workbook/lender"
import {HALF_PAGE} from "./CashAndDebt"
import {yieldSentence, yieldTitle} from "./lenderWords"
import {Rules} from "./marks"
import {PictureWalk} from "./PictureWalk"
import {useWidth} from "./useWidth"
import {yieldLayout} from "./yieldLayout"
import "./pictures.css"

const FIRST_WIDTH = 560
const RADIUS = 5.5
const NOTHING_YET = "Recorded crops and this season’s plan are drawn here by age, once there are any."

/**
 * The farm's own records over age, filled, each planting with a shape of its own; this season's projections hollow; the curve of
 * the age factors with its assumed band; published yields as a bracket at the side, never mixed with the farm's own.
 */
export const YieldByAge = memo(function YieldByAge({
  page,
  isAlone = false,
  onGo,
}: {
  page: LenderPage
  /** On paper it has the whole width of the page; else half of it. */
  isAlone?: boolean
  onGo?: (at: CellAddress) => void
}) {
  const [place, measured, isOnPaper] = useWidth(isAlone ? undefined : HALF_PAGE)
  const {yields, spread, region} = page
  const layout = yieldLayout(page, measured ?? FIRST_WIDTH, isOnPaper)
  const {width, height, left, right, base, published} = layout
  const isBare = layout.plantings.length === 0
  const keyWords = [
    "Filled: recorded. Hollow: this season’s plan, with its gap to the three-year mean (short line).",
    ...(layout.line
      ? [`Curve: the age factors${spread ? `; band: assumed ±${percentText(spread)}` : ""}.`]
      : []),
    ...(published ? [`Bracket: ${published.words}.`] : []),
    ...(layout.plantings.some(({label}) => label === null) ? ["Not all have room for their names."] : []),
  ].join(" ")
  const stops = layout.plantings.flatMap(({planting, dots, projection}) => {
    const one = yields.find((each) => each.planting === planting)!
    const recorded = dots.map(({x, y, isDisaster}, i) => {
      const {age, kg, at} = one.record[i]!
      const struck = isDisaster ? ", marked as struck by a disaster" : ""
      return {
        line: planting,
        x,
        y,
        at,
        words: `${planting}, age ${age}: ${quantityText(kg, 0, "kg/ha", region)} recorded${struck}.`,
      }
    })
    const ahead = projection && {
      line: planting,
      ...projection,
      words: yieldSentence(one, region),
      at: one.cells.projection,
    }
    return ahead ? [...recorded, ahead] : recorded
  })
  return (
    <figure ref={place} className="lender-picture">
      <figcaption>
        <b>{yieldTitle(yields)}</b> <span className="q">{isBare ? NOTHING_YET : keyWords}</span>
      </figcaption>
      {!isBare && (
        <PictureWalk
          name="Yields by age"
          stops={stops}
          onGo={onGo}
          label={yields.map((one) => yieldSentence(one, region)).join(" ")}
          width={width}
          height={height}
        >
          <text className="quiet" x={0} y={16}>
            {shownIn("kg/ha", region).unit}
          </text>
          <Rules rules={layout.rules} left={left} right={right} />
          {layout.band && <path className="band" d={layout.band} />}
          {layout.line && <path className="course" d={layout.line} />}
          <path className="axis" d={`M${left} ${base}H${right}`} />
          {layout.ages.map(({x, text}) => (
            <text key={text} className="quiet" x={x} y={base + 18} textAnchor="middle">
              {text}
            </text>
          ))}
          <text className="quiet" x={(left + right) / 2} y={base + 38} textAnchor="middle">
            age, planting year 0
          </text>
          {published && (
            <>
              <path className="axis" d={`M${published.x - 4} ${published.high}h8V${published.low}h-8`} />
              <text className="halo quiet" x={width} y={published.label.y} textAnchor="end">
                {published.label.text}
              </text>
            </>
          )}
          {layout.plantings.map(({planting, shape, dots, projection, lead, mean, label}) => (
            <g key={planting}>
              {lead && <path className="as-of" d={lead} />}
              {mean && <path className="axis" d={`M${mean.from} ${mean.y}H${mean.to}`} />}
              {dots.map(({x, y, isDisaster}, i) => (
                <g key={i}>
                  <path className="recorded" d={shape(x, y, RADIUS)} />
                  {isDisaster && <path className="axis" d={`M${x - 8} ${y + 8}L${x + 8} ${y - 8}`} />}
                </g>
              ))}
              {projection && <path className="to-come" d={shape(projection.x, projection.y, RADIUS + 0.5)} />}
              {label?.lead && <path className="lead" d={label.lead} />}
              {label?.lines.map((line, i) => (
                <text
                  key={line}
                  className={label.isAbove ? "held halo" : i === 0 ? "strong halo" : "halo"}
                  x={label.x}
                  y={label.y + 17 * i}
                  textAnchor={label.anchor}
                >
                  {line}
                </text>
              ))}
            </g>
          ))}
        </PictureWalk>
      )}
    </figure>
  )
})
