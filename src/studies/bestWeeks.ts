import {healthAlong} from "../../functions/fern/healthy"
import type {Crowns} from "../../functions/root/dailyBalance"
import {discount, worthOfYears} from "../../functions/stand/chain"
import {renew, worthsBefore, type Renewal} from "../../functions/stand/renewal"
import {follow, type BestCourse} from "./bestCourse"
import {
  weeksRefused,
  type AskedPlanting,
  type BestWeeksInput,
  type ByAge,
  type Ground,
  type WeeksMoney,
} from "./bestWeeksAsked"
import {cropShares} from "./cropShares"
import {
  countingAt,
  entry,
  fieldOf,
  lifeYears,
  marginOf,
  mostWeeks,
  mostWeeksOfLast,
  seasonWorth,
  type Field,
  type Standing,
} from "./plantingSeason"
import {endWithNodeOn, fullSugar, incomes, sugarOf, worthOf, type Grid} from "./seasonTable"
import {waysBeside, type Way} from "./waysBeside"
import {weeksKept} from "./weeksKept"

/** Chosen: within 0.2 % of a solver written on its own in five small cases, and no season off by a week. */
export const NODES = {sugar: 33, structure: 21} as const

/** One length of this season, with the best course after it. Money/ha; worth is on 1 January of this year. */
export interface WeeksChoice {
  readonly weeks: number
  readonly crop: number
  readonly margin: number
  /** What it leaves is worth next 1 January; the fall from week to week is what a week costs later. */
  readonly later: number
  readonly worth: number
}

export interface PlantingWeeks extends BestCourse {
  readonly planting: string
  readonly age: number
  /** Worth of its ground once cleared. */
  readonly ground: number
  /** Worth of clearing it now. */
  readonly clearNow: number
  /** Worth of keeping it for 0, 1, 2, ... seasons, each as long as is best for that, and clearing it then. */
  readonly keep: readonly number[]
  /** Its seasons as found, and others to set beside them. */
  readonly ways: readonly Way[]
  /** This season by its weeks, up to the most of its age, when the planting goes on as is best. */
  readonly choices: readonly WeeksChoice[]
  /** Days of cutting that are best this season; 0 when it is cleared now. */
  readonly days: number
}

export interface BestWeeks {
  /** Worth of cleared ground that is not old asparagus ground: after clearing, before rest. */
  readonly ground: number
  /** Planting again is what makes the ground worth that, and not the other use. */
  readonly replants: boolean
  readonly successor: BestCourse
  readonly plantings: readonly PlantingWeeks[]
}

/**
 * How long to cut at every age and when to replace, on the crown's daily balance. What a year's end is worth depends on the
 * sugar and on the structural root that it leaves; both are tabulated for this site's climate, and the years are solved from the
 * oldest back, the ground being worth the chain of plantings that follows. The seasons reported are run from the crowns as they
 * are, with straight lines between nodes only for the worth of what they leave.
 *
 * What it is foretold to bring by age (`cropShares.ts`) stands for loss of plants and ageing, and the weather is the same every
 * year. Input that
 * `weeksRefused` refuses is a mistake of the caller. Runs on the spot and may take a second: ask it in a worker. `done` is told
 * the share that is done.
 */
export const bestWeeks = (input: BestWeeksInput, done: (share: number) => void = () => {}): BestWeeks =>
  gatherWeeks([weeksPart(input, 0, input.plantings.length, done)])

/** What was found for some of the plantings. */
export interface WeeksPart extends BestWeeks {
  readonly from: number
}

/** The plantings from `from` up to `to`. All parts solve the chain on one grid, so any way of sharing them out gives the same. */
export function weeksPart(
  input: BestWeeksInput,
  from: number,
  to: number,
  done: (share: number) => void,
): WeeksPart {
  const refusal = weeksRefused(input)
  if (refusal) throw new RangeError(refusal.refused)
  const asked = input.plantings.slice(from, to)
  const openings = [...new Set([input.successor.open, ...asked.map(({open}) => open)])]
  const grid = gridOf(input)
  const steps = openings.length
  const fields = new Map(
    openings.map((open, i) => [
      open,
      fieldOf(input, open, grid, (share) => done((0.9 * (i + share)) / steps)),
    ]),
  )
  const {successor, money} = input
  const usual: Ground = {rest: money.rest, loss: 0}
  const planted = fields.get(successor.open)!
  const shares = cropShares(input, successor, planted)
  const {ground, worths} = renew(chainOf(input, planted, shares, usual))
  const grounds = new Map([[JSON.stringify(usual), ground]])
  const groundOf = (own: Ground) => {
    const key = JSON.stringify(own)
    if (!grounds.has(key)) grounds.set(key, renew(chainOf(input, planted, shares, own)).ground)
    return grounds.get(key)!
  }
  const young = {crowns: successor.crowns, shares, healthy: []}
  const course = follow(input, young, planted, worths, ground, successor.age)
  const worth = plantedWorth(input, course.worth, ground)
  const plantings = asked.map((planting, i) => {
    const found = plantingWeeks(
      input,
      planting,
      fields.get(planting.open)!,
      groundOf(planting.ground ?? usual),
    )
    done(0.9 + (0.1 * (i + 1)) / asked.length)
    return found
  })
  done(1)
  return {
    from,
    ground,
    replants: replantWorth(money, money.rest, worth) >= Math.max(money.otherUse, 0),
    successor: {...course, worth},
    plantings,
  }
}

/** Puts the parts together, in the order of the plantings. */
export function gatherWeeks(parts: readonly WeeksPart[]): BestWeeks {
  const [{ground, replants, successor}] = parts as [WeeksPart]
  const plantings = parts.toSorted((a, b) => a.from - b.from).flatMap((part) => part.plantings)
  return {ground, replants, successor, plantings}
}

/**
 * Wide enough for what the balance can come to: below the smallest crowns by half, up to its own ceilings. A node lies where more
 * sugar brings no more spears, since young crowns come close to it and a straight line across would miss the kink.
 */
function gridOf({site, successor, plantings, nodes}: BestWeeksInput): Grid {
  const {values} = site
  const mostSugar = (crowns: readonly Crowns[]) => Math.max(values.Sugar_most, ...crowns.map(sugarOf))
  const all = [successor, ...plantings].map(({crowns}) => crowns)
  const roots = all.map(({structure}) => structure)
  return {
    sugar: {
      low: 0,
      high: endWithNodeOn(fullSugar(site, successor.open), mostSugar(all), nodes.sugar),
      nodes: nodes.sugar,
    },
    structure: {
      low: 0.5 * Math.min(...roots),
      high: Math.max(values.Root_most, ...roots),
      nodes: nodes.structure,
    },
  }
}

function chainOf(input: BestWeeksInput, field: Field, shares: ByAge, {rest, loss}: Ground): Renewal {
  const {money, successor} = input
  return {
    acts: field.table.acts,
    years: lifeYears(
      input,
      field,
      shares.map((share) => (1 - loss) * share),
      successor.age,
    ),
    clear: money.clear,
    groundOf(worth, ground) {
      const grown = worthOf(successor.crowns, field.table.grid, worth)
      return Math.max(replantWorth(money, rest, plantedWorth(input, grown, ground)), money.otherUse, 0)
    },
  }
}

/** Worth on 1 January of the planting year, when the planting is worth `grown` once it may be cut. */
function plantedWorth(input: BestWeeksInput, grown: number, ground: number): number {
  let worth = grown
  for (let age = input.successor.age - 1; age >= 0; age--) {
    const {today, carry, lost} = countingAt(input, age)
    worth = today(input.successor.flows[age] ?? 0) + carry * worth + lost * ground
  }
  return worth
}

const replantWorth = ({restIncome, rate}: WeeksMoney, rest: number, planted: number) =>
  worthOfYears(restIncome, rest, rate) + discount(rate, rest) * planted

function plantingWeeks(
  input: BestWeeksInput,
  planting: AskedPlanting,
  field: Field,
  ground: number,
): PlantingWeeks {
  const {age, crowns, healthy} = planting
  const standing = {crowns, healthy, shares: cropShares(input, planting, field)}
  const years = lifeYears(input, field, standing.shares, age)
  const renewal: Renewal = {acts: field.table.acts, years, clear: input.money.clear, groundOf: () => ground}
  const states = field.table.acts.first.length - 1
  const empty = () => Array.from({length: years.length + 1}, () => new Float64Array(states))
  const worths = empty()
  worthsBefore(renewal, years.length, ground, worths)
  const course = follow(input, standing, field, worths, ground, age)
  const cleared = ground - input.money.clear
  const scratch = empty()
  const keep = [cleared]
  const kept: number[][] = [[]]
  for (let end = 1; end <= years.length; end++) {
    worthsBefore(renewal, end, ground, scratch, true)
    keep.push(seasonWorth(input, standing, field, age, scratch[1]!, ground, end === 1).worth)
    if (Math.abs(end - course.years.length) === 1)
      kept[end] = weeksKept(input, standing, age, field, scratch, ground, end)
  }
  const one = firstSeason(input, standing, age, field, worths[1] ?? null, ground)
  return {
    ...course,
    planting: planting.planting,
    age,
    ground,
    clearNow: cleared,
    keep,
    ways: waysBeside(input, age, field, course, kept),
    choices: one.choices,
    days: course.years.length > 0 ? one.days(course.replaceAge === age + 1) : 0,
  }
}

/** This season by its weeks and, for the best close, by its days. */
function firstSeason(
  input: BestWeeksInput,
  {crowns, shares, healthy}: Standing,
  age: number,
  field: Field,
  next: Float64Array | null,
  ground: number,
): {readonly choices: WeeksChoice[]; days(isLast: boolean): number} {
  if (!next) return {choices: [], days: () => 0}
  const {today, carry, lost} = countingAt(input, age)
  const mostDays = 7 * Math.max(mostWeeks(input, field, age), mostWeeksOfLast(input, field))
  const picked = field.seasons.picked(crowns, mostDays)
  const income = incomes(picked, field.perKg)
  const green = healthAlong(healthy, input.site.year)
  const share = entry(shares, age)
  const margin = (days: number) => marginOf(input, share, income[days]!, days / 7)
  const later = (days: number) => worthOf(field.seasons.after(crowns, days, green), field.table.grid, next)
  const worth = (days: number, then: number) => today(margin(days)) + carry * then + lost * ground
  return {
    choices: Array.from({length: mostWeeks(input, field, age) + 1}, (_, weeks) => {
      const then = later(7 * weeks)
      const crop = share * picked[7 * weeks]!
      return {weeks, crop, margin: margin(7 * weeks), later: then, worth: worth(7 * weeks, then)}
    }),
    days(isLast) {
      const most = 7 * (isLast ? mostWeeksOfLast(input, field) : mostWeeks(input, field, age))
      let best = {days: 0, worth: -Infinity}
      for (let days = 0; days <= most; days++) {
        const sum = worth(days, isLast ? ground - input.money.clear : later(days))
        if (sum > best.worth) best = {days, worth: sum}
      }
      return best.days
    },
  }
}
