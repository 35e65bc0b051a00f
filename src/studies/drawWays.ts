import {healthAlong} from "../../functions/fern/healthy"
import {dailyBalance, driversOf, emptyCourse, type Drivers} from "../../functions/root/dailyBalance"
import type {AskedPlanting, BestWeeksInput, ByAge} from "./bestWeeksAsked"
import {cropShares} from "./cropShares"
import {drawn} from "./distribution"
import {countingAt, entry, keptOfKg, marginOf, opened} from "./plantingSeason"
import {sharedYears, type YearsByChance} from "./sharedYears"
import type {Way} from "./waysBeside"
import {yieldFactors} from "./yieldFactors"

/** What a comparison of ways to go on with plantings is drawn from. */
export interface WaysInput extends YearsByChance {
  /** The study that found the first way of each planting. */
  readonly asked: BestWeeksInput
  /** Of each planting asked of, the way found and others; a draw has the same years for all of them. */
  readonly ways: readonly (readonly Way[])[]
  /** Worth of each planting's ground once cleared, as found. */
  readonly grounds: readonly number[]
  /** Of a planting's yields by itself, year by year and in all years alike: deviations of logarithms. */
  readonly fieldSpread: number
  readonly doubt: number
  /** Days of the first model year that are over: what they have brought is the same in every draw. */
  readonly gone: number
  /** Deviation of a year's prices, as a share. All weeks of a year move alike. */
  readonly priceVariation: number
}

/** The draws from `from` up to `to`: worths today, money/ha, way by way of planting by planting, draw by draw. */
export interface WaysPart {
  readonly from: number
  readonly count: number
  readonly worths: Float64Array
}

/**
 * What each way is worth in some of the draws. A draw is years of weather and prices, the same for all plantings and ways, as in
 * the study of a farm's risk (`drawRisk.ts`). Each season is cut for the weeks of the way, whatever the year brings, and the
 * daily balance, run day by day, since a week's crop meets the price of its week, carries the crowns into the next. A loss of the
 * planting counts by its chance, and the ground once cleared as it was found. Days that are over had the usual weather, crop and
 * prices. In years that are all as usual the first way is worth what the study of the best weeks says.
 */
export function drawWays(
  input: WaysInput,
  from: number,
  to: number,
  done: (share: number) => void = () => {},
): WaysPart {
  const {asked, ways, gone} = input
  const count = to - from
  const worths = new Float64Array(ways.flat().length * count)
  const years = Math.max(0, ...ways.flat().map(({weeks}) => weeks.length))
  const sharedIn = sharedYears(input, years)
  const price = drawn({shape: "lognormal", mean: 1, variation: input.priceVariation})
  const factors = asked.plantings.map(({planting}) => yieldFactors(input, planting, input.doubt, years))
  const shares = asked.plantings.map((one) => cropShares(asked, one, opened(asked, one.open)))
  const worthOf = worthIn(input)
  const usual = driversOf(input.climate, input.modelYear, input.values)
  for (let row = 0; row < count; row++) {
    const draw = from + row
    const {yields, prices, driversIn: drawnIn} = sharedIn(draw)
    const first = gone > 0 && years > 0 ? usualUntil(gone, usual, drawnIn(0)) : null
    const driversIn = (year: number) => (year === 0 && first) || drawnIn(year)
    const times = prices.map(price.at)
    let place = row
    for (const [number, planting] of asked.plantings.entries()) {
      const effects = factors[number]!(draw, yields)
      for (const {weeks} of ways[number]!) {
        worths[place] = worthOf(planting, input.grounds[number]!, weeks, {
          effects,
          times,
          driversIn,
          shares: shares[number]!,
        })
        place += count
      }
    }
    if (row % 10 === 9) done((row + 1) / count)
  }
  return {from, count, worths}
}

/** A planting's years in one draw: what its crop and the prices are multiplied by, and the weather. */
interface PlantingYears extends Pick<ReturnType<ReturnType<typeof sharedYears>>, "driversIn"> {
  readonly effects: readonly number[]
  readonly times: readonly number[]
  readonly shares: ByAge
}

/** The usual weather up to a day, and another from that day on. */
function usualUntil(day: number, usual: Drivers, then: Drivers): Drivers {
  const joined = (of: keyof Drivers) => {
    const all = then[of].slice()
    all.set(usual[of].subarray(0, day))
    return all
  }
  return {spears: joined("spears"), fern: joined("fern"), breath: joined("breath"), light: joined("light")}
}

function worthIn({asked, gone, modelYear, values}: WaysInput) {
  const course = emptyCourse(modelYear.days)
  const whole = new Float64Array(modelYear.days).fill(1)
  const last = modelYear.days - 1
  const fernEnd = values.Fern_end - 1
  return (
    {age, crowns: now, open, healthy}: AskedPlanting,
    ground: number,
    weeks: readonly number[],
    {effects, times, driversIn, shares}: PlantingYears,
  ): number => {
    let crowns = now
    let [worth, weight] = [0, 1]
    for (const [year, season] of weeks.entries()) {
      const known = year === 0 ? gone : 0
      const cutting = {open, stop: open + 7 * season, fernEnd}
      const fern = year === 0 ? healthAlong(healthy, modelYear) : whole
      const {picked, structure, reserve} = dailyBalance(
        crowns,
        driversIn(year),
        cutting,
        fern,
        values,
        course,
      )
      const until = (day: number) => (day > 0 ? picked[day - 1]! : 0)
      let income = 0
      for (let week = 0; week < season; week++) {
        const [from, to] = [open + 7 * week, open + 7 * week + 7]
        const over = Math.min(Math.max(known, from), to)
        income +=
          (until(over) - until(from)) * keptOfKg(asked.money, week) +
          effects[year]! * (until(to) - until(over)) * keptOfKg(asked.money, week, times[year]!)
      }
      const {today, carry, lost} = countingAt(asked, age + year)
      const margin = marginOf(asked, entry(shares, age + year), income, season)
      worth += weight * (today(margin) + lost * ground)
      weight *= carry
      crowns = {structure: structure[last]!, reserve: reserve[last]!}
    }
    return worth + weight * (ground - asked.money.clear)
  }
}
