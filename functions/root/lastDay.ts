/**
 * The last day from `first` to `last` up to which every day holds, looked for by weeks and then by halves; `first - 1`
 * when the first does not hold. A stretch of less than a week that does not hold between others may be missed.
 */
export function lastDayThat(first: number, last: number, holds: (day: number) => boolean): number {
  let good = first - 1
  let bad = last + 1
  for (let day = first; day <= last; day = day === last ? last + 1 : Math.min(last, day + 7)) {
    if (!holds(day)) {
      bad = day
      break
    }
    good = day
  }
  while (bad - good > 1) {
    const middle = Math.floor((good + bad) / 2)
    if (holds(middle)) good = middle
    else bad = middle
  }
  return good
}
