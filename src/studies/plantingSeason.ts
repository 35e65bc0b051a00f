import {healthAlong} from "../../functions/fern/healthy"
import {discount} from "../../functions/stand/chain"
import type {LifeYear} from "../../functions/stand/renewal"
import type {AskedPlanting, BestWeeksInput, ByAge, WeeksMoney} from "./bestWeeksAsked"
import {
  incomes,
  seasonsFrom,
  tabulate,
  worthOf,
  type Grid,
  type Seasons,
  type SeasonTable,
} from "./seasonTable"

/** The seasons of a field that opens on a day, run one by one. */
export interface Opened {
  readonly seasons: Seasons
  /** Most weeks that the model year has room for. */
  readonly room: number
}

/** A field that opens on a day, its seasons also tabulated. */
export interface Field extends Opened {
  readonly table: SeasonTable
  readonly perKg: (day: number) => number
}

export function opened({site}: BestWeeksInput, open: number): Opened {
  const seasons = seasonsFrom(site, open)
  return {seasons, room: Math.floor(seasons.most / 7)}
}

export function fieldOf(
  input: BestWeeksInput,
  open: number,
  grid: Grid,
  done: (share: number) => void,
): Field {
  const {seasons, room} = opened(input, open)
  const perKg = (day: number) => keptOfKg(input.money, Math.floor(day / 7))
  const weeks = Math.min(room, input.technicalWeeks)
  return {seasons, table: tabulate(seasons, grid, weeks, perKg, done), perKg, room}
}

/** What a harvested kg leaves after its own cost in a week of the season, counted from 0, at so many times the prices. */
export const keptOfKg = ({prices, packout, pack, pick, haul}: WeeksMoney, week: number, times = 1) =>
  packout * (times * entry(prices, week) - pack) - pick - haul

/** The entry of a list at a place; its last goes on. */
export const entry = (list: readonly number[], at: number) => list[Math.min(at, list.length - 1)]!

/** The most weeks of a season at an age, when the planting goes on and when it is cleared after it. */
type Room = Pick<Opened, "room">
export const mostWeeks = ({caps, technicalWeeks}: BestWeeksInput, {room}: Room, age: number) =>
  Math.min(room, technicalWeeks, entry(caps, age))
export const mostWeeksOfLast = ({technicalWeeks}: BestWeeksInput, {room}: Room) =>
  Math.min(room, technicalWeeks)

/** What a season leaves at the end of its year when such a share of the modelled income comes, money/ha. */
export const marginOf = ({money}: BestWeeksInput, share: number, income: number, weeks: number) =>
  share * income - money.weekCost * weeks - money.yearCost

/** How sums of the end of a year at an age count on its 1 January. */
export function countingAt({money, lossChances}: BestWeeksInput, age: number) {
  const chance = entry(lossChances, age)
  const year = discount(money.rate, 1)
  return {
    today: (margin: number) => year * ((1 - chance) * margin + chance * money.lossFlow),
    carry: year * (1 - chance),
    lost: year * chance,
  }
}

/**
 * What a season at an age must leave at the end of its year, money/ha, so that keeping the planting for it and clearing then is
 * worth as much as clearing now: interest on the ground, and what the chance of a loss takes.
 */
export function mustLeave({money, lossChances}: BestWeeksInput, ground: number, age: number): number {
  const chance = entry(lossChances, age)
  return (money.rate * (ground - money.clear) - chance * (money.clear + money.lossFlow)) / (1 - chance)
}

function lifeYear(input: BestWeeksInput, field: Field, share: number, age: number): LifeYear {
  const {acts, income, weeks} = field.table
  const {today, carry, lost} = countingAt(input, age)
  const most = mostWeeks(input, field, age)
  const mostOfLast = mostWeeksOfLast(input, field)
  const states = acts.first.length - 1
  const pays = new Float64Array(income.length).fill(-Infinity)
  const last = new Float64Array(states).fill(-Infinity)
  for (let state = 0; state < states; state++)
    for (let week = 0; week <= weeks; week++) {
      const act = acts.first[state]! + week
      const sum = today(marginOf(input, share, income[act]!, week))
      if (week <= most) pays[act] = sum
      if (week <= mostOfLast) last[state] = Math.max(last[state]!, sum)
    }
  return {pays, carry, lost, last}
}

export const lifeYears = (input: BestWeeksInput, field: Field, shares: ByAge, from: number): LifeYear[] =>
  Array.from({length: Math.max(0, input.oldest - from)}, (_, i) =>
    lifeYear(input, field, entry(shares, from + i), from + i),
  )

/** A planting at the start of a year, as far as its seasons need it. */
export interface Standing extends Pick<AskedPlanting, "crowns" | "healthy"> {
  /** What its modelled crop is multiplied by, by age. */
  readonly shares: ByAge
}

/** The best number of weeks of a season and its worth; `isLast` clears the field after it. */
export function seasonWorth(
  input: BestWeeksInput,
  {crowns, shares, healthy}: Standing,
  field: Field,
  age: number,
  next: Float64Array,
  ground: number,
  isLast: boolean,
): {readonly weeks: number; readonly worth: number} {
  const {today, carry, lost} = countingAt(input, age)
  const most = isLast ? mostWeeksOfLast(input, field) : mostWeeks(input, field, age)
  const income = incomes(field.seasons.picked(crowns, 7 * most), field.perKg)
  const green = healthAlong(healthy, input.site.year)
  let best = {weeks: 0, worth: -Infinity}
  for (let weeks = 0; weeks <= most; weeks++) {
    const then = isLast
      ? ground - input.money.clear
      : worthOf(field.seasons.after(crowns, 7 * weeks, green), field.table.grid, next)
    const sum = today(marginOf(input, entry(shares, age), income[7 * weeks]!, weeks))
    const worth = sum + carry * then + lost * ground
    if (worth > best.worth) best = {weeks, worth}
  }
  return best
}
