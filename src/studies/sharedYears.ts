import {driversOf, type Drivers} from "../../functions/root/dailyBalance"
import {normalShare} from "../../functions/normalShare"
import type {DrawnYears} from "./balanceRuns"
import type {RiskInput} from "./drawRisk"
import {keyOf, normalOf} from "./streams"
import type {YearScores} from "./weatherTable"

/** What all fields of all plans share in a draw, year by year. */
export interface SharedYears extends DrawnYears {
  /** Effect on the logarithm of the yield. */
  readonly yields: readonly number[]
  /** Normal score of the price. */
  readonly prices: readonly number[]
}

/** An effect on the logarithm of a yield at a normal score; its exponential has the mean 1. */
export const logEffect = (spread: number, z: number): number => spread * z - spread ** 2 / 2

export const weatherChanges = ({airSpread, sunSpread}: RiskInput) => airSpread > 0 || sunSpread > 0

/** The green share of the fern, day by day, in a year that loses some of it. */
export const hurtFern = ({day: from, left}: NonNullable<RiskInput["fernLoss"]>, days: number) =>
  Float64Array.from({length: days}, (_, day) => (day < from ? 1 : left))

/** Makes the years of any draw of a study. */
export function sharedYears(input: RiskInput, years: number): (draw: number) => SharedYears {
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
  {climate, modelYear, values, airSpread, sunSpread}: RiskInput,
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
