/** Days of the months of a year of 365 days. */
export const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const
const YEAR = 365

/**
 * Daily values of a year of 365 days from the means of its twelve months: straight lines between points at the middle
 * of the months, round the year. A day's value is the line at the middle of the day. The points are solved for, so that
 * the days of every month have exactly that month's mean.
 */
export function monthlyToDays(means: ArrayLike<number>): Float64Array {
  const days = new Float64Array(YEAR)
  dayWeights ??= weightsOfDays()
  for (let day = 0; day < YEAR; day++) {
    let sum = 0
    for (let month = 0; month < 12; month++) sum += dayWeights[day * 12 + month]! * means[month]!
    days[day] = sum
  }
  return days
}

/** What each month's mean adds to each day, day by day; worked out once. */
let dayWeights: Float64Array | undefined

function weightsOfDays(): Float64Array {
  const lines = Array.from({length: YEAR}, (_, day) => pointWeights(day + 0.5))
  const starts = MONTH_DAYS.map((_, month) => MONTH_DAYS.slice(0, month).reduce((sum, days) => sum + days, 0))
  const monthMeans = MONTH_DAYS.map((length, month) => {
    const days = lines.slice(starts[month], starts[month]! + length)
    return Array.from({length: 12}, (_, point) => days.reduce((sum, line) => sum + line[point]!, 0) / length)
  })
  const pointsOfMeans = inverseOf(monthMeans)
  const weights = new Float64Array(YEAR * 12)
  for (const [day, line] of lines.entries())
    for (let month = 0; month < 12; month++)
      weights[day * 12 + month] = line.reduce(
        (sum, weight, point) => sum + weight * pointsOfMeans[point]![month]!,
        0,
      )
  return weights
}

/** How much of each month's point is in the line at a time of the year, in days from 1 January. */
function pointWeights(time: number): number[] {
  const middles: number[] = []
  let start = 0
  for (const length of MONTH_DAYS) {
    middles.push(start + length / 2)
    start += length
  }
  const next = middles.findIndex((middle) => middle > time)
  const after = next === -1 ? 0 : next
  const before = (after + 11) % 12
  const span = (middles[after]! - middles[before]! + YEAR) % YEAR
  const share = ((time - middles[before]! + YEAR) % YEAR) / span
  const weights = Array.from({length: 12}, () => 0)
  weights[before] = 1 - share
  weights[after] = share
  return weights
}

/** Inverse of a square matrix by Gauss and Jordan, with the largest pivot of each column. */
function inverseOf(matrix: readonly (readonly number[])[]): number[][] {
  const size = matrix.length
  const rows = matrix.map((row, i) => [...row, ...Array.from({length: size}, (_, j) => (i === j ? 1 : 0))])
  for (let col = 0; col < size; col++) {
    let pivot = col
    for (let row = col; row < size; row++)
      if (Math.abs(rows[row]![col]!) > Math.abs(rows[pivot]![col]!)) pivot = row
    ;[rows[col], rows[pivot]] = [rows[pivot]!, rows[col]!]
    const lead = rows[col]![col]!
    rows[col] = rows[col]!.map((entry) => entry / lead)
    for (let row = 0; row < size; row++) {
      const factor = rows[row]![col]!
      if (row !== col) rows[row] = rows[row]!.map((entry, i) => entry - factor * rows[col]![i]!)
    }
  }
  return rows.map((row) => row.slice(size))
}
