import {dayText} from "../../editor/display"
import type {CellAddress} from "../../workbook/document"
import type {PlantingWeek} from "../../workbook/season"
import {movedLayout} from "./movedLayout"
import {PictureWalk} from "./PictureWalk"
import {useWidth} from "./useWidth"
import {heldWords, movedSentence} from "./weekWords"
import "./pictures.css"

const FIRST_WIDTH = 440 // before the place is measured; chosen
const BAR = 16

/**
 * How far each close moved since last week, sorted by how far: earlier to the left, later to the right. Its table is the sheet
 * below. Draws nothing when none moved.
 */
export function WhatMoved({
  plantings,
  onGo,
}: {
  plantings: readonly PlantingWeek[]
  onGo?: (at: CellAddress) => void
}) {
  const [place, measured] = useWidth()
  const moved = plantings
    .filter(
      (one) => one.moved !== null && one.moved !== 0 && one.close !== null && one.closeLastWeek !== null,
    )
    .toSorted((a, b) => Math.abs(b.moved!) - Math.abs(a.moved!))
  if (moved.length === 0) return null
  const told = moved.map((one) => ({words: wordsOf(one), days: one.moved!}))
  const width = measured ?? FIRST_WIDTH
  const {height, middle, scale, rows} = movedLayout(told, width)
  const bars = told.map(({days}, i) => {
    const length = Math.abs(days) * scale
    return {x: days < 0 ? middle - length : middle, y: rows[i]!.barY, width: length, height: BAR}
  })
  const stops = bars.map((bar, i) => ({
    x: bar.x + bar.width / 2,
    y: bar.y + BAR / 2,
    width: bar.width + 10,
    height: BAR + 10,
    words: movedSentence(moved[i]!),
    at: moved[i]!.cells.moved,
  }))
  return (
    <div ref={place} className="what-moved">
      <PictureWalk
        name="Days that each close moved"
        label={moved.map(movedSentence).join(" ")}
        width={width}
        height={height}
        stops={stops}
        onGo={onGo}
      >
        <text className="quiet" x={middle - 8} y={13} textAnchor="end">
          days earlier
        </text>
        <text className="quiet" x={middle + 8} y={13}>
          later
        </text>
        {told.map(({words: [bold, quiet], days}, i) => {
          const {y, barY} = rows[i]!
          const bar = bars[i]!
          return (
            <g key={moved[i]!.planting}>
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
                x={days < 0 ? bar.x - 5 : bar.x + bar.width + 5}
                y={barY + 13}
                textAnchor={days < 0 ? "end" : "start"}
              >
                {days < 0 ? "\u2212" : "+"}
                {Math.abs(days)} d
              </text>
            </g>
          )
        })}
      </PictureWalk>
    </div>
  )
}

const wordsOf = (one: PlantingWeek) =>
  [`${one.planting}: ${dayText(one.closeLastWeek!)} to ${dayText(one.close!)}`, heldWords(one)] as const
