import {isoOf, type ModelYear} from "../calendar"
import {isRange, optional, quantity, date, type Held, type Parameter} from "../parameters"
import {isRefusal, notYet, wrongKind, type Refusal} from "../refusal"

/** The green share of the fern from a day on. */
export interface HealthStep {
  readonly from: number
  readonly share: number
}

const greenShare = quantity("Healthy share of the fern", "share", {min: 0, max: 1})
const fromDay = date("Healthy share of the fern, day")

/**
 * The healthy share of the fern: one number for the whole of it, or a range of two columns, date and share, in rising
 * order; a share holds from its day on, and before the first the fern is whole. Blank rows are skipped.
 */
export const healthyFern: Parameter<readonly HealthStep[]> = optional(
  {
    label: greenShare.label,
    unit: "share",
    takes: "a share from 0 to 1, or a range of two columns, date and share",
    isRange: true,
    read: (given) => {
      if (isRange(given)) return readSteps(given)
      const share = greenShare.read(given)
      return isRefusal(share) ? share : [{from: -Infinity, share}]
    },
  },
  [],
  "1",
)

function readSteps(rows: readonly (readonly Held[])[]): readonly HealthStep[] | Refusal {
  if (rows.length === 1 && rows[0]!.length === 1) {
    const share = greenShare.read(rows[0]![0]!)
    return isRefusal(share) ? share : [{from: -Infinity, share}]
  }
  const steps: HealthStep[] = []
  for (const row of rows) {
    if (row.length !== 2)
      return wrongKind(`${greenShare.label} must be one share or a range of two columns, date and share`)
    const [day = null, held = null] = row
    if (day === null && held === null) continue
    const from = fromDay.read(day)
    if (isRefusal(from)) return from
    const share = greenShare.read(held)
    if (isRefusal(share))
      return held === null ? notYet(`${greenShare.label} from ${isoOf(from)}: not measured yet`) : share
    const last = steps.at(-1)
    if (last && from <= last.from)
      return wrongKind(
        `${fromDay.label} ${isoOf(from)} must come after ${isoOf(last.from)}, the day before it in the list`,
      )
    steps.push({from, share})
  }
  return steps
}

/** The healthy share on each day of a model year. */
export function healthAlong(steps: readonly HealthStep[], {first, days}: ModelYear): Float64Array {
  const along = new Float64Array(days).fill(1)
  for (const {from, share} of steps) along.fill(share, Math.min(days, Math.max(0, from - first)))
  return along
}
