import {memo, useId} from "react"
import {numberText, shownIn} from "../../editor/display"
import type {Risk} from "../../studies/risk"
import type {CellAddress} from "../../workbook/document"
import type {LenderPage} from "../../workbook/lender"
import {cashLayout, HEAD, type CoverDot, type YearColumn} from "./cashLayout"
import {cashSentence, cashTitle, leftOutWords} from "./lenderWords"
import {Hatch, Rules} from "./marks"
import {textWidth} from "./placing"
import {PictureWalk} from "./PictureWalk"
import {useWidth} from "./useWidth"
import "./pictures.css"

const FIRST_WIDTH = 620
/** px: half of an A4 page within its margins. */
export const HALF_PAGE = 332

/**
 * What there is to pay debt, year by year, against what is due; below, the cover of the plan as a filled dot and of the
 * stress as a ring. A short year is hatched and says by how much. Its table is the sheet Cash and debt.
 */
export const CashAndDebt = memo(function CashAndDebt({
  page: {years, unknown, wanted, stress, region},
  risk = null,
  isAlone = false,
  onGo,
}: {
  page: Pick<LenderPage, "years" | "unknown" | "wanted" | "stress" | "region">
  /** Where it was worked out: the band holds eight draws of ten. */
  risk?: Risk | null
  /** On paper it has the whole width of the page; else half of it. */
  isAlone?: boolean
  onGo?: (at: CellAddress) => void
}) {
  const [place, measured, isOnPaper] = useWidth(isAlone ? undefined : HALF_PAGE)
  const hatch = useId()
  const currency = shownIn("money", region).unit
  const {width, height, left, isNarrow, inThousands, zero, rules, columns, yearsY, isCut, ...cover} =
    cashLayout(years, measured ?? FIRST_WIDTH, wanted, region, risk, isOnPaper)
  const stressWords = textWidth(`cover under stress: ${stress}`) <= width ? stress : ""
  const yearOf = (year: number) => years.find((each) => each.year === year)!
  const money = columns.map(({year, x, capacity, due}) => {
    const one = yearOf(year)
    const [top, bottom] = [Math.min(capacity.y, due.y), Math.max(capacity.y + capacity.height, due.y)]
    return {
      line: "money",
      x,
      y: (top + bottom) / 2,
      width: capacity.width + 10,
      height: bottom - top + 10,
      words: cashSentence([one], region),
      at: one.cells.capacity,
    }
  })
  const covers = (line: "cover" | "cover under stress", dotOf: (column: YearColumn) => CoverDot | null) =>
    columns.flatMap((column) => {
      const {year, x} = column
      const dot = dotOf(column)
      if (!dot) return []
      const words = line === "cover" ? "as planned" : "under stress"
      return [
        {line, x, y: dot.y, words: `${year}: cover ${dot.text} ${words}.`, at: yearOf(year).cells[line]},
      ]
    })
  const stops = [
    ...money,
    ...covers("cover", (column) => column.cover),
    ...covers("cover under stress", (column) => column.stressed),
  ]
  return (
    <figure ref={place} className="lender-picture">
      <figcaption>
        <b>{cashTitle(years, region, wanted, unknown)}</b>{" "}
        {columns.length > 0 && (
          <span className="q">
            Column: {currency} to pay debt. Line: what is due. Dot: cover as planned.
            {columns.some(({short}) => short) && " Hatched: what a year is short."}
            {stress && ` Ring: under stress${stressWords === "" ? `, ${stress}` : ""}.`}
            {risk && " Band: eight draws of ten."} Level line: just pays
            {wanted === null
              ? ""
              : `; dotted: the ${numberText(wanted, undefined, region.decimal)} wanted`}.{" "}
            {leftOutWords(years)} {isCut && "Arrows: beyond the scale."}
          </span>
        )}
      </figcaption>
      {columns.length > 0 && (
        <PictureWalk
          name="Cash and debt by year"
          stops={stops}
          onGo={onGo}
          label={cashSentence(years, region)}
          width={width}
          height={height}
        >
          <Hatch id={hatch} />
          <text className="quiet" x={0} y={HEAD}>
            {currency}
            {inThousands && ", thousands"}
          </text>
          <Rules rules={rules} left={left - 2} right={width} gap={isNarrow ? 4 : 8} />
          {columns.map(({year, x, capacity, due, isNamed, isTight, words, short}) => (
            <g key={year}>
              <rect className="past-band" {...capacity} />
              {short && <rect className="short" {...short} fill={`url(#${hatch})`} />}
              <path className="axis at-hand" d={`M${due.from} ${due.y}H${due.to}`} />
              {isNamed && (
                <text className="strong" x={x} y={due.y - 5} textAnchor="middle">
                  due
                </text>
              )}
              {words?.lines.map((line, row) => (
                <text
                  key={line}
                  className={isTight ? "held halo" : "strong halo"}
                  x={words.x}
                  y={words.y + 18 * row}
                  textAnchor="middle"
                >
                  {line}
                </text>
              ))}
              <text
                className={isTight ? "held" : short ? "strong" : "quiet"}
                x={x}
                y={yearsY}
                textAnchor="middle"
              >
                {columns.length > 5 && isNarrow ? `\u2019${String(year).slice(2)}` : year}
              </text>
            </g>
          ))}
          <path className="axis" d={`M${left - 4} ${zero}H${width}`} />
          <text className="strong" x={0} y={cover.coverTitleY}>
            cover as planned: {currency} for each 1 due
          </text>
          {columns.length > 0 && (
            <CoverLines
              justPays={cover.justPays}
              wanted={cover.wanted}
              left={left}
              width={width}
              isNarrow={isNarrow}
              wantedWords={cover.wantedWords}
            />
          )}
          {stress && columns.some(({stressed}) => stressed) && (
            <text className="quiet" x={0} y={cover.stressWordsY}>
              cover under stress{stressWords && `: ${stressWords}`}
            </text>
          )}
          {columns.map(({year, x, isTight, cover: plan, stressed, stressedY, band}) => (
            <g key={year}>
              {band && (
                <>
                  <rect className="band" x={x - 6} y={band.high} width={12} height={band.low - band.high} />
                  {band.beyondHigh && <Number {...band.beyondHigh} y={cover.beyondHighY} />}
                  {band.beyondLow && <Number {...band.beyondLow} y={cover.beyondLowY} />}
                </>
              )}
              {plan && stressed && <path className="lead" d={`M${x} ${plan.y}V${stressed.y}`} />}
              {stressed && (
                <>
                  <Dot className="to-come" x={x} dot={stressed} r={4.5} />
                  <Number text={stressed.text} x={x} y={stressedY} />
                </>
              )}
              {plan && (
                <>
                  <Dot className="past" x={x} dot={plan} r={5.5} />
                  <Number className={isTight ? "held" : ""} text={plan.text} x={x} y={cover.planY} />
                </>
              )}
            </g>
          ))}
        </PictureWalk>
      )}
    </figure>
  )
})

/** A number in the line of its kind. */
const Number = ({
  text,
  x,
  y,
  className = "quiet",
}: {
  text: string
  x: number
  y: number
  className?: string
}) => (
  <text className={className} x={x} y={y} textAnchor="middle">
    {text}
  </text>
)

/** A cover: round at its level, a point outwards at the edge that it lies beyond. */
function Dot({className, x, dot: {y, beyond}, r}: {className: string; x: number; dot: CoverDot; r: number}) {
  if (beyond === null) return <circle className={className} cx={x} cy={y} r={r} />
  const tip = beyond === "above" ? -r : r
  return <path className={className} d={`M${x - r} ${y - tip}H${x + r}L${x} ${y + tip}Z`} />
}

function CoverLines({
  justPays,
  wanted,
  left,
  width,
  isNarrow,
  wantedWords,
}: {
  justPays: number
  wanted: number | null
  left: number
  width: number
  isNarrow: boolean
  wantedWords: string
}) {
  const isClose = wanted !== null && Math.abs(wanted - justPays) < 18
  const isOver = isClose && wanted < justPays
  const label = (words: string, y: number) => (
    <text className="quiet" x={left - (isNarrow ? 5 : 10)} y={y} textAnchor="end">
      {words}
    </text>
  )
  return (
    <>
      <path className="axis" d={`M${left - 2} ${justPays}H${width}`} />
      {label(isNarrow ? "1" : "just pays", justPays + (isOver ? 14 : 5))}
      {wanted !== null && (
        <>
          <path className="as-of" d={`M${left - 2} ${wanted}H${width}`} />
          {label(wantedWords, wanted + (isOver ? -4 : 5))}
        </>
      )}
    </>
  )
}
