import type {DayWeight, PlantingWeek} from "../../workbook/season"

/** A week of one planting, kg. */
export interface PickedWeek {
  /** Its first day. */
  readonly from: number
  /** Null of weeks that are still to come. */
  readonly picked: number | null
  readonly planned: number
}

/** The weeks of a planting's season, counted from the as-of day both ways, so that the last one over is the week of the page. */
export function pickedWeeks(
  {plannedSoFar, pickedSoFar}: Pick<PlantingWeek, "plannedSoFar" | "pickedSoFar">,
  asOf: number,
): readonly PickedWeek[] {
  const days = [...plannedSoFar, ...pickedSoFar].map(({day}) => day)
  if (days.length === 0) return []
  const [first, last] = [Math.min(...days), Math.max(...days)]
  const from = asOf + 7 * Math.floor((first - asOf) / 7)
  return Array.from({length: Math.floor((last - from) / 7) + 1}, (_, i) => {
    const start = from + 7 * i
    const within = (sums: readonly DayWeight[]) => sumBefore(sums, start + 7) - sumBefore(sums, start)
    return {
      from: start,
      picked: start < asOf ? within(pickedSoFar) : null,
      planned: within(plannedSoFar),
    }
  })
}

/** What was summed up by the day before, kg. */
const sumBefore = (sums: readonly DayWeight[], day: number) => sums.findLast((one) => one.day < day)?.kg ?? 0
