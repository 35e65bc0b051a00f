import {dayText} from "../../editor/display"
import type {PlantingWeek} from "../../workbook/season"
import "./pictures.css"

const ROW = 40
const MIDDLE = 330 // px from the left to the line of no change
const WIDTH = 440
const MOST = 80 // px to either side

/** How far each close moved since last week, sorted by how far: earlier to the left, later to the right. Draws nothing when none moved. */
export function WhatMoved({plantings}: {plantings: readonly PlantingWeek[]}) {
  const moved = plantings
    .filter(
      (one) => one.moved !== null && one.moved !== 0 && one.close !== null && one.closeLastWeek !== null,
    )
    .toSorted((a, b) => Math.abs(b.moved!) - Math.abs(a.moved!))
  if (moved.length === 0) return null
  const scale = MOST / Math.max(7, ...moved.map((one) => Math.abs(one.moved!)))
  const height = 24 + ROW * moved.length
  return (
    <svg
      className="pic"
      width={WIDTH}
      height={height}
      viewBox={`0 0 ${WIDTH} ${height}`}
      role="img"
      aria-label={moved.map(movedSentence).join(" ")}
    >
      <text className="quiet" x={MIDDLE - 8} y={13} textAnchor="end">
        days earlier
      </text>
      <text className="quiet" x={MIDDLE + 8} y={13}>
        later
      </text>
      <path className="axis" d={`M${MIDDLE} 20V${height - 4}`} />
      {moved.map((one, i) => {
        const days = one.moved!
        const top = 24 + i * ROW
        const wide = Math.abs(days) * scale
        return (
          <g key={one.planting}>
            <text className="strong" x={0} y={top + 14}>
              {one.planting}: {dayText(one.closeLastWeek!)} to {dayText(one.close!)}
            </text>
            <text className="quiet" x={0} y={top + 31}>
              {one.heldBy === one.heldByLastWeek || one.heldByLastWeek === ""
                ? one.heldBy
                : `${one.heldByLastWeek}, now ${one.heldBy}`}
            </text>
            <rect
              className="past"
              x={days < 0 ? MIDDLE - wide : MIDDLE}
              y={top + 4}
              width={wide}
              height={16}
            />
            <text
              className="held"
              x={days < 0 ? MIDDLE - wide - 5 : MIDDLE + wide + 5}
              y={top + 17}
              textAnchor={days < 0 ? "end" : "start"}
            >
              {days < 0 ? "\u2212" : "+"}
              {Math.abs(days)} d
            </text>
          </g>
        )
      })}
    </svg>
  )
}

/** "Sand Piece: from 6 Jun to 7 Jun, held by spear size." */
export const movedSentence = ({planting, closeLastWeek, close, heldBy}: PlantingWeek): string =>
  `${planting}: from ${dayText(closeLastWeek!)} to ${dayText(close!)}, held by ${heldBy}.`
