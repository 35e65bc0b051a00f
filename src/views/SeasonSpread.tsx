import {memo, type ReactNode} from "react"
import type {Plan} from "../workbook/plan"
import {SeasonCalendar} from "./pictures/SeasonCalendar"
import {MOST_ROWS_SHOWN} from "./sheetSize"
import {useWide} from "./useEditor"

interface Props {
  plan: Plan
  selected: number
  onSelect: (row: number) => void
  onMove: (row: number, day: number | null, movement: number) => void
  headHeight: number
  rowHeight: number
  children: ReactNode
}

const Calendar = memo(SeasonCalendar)

/**
 * The season plan's sheet on the left and its calendar on the right, one line across both; stacked when narrow. A sheet that
 * scrolls within itself has no line with the calendar, which then bears the names and leaves the sheet in view.
 */
export function SeasonSpread({children, ...calendar}: Props) {
  const isWide = useWide(60)
  const isLong = calendar.plan.rows.length > MOST_ROWS_SHOWN
  return (
    <div className={isLong ? "spread long" : "spread"}>
      <div className="plan-sheet">{children}</div>
      <div className="cal">
        <Calendar {...calendar} labels={isWide && !isLong ? "beside" : "inside"} />
      </div>
    </div>
  )
}
