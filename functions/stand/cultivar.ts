import {defineFunction, outcomeOf, type Outcomes} from "../define"
import {yearly} from "../parameters"
import {chainWorths, discount, placeOfMost, worthOfYears, worthsOfFirst, type Between} from "./chain"
import {keepWorths} from "./keepWorth"
import {betweenPlantings, flowsOfAPlanting, flowsOfTheStand, rateAboveNought, wholeYears} from "./quantities"

/** What a field can be asked for when a better cultivar is to come. */
export const cultivarOutcomes = {
  worth: {label: "Worth today of the field and all that follows", unit: "money/ha"},
  "years to keep": {label: "Years before the standing crop is cleared", unit: "years"},
  plant: {label: "What is planted next: today's or the better one", unit: "text"},
  "years to planting": {label: "Years before the next planting", unit: "years"},
  life: {label: "Planned life of the next planting (planting year = 1)", unit: "years"},
} as const satisfies Outcomes

export type CultivarOutcome = keyof typeof cultivarOutcomes

interface Course {
  readonly worth: number
  readonly "years to keep": number
  readonly plant: "today's" | "the better one"
  readonly "years to planting": number
  readonly life: number
}

type Planted = Pick<Course, "worth" | "plant" | "life">
type Cleared = Planted & {readonly wait: number}

/**
 * The best course for a field when a better cultivar can be planted from `release` years on (0: today). The crop that stands is
 * kept or cleared; cleared ground is planted with today's cultivar, which may be given up early for the better one, or waits
 * for it. From the release on the better of both is planted for ever. Of equal years to keep the fewest are taken. Money/ha,
 * valued today.
 */
export function cultivar(
  keep: readonly number[],
  flows: readonly number[],
  better: readonly number[],
  release: number,
  rate: number,
  between: Between,
): Course {
  const forEver = [
    bestChain("the better one", better, rate, between),
    bestChain("today's", flows, rate, between),
  ].reduce((best, one) => (one.worth > best.worth ? one : best))
  const firstYears = worthsOfFirst(flows, rate)
  const planted: Planted[] = []
  const cleared: Cleared[] = []
  for (let at = release; at >= 0; at--) {
    planted[at] = at === release ? forEver : plantedBefore(at)
    cleared[at] = clearedAt(at)
  }
  const grounds = Array.from({length: keep.length + 1}, (_, k) => cleared[Math.min(k, release)]!)
  const worths = grounds.map(({worth}, k) => keepWorths(keep.slice(0, k), worth, rate, between.clear)[k]!)
  const kept = placeOfMost(worths)
  const {plant, life, wait} = grounds[kept]!
  return {worth: worths[kept]!, "years to keep": kept, plant, "years to planting": kept + wait, life}

  /** Today's cultivar, planted while there is no other, for the life that is best then. */
  function plantedBefore(at: number): Planted {
    let best: Planted = {worth: -Infinity, plant: "today's", life: 0}
    for (let life = 1; life <= flows.length; life++) {
      const then = cleared[Math.min(at + life, release)]!.worth - between.clear
      const worth = firstYears[life]! + discount(rate, life) * then
      if (worth > best.worth) best = {worth, plant: "today's", life}
    }
    return best
  }

  /** Rests, and perhaps waits on for the release; what waits earns as much a year as rest does. */
  function clearedAt(at: number): Cleared {
    const waits = Array.from(
      {length: Math.max(release - at - between.rest, 0) + 1},
      (_, i) => between.rest + i,
    )
    return waits
      .map((wait) => {
        const then = planted[Math.min(at + wait, release)]!
        return {
          ...then,
          wait,
          worth: worthOfYears(between.restIncome, wait, rate) + discount(rate, wait) * then.worth,
        }
      })
      .reduce((best, one) => (one.worth > best.worth ? one : best))
  }
}

function bestChain(
  plant: Planted["plant"],
  flows: readonly number[],
  rate: number,
  between: Between,
): Planted {
  const worths = chainWorths(flows, rate, between)
  const worth = Math.max(...worths)
  return {plant, worth, life: worths.indexOf(worth) + 1}
}

export const STAND_CULTIVAR = defineFunction({
  name: "STAND.CULTIVAR",
  summary: "Keep, replant or wait when a better cultivar is to come",
  about:
    "Weighs keeping the crop, planting what there is, and waiting bare for the better one, which is sure to come in the year you name " +
    "and as good as you say: both are your judgement. With 0 years it can be had today.",
  parameters: {
    what: outcomeOf(cultivarOutcomes),
    keep: flowsOfTheStand,
    flows: flowsOfAPlanting,
    better: yearly("Net cash of a planting of the better cultivar, year by year", "money/ha"),
    release: wholeYears("Years until it can be planted", 0),
    rate: rateAboveNought,
    ...betweenPlantings,
  },
  returns: {label: "The outcome named", unit: "as named", named: cultivarOutcomes},
  sources: ["perrin1972", "identity"],
  example: {
    formula:
      '=STAND.CULTIVAR("years to keep",{700,520,340,160},{-3000,500,1500,1500,1200},{-3000,600,1800,1800,1500},1,0.06)',
    gives: 2,
  },
  calculate: ({what, keep, flows, better, release, rate, clear, rest, rest_income}) =>
    cultivar(keep, flows, better, release, rate, {clear, rest, restIncome: rest_income})[what],
})
