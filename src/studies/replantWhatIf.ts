import {keepWorths} from "../../functions/stand/keepWorth"
import {keepYears} from "../../functions/stand/keepYears"
import {restWorth} from "../../functions/stand/restWorth"
import {waitGain} from "../../functions/stand/waitGain"
import type {NewYear, ReplantField, Replanting} from "../workbook/replant"

/** What is supposed otherwise than the workbook says; what is left out stays. Shares multiply. */
export interface Supposed {
  readonly rate?: number
  readonly price?: number
  readonly oldYield?: number
  readonly newYield?: number
  /** All cash of a new planting that does not go with its yield, of the years before its first crop. */
  readonly planting?: number
  readonly clear?: number
  /** Added to the loss of yield on old ground, a share. */
  readonly loss?: number
  readonly onOldGround?: boolean
}

/** One field weighed against a new planting. Money/ha; worths on 1 January of the first season. */
export interface Weighed {
  readonly ground: number
  /** What a season must bring to be kept. */
  readonly level: number
  readonly keepYears: number
  /** The first season that is better replanted; null when it is beyond those weighed. */
  readonly replantIn: number | null
  readonly waitGain: number
  /** Worth of keeping it 0, 1, 2, ... seasons. */
  readonly worths: readonly number[]
}

/** Whether a change of price or of yield can be followed: not where the net cash was typed. */
export const followsCrop = ({newYears}: Replanting, {seasons}: ReplantField): boolean =>
  seasons.every(({crop}) => crop !== null) && newYears.some(({sales}) => sales > 0)

/** Weighs a field as the sheet does, with some numbers supposed otherwise; null when a season or a new planting lacks its cash. */
export function weigh(replanting: Replanting, field: ReplantField, supposed: Supposed = {}): Weighed | null {
  const {money, newYears} = replanting
  const {price = 1, oldYield = 1, rate = money.rate, clear = money.clear} = supposed
  if (newYears.length === 0 || field.seasons.length === 0 || !(rate > 0)) return null
  const cash = field.seasons.map(({cash, crop}) =>
    crop === null ? cash : cash - crop.leaves + oldYield * (crop.leaves + (price - 1) * crop.sells),
  )
  const ground = groundOf(replanting, field, {...supposed, rate, clear})
  const kept = keepYears(cash, ground, rate, clear)
  return {
    ground,
    level: rate * (ground - clear),
    keepYears: kept,
    replantIn: kept < cash.length ? field.first + kept : null,
    waitGain: waitGain(cash[0]!, ground, rate, clear, 0),
    worths: keepWorths(cash, ground, rate, clear),
  }
}

function groundOf(
  {money, newYears}: Replanting,
  field: ReplantField,
  supposed: Supposed & {rate: number; clear: number},
): number {
  const {price = 1, newYield = 1, planting = 1, loss = 0, rate, clear} = supposed
  const {rest} = field
  const {onOldGround = field.onOldGround} = supposed
  const losses = onOldGround && money.losses.length > 0 ? money.losses : [0]
  const penalties = losses.map((one) => (onOldGround ? Math.min(1, Math.max(0, one + loss)) : one))
  const firstCrop = newYears.findIndex(({yielding}) => yielding > 0)
  const flows = {
    crop: newYears.map(({yielding, sales}) => newYield * (yielding + (price - 1) * sales)),
    other: newYears.map(({other}: NewYear, i) => (i < firstCrop ? planting * other : other)),
  }
  return Math.max(restWorth(rest, flows, penalties, rate, money.restIncome, clear), money.otherUse, 0)
}

/** Share of its yield that a new planting loses where asparagus follows asparagus after that rest; the last goes on. */
export const lossAfter = (losses: readonly number[], rest: number): number =>
  losses[Math.min(rest, losses.length - 1)] ?? 0

/** Rates to compare: the one given and three points either way, never below one point (chosen). */
export const ratesAbout = (rate: number): readonly number[] => [
  ...new Set([Math.max(0.01, rate - 0.03), rate, rate + 0.03].map((one) => Math.round(one * 1e4) / 1e4)),
]

/** Shares to compare: as planned and a tenth either way (chosen). */
export const SHARES = [0.9, 1, 1.1] as const

/** One input that is not known well: the answer at both ends of its range. */
export interface Moved {
  readonly input: string
  /** "5 % to 9 %" */
  readonly range: string
  readonly low: Weighed
  readonly high: Weighed
  /** How far apart the gains of waiting are, money/ha. */
  readonly apart: number
}

const percent = (share: number) => `${Math.round(share * 100)}\u202f%`
const eitherWay = (share: number) => `${percent(share)} either way`

/**
 * What moves the answer of a field: each input alone at the low and the high end of its range, the largest effect on the gain
 * of waiting first. The ranges are the workbook's own for the crop of the standing field and chosen for the others: a tenth for
 * prices, a fifth for what a new planting yields and costs, two points of rate, half of the clearing, five points of loss. Where
 * no loss on old ground is counted, it is weighed against the one of Rest and ground.
 */
export function whatMoves(replanting: Replanting, field: ReplantField): readonly Moved[] {
  const {rate, clear, spread} = replanting.money
  const follows = followsCrop(replanting, field)
  const lossOnOldGround = lossAfter(replanting.money.losses, field.rest)
  const inputs: Input[] = [
    ["Rate a year", "two points either way", {rate: Math.max(0.005, rate - 0.02)}, {rate: rate + 0.02}],
    ["Cost of planting", eitherWay(0.2), {planting: 0.8}, {planting: 1.2}],
    ["Crop of a new planting", eitherWay(0.2), {newYield: 0.8}, {newYield: 1.2}],
    ...(clear > 0
      ? [["Clearing", eitherWay(0.5), {clear: clear / 2}, {clear: 1.5 * clear}] satisfies Input]
      : []),
    ...(field.onOldGround
      ? [["Loss on old ground", "five points either way", {loss: -0.05}, {loss: 0.05}] satisfies Input]
      : lossOnOldGround > 0
        ? [
            [
              "Loss on old ground",
              `none to ${percent(lossOnOldGround)}`,
              {},
              {onOldGround: true},
            ] satisfies Input,
          ]
        : []),
    ...(follows
      ? [
          ["Prices", eitherWay(0.1), {price: 0.9}, {price: 1.1}] satisfies Input,
          [
            "Crop of this field",
            eitherWay(spread),
            {oldYield: 1 - spread},
            {oldYield: 1 + spread},
          ] satisfies Input,
        ]
      : []),
  ]
  return inputs
    .flatMap(([input, range, lower, higher]): Moved[] => {
      const [low, high] = [weigh(replanting, field, lower), weigh(replanting, field, higher)]
      return low && high ? [{input, range, low, high, apart: Math.abs(high.waitGain - low.waitGain)}] : []
    })
    .toSorted((a, b) => b.apart - a.apart)
}

/** An input that alone makes a number of seasons best, and the value nearest to now from which on it does. */
export interface Needed {
  readonly input:
    "Prices" | "Crop of this field" | "Crop of a new planting" | "Cost of planting" | "Rate a year"
  /** A rate, or a factor on what is planned; null where nothing within reach does. */
  readonly from: number | null
}

/**
 * Works back: from what price, yield, cost of planting or rate on, each by itself, keeping a field so many seasons is best. More
 * seasons than now ask for at least so many, fewer for at most. Looks from a quarter to four times what is planned, and at rates
 * up to 30 % (chosen).
 */
export function whatKeeps(replanting: Replanting, field: ReplantField, seasons: number): readonly Needed[] {
  const now = weigh(replanting, field)
  if (!now || now.keepYears === seasons) return []
  const isRight = (supposed: Supposed) => {
    const kept = weigh(replanting, field, supposed)!.keepYears
    return now.keepYears < seasons ? kept >= seasons : kept <= seasons
  }
  const {rate} = replanting.money
  const share = (of: (factor: number) => Supposed) => nearest(1, 0.25, 4, (factor) => isRight(of(factor)))
  const follows = followsCrop(replanting, field)
  return [
    ...(follows
      ? ([
          {input: "Prices", from: share((price) => ({price}))},
          {input: "Crop of this field", from: share((oldYield) => ({oldYield}))},
        ] as const)
      : []),
    {input: "Crop of a new planting", from: share((newYield) => ({newYield}))},
    {input: "Cost of planting", from: share((planting) => ({planting}))},
    {input: "Rate a year", from: nearest(rate, 0.001, 0.3, (one) => isRight({rate: one}))},
  ]
}

/** Steps in which it is looked for; what lies between two of them is halved so often. */
const LOOKS = 300
const HALVES = 40

/** The value nearest to `now`, between two ends, at which something becomes right. */
function nearest(
  now: number,
  least: number,
  most: number,
  isRight: (value: number) => boolean,
): number | null {
  for (let look = 1; look <= LOOKS; look++)
    for (const end of [least, most]) {
      const at = (steps: number) => now + ((end - now) * steps ** 2) / LOOKS ** 2
      if (!isRight(at(look))) continue
      let [wrong, right] = [at(look - 1), at(look)]
      for (let half = 0; half < HALVES; half++) {
        const middle = (wrong + right) / 2
        if (isRight(middle)) right = middle
        else wrong = middle
      }
      return right
    }
  return null
}

type Input = [input: string, range: string, low: Supposed, high: Supposed]
