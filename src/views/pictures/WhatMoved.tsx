import {dayText} from "../../editor/display"
import type {PlantingWeek} from "../../workbook/season"
import {movedLayout} from "./movedLayout"
import {useWidth} from "./useWidth"
import "./pictures.css"

const FIRST_WIDTH = 440 // before the place is measured; chosen
const BAR = 16

/** How far each close moved since last week, sorted by how far: earlier to the left, later to the right. Draws nothing when none moved. */
export function WhatMoved({plantings}: {plantings: readonly PlantingWeek[]}) {
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
  return (
    <div ref={place} className="what-moved">
      <svg
        className="pic"
        width={width}
        height={height}
        viewBox={`0 0 ${width} ${height}`}
        role="img"
        aria-label={moved.map(movedSentence).join(" ")}
      >
        <text className="quiet" x={middle - 8} y={13} textAnchor="end">
          days earlier
        </text>
        <text className="quiet" x={middle + 8} y={13}>
          later
        </text>
        {told.map(({words: [bold, quiet], days}, i) => {
          const {y, barY} = rows[i]!
          const wide = Math.abs(days) * scale
          return (
            <g key={moved[i]!.planting}>
              <text className="strong" x={0} y={y + 14}>
                {bold}
              </text>
              <text className="quiet" x={0} y={y + 31}>
                {quiet}
              </text>
              <path className="axis" d={`M${middle} ${barY - 4}v${BAR + 8}`} />
              <rect
                className="past"
                x={days < 0 ? middle - wide : middle}
                y={barY}
                width={wide}
                height={BAR}
              />
              <text
                className="held"
                x={days < 0 ? middle - wide - 5 : middle + wide + 5}
                y={barY + 13}
                textAnchor={days < 0 ? "end" : "start"}
              >
                {days < 0 ? "\u2212" : "+"}
                {Math.abs(days)} d
              </text>
            </g>
          )
        })}
      </svg>
    </div>
  )
}

const wordsOf = (one: PlantingWeek) =>
  [
    `${one.planting}: ${dayText(one.closeLastWeek!)} to ${dayText(one.close!)}`,
    one.heldBy === one.heldByLastWeek || one.heldByLastWeek === ""
      ? one.heldBy
      : `${one.heldByLastWeek}, now ${one.heldBy}`,
  ] as const

/** "Sand Piece: from 6 Jun to 7 Jun, held by spear size." */
export const movedSentence = ({planting, closeLastWeek, close, heldBy}: PlantingWeek): string =>
  `${planting}: from ${dayText(closeLastWeek!)} to ${dayText(close!)}, held by ${heldBy}.`
