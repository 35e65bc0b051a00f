import {useState} from "react"
import {dayText, percentText, shownIn} from "../../editor/display"
import type {CellAddress, Region} from "../../workbook/document"
import type {PlantingWeek, SeasonWeek} from "../../workbook/season"
import {beside} from "./besideLine"
import {PickedByWeek} from "./PickedByWeek"
import {PictureWalk} from "./PictureWalk"
import {BOLD, fitted} from "./placing"
import {useWidth} from "./useWidth"
import "./pictures.css"

const FIRST_WIDTH = 480 // before the place is measured; chosen
const LEAST_EACH = 108 // narrower than this the two lines cannot be told apart; chosen
const HEIGHT = 104
const TOP = 22
const BASE = HEIGHT - 22
/** Between the small pictures, px. */
const GAP = 14

/**
 * What was picked so far against the plan, one small picture for each planting on one scale of days and of kg/ha: the plan
 * dashed, the picked solid, its share of the plan at the end of the line. Plantings that are not cut are left out. Its table
 * is the sheet below.
 */
export function PickedSoFar({week, onGo}: {week: SeasonWeek; onGo?: (at: CellAddress) => void}) {
  const [place, measured] = useWidth()
  const [isWeekly, setWeekly] = useState(false)
  const shown = week.plantings.filter(
    ({plannedSoFar, area}) => plannedSoFar.length > 0 && area !== null && area > 0,
  )
  if (shown.length === 0) return null
  const width = measured ?? FIRST_WIDTH
  const columns = Math.max(1, Math.min(shown.length, Math.floor(width / LEAST_EACH)))
  const each = Math.floor(width / columns)
  const {x, y, most, words} = scales(shown, each, week.region)
  const begun = months(shown)
  const drawn = shown.map((one, i) => {
    const along = (points: PlantingWeek["plannedSoFar"]) =>
      points.map(({day, kg}) => ({x: x(day), y: y(kg / one.area!)}))
    const [first] = one.pickedSoFar
    return {
      one,
      left: (i % columns) * each,
      top: Math.floor(i / columns) * HEIGHT,
      plan: along(one.plannedSoFar),
      picked: first ? along([{day: first.day - 1, kg: 0}, ...one.pickedSoFar]) : [],
    }
  })
  const stops = drawn.map(({one, left, top, picked}) => {
    const dot = picked.at(-1) ?? {x: 2, y: BASE}
    return {
      x: left + dot.x,
      y: top + dot.y,
      words: pickedSentence(one, week.asOf, week.region),
      at: one.cells.pace,
    }
  })
  return (
    <div ref={place} className="picked-so-far">
      <PictureWalk
        name="Picked so far, by planting"
        label={stops.map((stop) => stop.words).join(" ")}
        width={width}
        height={HEIGHT * Math.ceil(shown.length / columns)}
        stops={stops}
        onGo={onGo}
      >
        {drawn.map(({one, left, top, plan, picked}, i) => {
          const dot = picked.at(-1)
          const pace = one.pace === null ? "" : percentText(one.pace)
          const room = {left: 0, right: each - 4, top: TOP, bottom: BASE - 2}
          const at = dot && beside(dot, pace, [plan, picked], room)
          return (
            <g key={one.planting} transform={`translate(${left} ${top})`}>
              <text className="strong" x={0} y={13}>
                {fitted(one.planting, (each - GAP) / BOLD)}
              </text>
              <path className="hair" d={`M0 ${y(most)}H${each - GAP}`} />
              {i % columns === 0 && (
                <text className="quiet halo" x={0} y={y(most) + 15}>
                  {words}
                </text>
              )}
              <path className="axis" d={`M0 ${BASE}H${each - GAP}`} />
              <path className="main dashed" d={pathOf(plan)} />
              {dot && (
                <>
                  <path className="main" d={pathOf(picked)} />
                  <circle className="dot" cx={dot.x} cy={dot.y} r={3.5} />
                  <text className="held halo" x={at!.x} y={at!.y}>
                    {pace}
                  </text>
                </>
              )}
              {begun.map(({day, words}) => (
                <text key={words} className="quiet" x={x(day)} y={HEIGHT - 5}>
                  {words}
                </text>
              ))}
            </g>
          )
        })}
      </PictureWalk>
      <p className="small q">Solid: picked. Dashed: the plan. The share is of the plan so far.</p>
      <details className="twin" onToggle={({currentTarget}) => setWeekly(currentTarget.open)}>
        <summary>Week by week</summary>
        {isWeekly && (
          <PickedByWeek week={week} plantings={shown} width={width} columns={columns} onGo={onGo} />
        )}
      </details>
    </div>
  )
}

const pathOf = (points: readonly {readonly x: number; readonly y: number}[]) =>
  points.map(({x, y}, i) => `${i ? "L" : "M"}${x.toFixed(1)} ${y.toFixed(1)}`).join("")

/** "Long Acre: 12 787 kg picked before 25 May, 84 % of the plan." */
export function pickedSentence(
  {planting, pickedSoFar, pace}: PlantingWeek,
  asOf: number,
  region?: Region,
): string {
  const last = pickedSoFar.at(-1)
  if (!last) return `${planting}: nothing picked before ${dayText(asOf)}.`
  const ofPlan = pace === null ? "" : `, ${percentText(pace)} of the plan`
  const {unit, text} = shownIn("kg", region)
  return `${planting}: ${text(last.kg, 0)}\u00a0${unit} picked before ${dayText(asOf)}${ofPlan}.`
}

/** One scale for all: days from the first opening to the last close, kg/ha from nought to a whole tonne, or ton, above the most. */
function scales(shown: readonly PlantingWeek[], each: number, region: Region | undefined) {
  const days = shown.flatMap(({plannedSoFar}) => [plannedSoFar[0]!.day, plannedSoFar.at(-1)!.day])
  const [first, last] = [Math.min(...days), Math.max(...days)]
  const highest = Math.max(
    ...shown.flatMap(({plannedSoFar, pickedSoFar, area}) =>
      [plannedSoFar.at(-1)!.kg, pickedSoFar.at(-1)?.kg ?? 0].map((kg) => kg / area!),
    ),
  )
  const {unit, number} = shownIn("t/ha", region)
  const tonnes = Math.max(1, Math.ceil(number(highest / 1000)))
  const most = (1000 * tonnes) / number(1)
  return {
    most,
    words: `${tonnes} ${unit}`,
    x: (day: number) => ((day - first) / Math.max(1, last - first)) * (each - 22) + 2,
    y: (kgHa: number) => BASE - (kgHa / most) * (BASE - TOP),
  }
}

/** The months that begin within the season, by their first days. */
function months(shown: readonly PlantingWeek[]) {
  const days = shown.flatMap(({plannedSoFar}) => [plannedSoFar[0]!.day, plannedSoFar.at(-1)!.day])
  const found: {day: number; words: string}[] = []
  for (let day = Math.min(...days); day <= Math.max(...days); day++) {
    const text = dayText(day)
    if (text.startsWith("1 ")) found.push({day, words: text.slice(2)})
  }
  return found
}
