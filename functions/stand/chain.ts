import {atLeast} from "../rounding"

/**
 * What lies between two plantings of an endless chain of like ones. Money per hectare; all cash comes at the end of its year
 * and is valued on 1 January of the planting year.
 */
export interface Between {
  /** Cost of clearing, paid at the end of a planting's last year. */
  readonly clear: number
  /** Years of rest after it, each with its income. */
  readonly rest: number
  readonly restIncome: number
}

export const AT_ONCE: Between = {clear: 0, rest: 0, restIncome: 0}

/** The level yearly sum over `years` that is worth 1 today: i/(1-(1+i)^-n), 1/n when the rate is 0. */
export const perYearOfOne = (rate: number, years: number): number =>
  rate === 0 ? 1 / years : rate / -Math.expm1(-years * Math.log1p(rate))

/** Worth today of a sum at the end of each of `years` years. */
export const worthOfYears = (sum: number, years: number, rate: number): number =>
  years === 0 ? 0 : sum / perYearOfOne(rate, years)

/** Worth today of 1 in `years` years. */
export const discount = (rate: number, years: number): number => (1 + rate) ** -years

/** Worth today of the first 0, 1, 2, ... years of a flow. */
export function worthsOfFirst(flows: readonly number[], rate: number): number[] {
  const worths = [0]
  for (const [i, flow] of flows.entries()) worths.push(worths[i]! + flow * discount(rate, i + 1))
  return worths
}

/**
 * One whole turn of the chain for each life 1, 2, ...: its worth on 1 January of the planting year, money/ha, and its length
 * with the rest.
 */
export function turns(
  flows: readonly number[],
  rate: number,
  {clear, rest, restIncome}: Between,
): {readonly life: number; readonly worth: number; readonly years: number}[] {
  const resting = worthOfYears(restIncome, rest, rate) - clear
  return worthsOfFirst(flows, rate)
    .map((worth, life) => ({life, worth: worth + resting * discount(rate, life), years: life + rest}))
    .slice(1)
}

/**
 * Level yearly worth, money/ha/year, of the endless chain for each life 1, 2, ... (A(n), Faustmann 1849); `[0]` is that of
 * life 1.
 */
export const yearlyWorths = (flows: readonly number[], rate: number, between: Between): number[] =>
  turns(flows, rate, between).map(({worth, years}) => worth * perYearOfOne(rate, years))

/**
 * Worth of ground planted today, money/ha, for each life 1, 2, ... of an endless chain of which each turn's cash is by
 * `growth` a year larger than the last turn's: V(n) = PVc(n)/(1 - ((1+growth)/(1+rate))^c). The rate must lie above the growth.
 */
export const chainWorths = (flows: readonly number[], rate: number, between: Between, growth = 0): number[] =>
  turns(flows, rate, between).map(
    ({worth, years}) => worth / -Math.expm1(years * (Math.log1p(growth) - Math.log1p(rate))),
  )

/** The place of the largest, the first of them; what rounding alone tells apart counts as equal. */
export const placeOfMost = (values: readonly number[]): number => edgeWithin(values, 0, -1)

/** The first (-1) or last (1) place whose value is within that sum of the largest. */
export function edgeWithin(values: readonly number[], within: number, side: -1 | 1): number {
  const enough = Math.max(...values) - within
  return side < 0
    ? values.findIndex((value) => atLeast(value, enough))
    : values.findLastIndex((value) => atLeast(value, enough))
}
