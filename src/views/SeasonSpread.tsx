import {memo, type ReactNode} from "react"
import type {Plan} from "../workbook/plan"
import {SeasonCalendar} from "./pictures/SeasonCalendar"
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

/** The season plan's sheet on the left and its calendar on the right, one line across both; stacked when narrow. */
export function SeasonSpread({children, ...calendar}: Props) {
  const beside = useWide(60)
  return (
    <div className="spread">
      {children}
      <div className="cal">
        <Calendar {...calendar} labels={beside ? "beside" : "inside"} />
      </div>
    </div>
  )
}
