import {dayText} from "../../editor/display"
import type {CellAddress} from "../../workbook/document"
import type {PlantingWeek} from "../../workbook/season"
import {MovedBars} from "./MovedBars"
import {useWidth} from "./useWidth"
import {heldWords, movedSentence} from "./weekWords"

const FIRST_WIDTH = 440 // before the place is measured; chosen
const WEEK = 7 // days that the scale holds at the fewest, so that a day does not look like a week; chosen

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
  const bars = moved.map((one) => ({
    key: one.planting,
    words: wordsOf(one),
    by: one.moved!,
    text: `${one.moved! < 0 ? "\u2212" : "+"}${Math.abs(one.moved!)} d`,
    sentence: movedSentence(one),
    at: one.cells.moved,
  }))
  return (
    <div ref={place} className="what-moved">
      <MovedBars
        name="Days that each close moved"
        label={moved.map(movedSentence).join(" ")}
        bars={bars}
        width={measured ?? FIRST_WIDTH}
        sides={["days earlier", "later"]}
        least={WEEK}
        onGo={onGo}
      />
    </div>
  )
}

const wordsOf = (one: PlantingWeek) =>
  [`${one.planting}: ${dayText(one.closeLastWeek!)} to ${dayText(one.close!)}`, heldWords(one)] as const
