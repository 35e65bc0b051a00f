import {dayText, numberText, shownIn} from "../../editor/display"
import type {CellAddress} from "../../workbook/document"
import type {PlantingWeek, SeasonWeek} from "../../workbook/season"
import {pickedWeeks, type PickedWeek} from "./pickedWeeks"
import {PictureWalk} from "./PictureWalk"
import {BOLD, fitted} from "./placing"
import "./pictures.css"

const HEIGHT = 96
const TOP = 34
const BASE = HEIGHT - 20
/** Between the small pictures, px. */
const GAP = 14

/**
 * What was picked in each week, filled, inside what was planned, outlined: one small picture for each planting on one scale of
 * weeks and of kg/ha. The last week over is that of the page.
 */
export function PickedByWeek({
  week: {asOf, region},
  plantings,
  width,
  columns,
  onGo,
}: {
  week: SeasonWeek
  /** Those that have a plan and an area. */
  plantings: readonly PlantingWeek[]
  width: number
  columns: number
  onGo: ((at: CellAddress) => void) | undefined
}) {
  const weeks = plantings.map((one) => pickedWeeks(one, asOf))
  const all = weeks.flat()
  const [first, last] = [Math.min(...all.map(({from}) => from)), Math.max(...all.map(({from}) => from))]
  const kgHa = ({picked, planned}: PickedWeek, area: number) => Math.max(picked ?? 0, planned) / area
  const highest = Math.max(1, ...plantings.flatMap(({area}, i) => weeks[i]!.map((one) => kgHa(one, area!))))
  const {unit, number} = shownIn("kg/ha", region)
  // The scale ends at a round number of the unit that is shown.
  const power = 10 ** Math.floor(Math.log10(number(highest)))
  const round = Math.ceil(number(highest) / power) * power
  const most = round / number(1)
  const each = Math.floor(width / columns)
  const step = (each - GAP) / ((last - first) / 7 + 1)
  const bar = Math.max(2, step - 2)
  const x = (from: number) => ((from - first) / 7) * step
  const high = (kg: number, area: number) => (kg / area / most) * (BASE - TOP)
  const {unit: mass, text: kg} = shownIn("kg", region)
  const drawn = plantings.map((one, i) => ({
    ...one,
    weeks: weeks[i]!,
    left: (i % columns) * each,
    top: Math.floor(i / columns) * HEIGHT,
  }))
  const stops = drawn.flatMap(({planting, weeks, left, top, cells}) =>
    weeks.map(({from, picked, planned}) => {
      const came = picked === null ? "to come" : `${kg(picked, 0)}\u00a0${mass} picked`
      return {
        line: planting,
        along: x(from),
        x: left + x(from) + step / 2,
        y: top + (TOP + BASE) / 2,
        width: step,
        height: BASE - TOP,
        words: `${planting}, week from ${dayText(from)}: ${came}, ${kg(planned, 0)}\u00a0${mass} planned.`,
        at: cells.pace,
      }
    }),
  )
  return (
    <>
      <PictureWalk
        name="Picked week by week, by planting"
        label={stops.map(({words}) => words).join(" ")}
        width={width}
        height={HEIGHT * Math.ceil(plantings.length / columns)}
        stops={stops}
        onGo={onGo}
      >
        {drawn.map(({planting, area, weeks, left, top}, i) => (
          <g key={planting} transform={`translate(${left} ${top})`}>
            <text className="strong" x={0} y={13}>
              {fitted(planting, (each - GAP) / BOLD)}
            </text>
            <path className="hair" d={`M0 ${TOP}H${each - GAP}`} />
            {i % columns === 0 && (
              <text className="quiet" x={0} y={TOP - 4}>
                {numberText(round)} {unit}
              </text>
            )}
            {weeks.map(({from, picked, planned}) => (
              <g key={from}>
                {picked !== null && (
                  <rect
                    className="past"
                    x={x(from) + bar * 0.2}
                    y={BASE - high(picked, area!)}
                    width={bar * 0.6}
                    height={high(picked, area!)}
                  />
                )}
                <path
                  className="planned-week"
                  d={`M${x(from)} ${BASE}v${-high(planned, area!)}h${bar}V${BASE}`}
                />
              </g>
            ))}
            <path className="axis" d={`M0 ${BASE}H${each - GAP}`} />
            <text className="quiet" x={0} y={HEIGHT - 5}>
              {dayText(first)}
            </text>
          </g>
        ))}
      </PictureWalk>
      <p className="small q">
        Filled: picked in the week. Outlined: planned. A week begins as the week of this page does.
      </p>
    </>
  )
}
