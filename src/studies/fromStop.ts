import type {BalanceValues} from "../../functions/root/balanceValues"
import {dailyBalance, emptyCourse, type Crowns, type Drivers} from "../../functions/root/dailyBalance"

/** What drives the balance on the days from `from` up to `to` of the model year. */
export const driversBetween = (
  from: number,
  to: number,
  {spears, fern, breath, light}: Drivers,
): Drivers => ({
  spears: spears.subarray(from, to),
  fern: fern.subarray(from, to),
  breath: breath.subarray(from, to),
  light: light.subarray(from, to),
})

/**
 * Carries crowns from the start of the first day after cutting, `stop`, to the end of the model year, as the daily balance does:
 * the days of fern one by one, and those after them, which all crowns have alike, in one sum. `healthy` is the green share of the
 * fern, day by day of the year.
 */
export function fromStop(
  drivers: Drivers,
  stop: number,
  healthy: Float64Array,
  values: BalanceValues,
): (crowns: Crowns) => Crowns {
  const length = drivers.breath.length
  const fernEnd = Math.max(stop, Math.min(values.Fern_end - 1, length))
  const dormant = dormancy(driversBetween(fernEnd, length, drivers), values)
  const days = fernEnd - stop
  if (days === 0) return dormant
  const ofFern = driversBetween(stop, fernEnd, drivers)
  const green = healthy.subarray(stop, fernEnd)
  const course = emptyCourse(days)
  return (crowns) => {
    dailyBalance(crowns, ofFern, {open: -1, stop: -1, fernEnd: days}, green, values, course)
    return dormant({structure: course.structure[days - 1]!, reserve: course.reserve[days - 1]!})
  }
}

/**
 * Days without spears and fern. Each takes a share of the structure, and of the store what the structure breathes, so that they
 * are run once for a kg of it. A store that comes to nothing stays there.
 */
function dormancy(drivers: Drivers, values: BalanceValues): (crowns: Crowns) => Crowns {
  const days = drivers.breath.length
  if (days === 0) return (crowns) => crowns
  const [course, none] = [emptyCourse(days), new Float64Array(days)]
  dailyBalance({structure: 1, reserve: 1}, drivers, {open: -1, stop: -1, fernEnd: -1}, none, values, course)
  const [stays, breathed] = [course.structure[days - 1]!, 1 - course.reserve[days - 1]!]
  return ({structure, reserve}) => ({
    structure: structure * stays,
    reserve: Math.max(0, reserve - structure * breathed),
  })
}
