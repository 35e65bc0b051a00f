import type {HealthStep} from "../../functions/fern/healthy"
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

/** The planting that is to follow, and follow itself, on every field. */
export interface Successor {
  /** The first age at which it may be cut, and its crowns at the start of that model year. */
  readonly age: number
  readonly crowns: Crowns
  /** Day of opening, counted from the start of the model year. */
  readonly open: number
  /** What the modelled crop is multiplied by, without ageing. */
  readonly factor: number
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
  /** Green share of this year's fern; in later years it is whole. */
  readonly healthy: readonly HealthStep[]
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
