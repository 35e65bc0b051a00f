import type {ModelYear} from "../../functions/calendar"
import type {Climate} from "../../functions/climate/climate"
import {normalShare} from "../../functions/normalShare"
import type {BalanceValues} from "../../functions/root/balanceValues"
import {driversOf, type Drivers} from "../../functions/root/dailyBalance"
import type {DrawnYears} from "./balanceRuns"
import {keyOf, normalOf} from "./streams"
import type {YearScores} from "./weatherTable"

/** What years by chance are drawn from. */
export interface YearsByChance {
  /** Calendar year of the first year; yearly draws belong to their calendar year. */
  readonly firstYear: number
  /** One model year's weather, the same length for all years: 29 February is left out of account. */
  readonly climate: Climate
  readonly modelYear: ModelYear
  readonly values: BalanceValues
  /** Year-to-year deviation of the season's air, °C (soil takes 0.75 of it), and of the sun as a share. */
  readonly airSpread: number
  readonly sunSpread: number
  /**
   * An early loss of fern, as by a storm or rust, on all fields alike: its chance a year, from which day of the model year on
   * and what share stays green. Null when no such year is reckoned with.
   */
  readonly fernLoss: {readonly chance: number; readonly day: number; readonly left: number} | null
  /** Of yields in a year on all fields alike, beside what the weather does to the balance: a deviation of logarithms. */
  readonly yearSpread: number
  /** Correlation of the price with the shared yield effect of the year: below 0 where a full crop presses the price. */
  readonly priceLink: number
  /**
   * Correlation, 0 to 1, of what else moves the price with the same in the year before. Above 0 the draws of prices belong to
   * the first year of the study too.
   */
  readonly priceMemory: number
  readonly seed: number
}

/** What all fields of all plans share in a draw, year by year. */
export interface SharedYears extends DrawnYears {
  /** Effect on the logarithm of the yield. */
  readonly yields: readonly number[]
  /** Normal score of the price. */
  readonly prices: readonly number[]
}

/** An effect on the logarithm of a yield at a normal score; its exponential has the mean 1. */
export const logEffect = (spread: number, z: number): number => spread * z - spread ** 2 / 2

export const weatherChanges = ({airSpread, sunSpread}: YearsByChance) => airSpread > 0 || sunSpread > 0

/** The green share of the fern, day by day, in a year that loses some of it. */
export const hurtFern = ({day: from, left}: NonNullable<YearsByChance["fernLoss"]>, days: number) =>
  Float64Array.from({length: days}, (_, day) => (day < from ? 1 : left))

/** Makes the years of any draw of a study. */
export function sharedYears(input: YearsByChance, years: number): (draw: number) => SharedYears {
  const {seed, firstYear, modelYear, yearSpread, priceLink, priceMemory, fernLoss} = input
  const scores = (variable: string) => {
    const keys = Array.from({length: years}, (_, year) => keyOf(variable, firstYear + year))
    return (draw: number, year: number) => normalOf(seed, draw, keys[year]!)
  }
  const [ofYield, ofPrice, ofAir, ofSun, ofFern] = ["yield", "price", "air", "sun", "fern"].map(
    scores,
  ) as Scores
  const changes = weatherChanges(input)
  const usual = driversOf(input.climate, modelYear, input.values)
  const calendar = Array.from({length: years}, (_, year) => year)
  const hurt = fernLoss && hurtFern(fernLoss, modelYear.days)
  return (draw) => {
    const common = calendar.map((year) => ofYield(draw, year))
    const own = remembered(
      calendar.map((year) => ofPrice(draw, year)),
      priceMemory,
    )
    const fern = calendar.map((year) =>
      fernLoss && normalShare(ofFern(draw, year)) < fernLoss.chance ? hurt : null,
    )
    const weather: (Drivers | undefined)[] = []
    const skies: (YearScores | undefined)[] = []
    const scoresIn = (year: number) => (skies[year] ??= {warmth: ofAir(draw, year), sun: ofSun(draw, year)})
    return {
      yields: common.map((z) => logEffect(yearSpread, z)),
      prices: common.map((z, year) => priceLink * z + Math.sqrt(1 - priceLink ** 2) * own[year]!),
      fernIn: (year) => fern[year]!,
      scoresIn,
      driversIn: (year) => (changes ? (weather[year] ??= driversAt(input, scoresIn(year))) : usual),
    }
  }
}

type Score = (draw: number, year: number) => number
type Scores = [Score, Score, Score, Score, Score]

/** Scores of which each keeps a share of the one before; each by itself is of the normal distribution still. */
function remembered(scores: readonly number[], memory: number): readonly number[] {
  const fresh = Math.sqrt(1 - memory ** 2)
  const kept: number[] = []
  for (const [year, z] of scores.entries()) kept.push(year === 0 ? z : memory * kept[year - 1]! + fresh * z)
  return kept
}

/** How much of a change of the air reaches the soil at crown depth, as in the study of how sure. */
const SOIL_SHARE = 0.75

/** What drives the balance in a year as warm and as sunny as these scores say. */
export function driversAt(
  {climate, modelYear, values, airSpread, sunSpread}: YearsByChance,
  {warmth, sun}: YearScores,
): Drivers {
  const degrees = airSpread * warmth
  const light = Math.max(0, 1 + sunSpread * sun)
  return driversOf(
    {
      air: climate.air.map((air) => air + degrees),
      soil: climate.soil.map((soil) => soil + SOIL_SHARE * degrees),
      sun: climate.sun.map((sun) => sun * light),
    },
    modelYear,
    values,
  )
}
