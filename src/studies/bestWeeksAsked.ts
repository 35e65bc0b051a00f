import type {HealthStep} from "../../functions/fern/healthy"
import {isWithin, limitsInWords, withUnit, type Quantity} from "../../functions/quantity"
import {notYet, outOfRange, type Refusal} from "../../functions/refusal"
import type {Crowns} from "../../functions/root/dailyBalance"
import type {Site} from "./seasonTable"

/** Ages count the planting year as 0. A list by age begins with age 0, and its last entry goes on. */
export type ByAge = readonly number[]

/** Prices and cost. Cash comes at the end of its year and is valued on 1 January. */
export interface WeeksMoney {
  /** Per packed kg, week by week from the opening; the last goes on. */
  readonly prices: readonly number[]
  /** Per harvested kg. */
  readonly pick: number
  readonly haul: number
  /** Per packed kg. */
  readonly pack: number
  readonly packout: number
  /** Per ha and week of cutting, whatever is cut. */
  readonly weekCost: number
  /** Per ha and year. */
  readonly yearCost: number
  readonly clear: number
  readonly rest: number
  readonly restIncome: number
  /** What cleared ground is worth in another use, money/ha. */
  readonly otherUse: number
  readonly rate: number
  /** Net cash of a year in which the planting is lost. */
  readonly lossFlow: number
}

/** Crop that is counted on by age, cut for the weeks of the table, kg/ha; null where nothing but the balance tells. */
export type Foretold = ByAge | null

/** The planting that is to follow, and follow itself, on every field. */
export interface Successor {
  /** The first age at which it may be cut, and its crowns at the start of that model year. */
  readonly age: number
  readonly crowns: Crowns
  /** Day of opening, counted from the start of the model year. */
  readonly open: number
  /** What the modelled crop is multiplied by, without ageing, where nothing is foretold. */
  readonly factor: number
  readonly foretold: Foretold
  /** Net cash of the years before that age, from the planting year on. */
  readonly flows: readonly number[]
}

/** A planting as it stands at the start of the model year. */
export interface AskedPlanting {
  readonly planting: string
  readonly age: number
  readonly crowns: Crowns
  readonly open: number
  readonly factor: number
  readonly foretold: Foretold
  /** Green share of this year's fern; in later years it is whole. */
  readonly healthy: readonly HealthStep[]
  /** Its ground once cleared; absent where it is like any other. */
  readonly ground?: Ground
}

/** Ground between two plantings. */
export interface Ground {
  /** Years of rest after clearing. */
  readonly rest: number
  /** Share of its yield that every planting to follow loses there. */
  readonly loss: number
}

export interface BestWeeksInput {
  readonly site: Site
  readonly money: WeeksMoney
  readonly successor: Successor
  readonly plantings: readonly AskedPlanting[]
  /** What ageing leaves of the crop. */
  readonly ageFactors: ByAge
  /** Most weeks at an age, by the table of the farm: for a planting that goes on. */
  readonly caps: ByAge
  /** Most weeks of a season after which the planting is cleared: as long as spears can be sold. */
  readonly technicalWeeks: number
  /** Chance of losing the planting in a year. */
  readonly lossChances: ByAge
  /** Age at whose start it is cleared at the latest. */
  readonly oldest: number
  readonly nodes: {readonly sugar: number; readonly structure: number}
}

/** Why the study cannot be run on what a planner has given, or null when it can. */
export function weeksRefused(input: BestWeeksInput): Refusal | null {
  for (const [{label, unit, limits}, given] of limited(input))
    for (const number of given)
      if (!isWithin(number, limits))
        return outOfRange(`${label} must be ${limitsInWords({unit, limits})}, not ${withUnit(number, unit)}`)
  const {money, caps, ageFactors, lossChances, successor, oldest} = input
  const blank = Object.entries({
    Prices: money.prices,
    "Weeks by age": caps,
    "Ageing by age": ageFactors,
    "Chance of loss by age": lossChances,
  }).find(([, list]) => list.length === 0)
  if (blank) return notYet(`${blank[0]}: not given yet`)
  if (successor.flows.length < successor.age)
    return notYet(
      `Net cash of a new planting is given for ${successor.flows.length} of the ${successor.age} years before it is cut`,
    )
  if (oldest <= successor.age)
    return outOfRange(
      `Oldest age (${oldest} years) must be above the age of the first season (${successor.age} years)`,
    )
  return null
}

type Limited = readonly [Quantity, readonly number[]]

const limited = ({
  money,
  successor,
  plantings,
  ageFactors,
  caps,
  technicalWeeks,
  lossChances,
  oldest,
}: BestWeeksInput): readonly Limited[] => [
  [{label: "Rate a year", unit: "share", limits: {above: 0, max: 1}}, [money.rate]],
  [
    {label: "Packed share of the harvested weight", unit: "share", limits: {above: 0, max: 1}},
    [money.packout],
  ],
  [{label: "Price of packed spears", unit: "money/kg", limits: {min: 0}}, money.prices],
  [{label: "Cost of a kg", unit: "money/kg", limits: {min: 0}}, [money.pick, money.haul, money.pack]],
  [{label: "Cost of a week of cutting", unit: "money/ha/week", limits: {min: 0}}, [money.weekCost]],
  [{label: "Clearing an old planting", unit: "money/ha", limits: {min: 0}}, [money.clear]],
  [
    {label: "Years of rest after clearing", unit: "years", limits: {min: 0, max: 30, whole: true}},
    [money.rest, ...plantings.flatMap(({ground}) => ground?.rest ?? [])],
  ],
  [{label: "Most weeks", unit: "weeks", limits: {min: 0, max: 52, whole: true}}, [...caps, technicalWeeks]],
  [
    {label: "Loss of yield on old ground", unit: "share", limits: {min: 0, max: 1}},
    plantings.flatMap(({ground}) => ground?.loss ?? []),
  ],
  [{label: "What ageing leaves of the crop", unit: "share", limits: {min: 0, max: 2}}, ageFactors],
  [{label: "Chance of losing the planting", unit: "share/year", limits: {min: 0, max: 1}}, lossChances],
  [
    {label: "Age", unit: "years", limits: {min: 0, max: 100, whole: true}},
    [successor.age, oldest, ...plantings.map(({age}) => age)],
  ],
  [
    {label: "Structural root", unit: "kg/ha", limits: {above: 0}},
    [successor, ...plantings].map(({crowns}) => crowns.structure),
  ],
  [
    {label: "Stored sugar", unit: "kg/ha", limits: {min: 0}},
    [successor, ...plantings].map(({crowns}) => crowns.reserve),
  ],
  [
    {label: "Crop foretold by age", unit: "kg/ha", limits: {min: 0}},
    [successor, ...plantings].flatMap(({foretold}) => foretold ?? []),
  ],
  [
    {label: "Factor of the crop", unit: "number", limits: {min: 0}},
    [successor, ...plantings].map(({factor}) => factor),
  ],
]
