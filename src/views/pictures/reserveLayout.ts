import {dayOf, yearOf} from "../../../functions/calendar"
import type {Crowns, Course} from "../../../functions/root/dailyBalance"
import {modelledYear, planYear} from "../../../functions/root/modelledYear"
import {isRefusal} from "../../../functions/refusal"
import {reserve as reserveOf} from "../../../functions/root/reserve"
import {refillDay} from "../../../functions/root/yearOutcome"
import {dayText, numberText, shownIn} from "../../editor/display"
import type {Region} from "../../workbook/document"
import {PLAIN_REGION} from "../../workbook/region"
import {formerSamples, formerWords, type FormerSample} from "./formerSamples"
import {BOLD, type Box, boxAround, boxOfText, clearest, overlaps, textWidth} from "./placing"
import type {CrownYears, PlantingCrowns} from "../../workbook/crowns"
import type {Sampling} from "../../workbook/sampleSpread"

/** The reserve of one planting through its model year, by the balance. Days counted from the start of the year. */
export interface ReserveYear {
  readonly planting: PlantingCrowns
  readonly first: number
  readonly course: Course
  readonly open: number
  readonly stop: number
  /** The day of the lowest store, and of the lowest sugar's refill; -1 when it does not refill. */
  readonly lowest: number
  readonly refill: number
  readonly asOf: number | null
  /** Samplings of seasons that are over, on the same dates of this year. */
  readonly former: readonly FormerSample[]
  /** How its numbers are shown. */
  readonly region: Region
}

/** Runs the year of the planting that is shown, or null when there is none to run. Of the samplings it takes the former ones. */
export function reserveYear(
  {plantings, climate, values, shown, asOf}: CrownYears,
  region: Region = PLAIN_REGION,
  samplings: readonly Sampling[] = [],
): ReserveYear | null {
  const planting = plantings.find((one) => one.planting === shown?.planting)
  if (!planting) return null
  const plan = planYear(planting.open, Math.max(planting.close, planting.open - 1), values)
  if (isRefusal(plan)) return null
  const crowns: Crowns = planting
  const course = modelledYear(crowns, climate, plan, planting.healthy, values)
  const {first, days} = plan.year
  const lowest = course.reserve.indexOf(Math.min(...course.reserve))
  return {
    planting,
    first,
    course,
    open: plan.cutting.open,
    stop: plan.cutting.stop,
    lowest,
    refill: refillDay(course, crowns, plan.cutting.open),
    asOf: asOf !== null && asOf >= first && asOf < first + days ? asOf - first : null,
    former: formerSamples(samplings, planting.planting, plan.year),
    region,
  }
}

/** "Long Acre: 3 393 kg/ha left on 25 May; lowest 1 607 on 1 Jul, 7 above your floor; full again on 10 Aug." */
export function reserveFinding(year: ReserveYear): string {
  const {planting, first, course, lowest, refill, asOf, region} = year
  const {unit, text: kg} = storeWords(region)
  const least = course.reserve[lowest]!
  const today = asOf === null ? "" : `${kg(course.reserve[asOf]!)} ${unit} left on ${dayText(first + asOf)}; `
  const beside = floorWords(year)
  const again = refill < 0 ? "not full again this year" : `full again on ${dayText(first + refill)}`
  const where = `${kg(least)} ${unit} on ${dayText(first + lowest)}${beside && `, ${beside}`}`
  return `${planting.planting}: ${today}lowest ${where}; ${again}.`
}

/** "7 above your floor", of the lowest store as it is shown; "" without a floor. */
function floorWords({planting: {floor}, course, lowest, region}: ReserveYear): string {
  if (floor === null) return ""
  const {shown} = storeWords(region)
  const gap = Math.round(shown(course.reserve[lowest]!)) - Math.round(shown(floor))
  return gap === 0
    ? "at your floor"
    : `${numberText(Math.abs(gap), 0)} ${gap > 0 ? "above" : "below"} your floor`
}

/** How a store, kg/ha, is shown: as a number in the unit of the region, and in whole numbers as a text. */
export function storeWords(region: Region) {
  const {unit, number, text} = shownIn("kg/ha", region)
  return {unit, shown: number, text: (mass: number) => text(mass, 0)}
}

export interface Point {
  readonly x: number
  readonly y: number
}

/** A place of the line or beside it, and what it says. */
interface Marked extends Point {
  readonly words: string
  /** Of the model year, counted from 0. */
  readonly week: number
}

export interface Dot extends Marked {
  /** px; its area grows with the plants that were sampled. */
  readonly radius: number
  /** Ends of the interval, px; equal to y where there is none. */
  readonly top: number
  readonly bottom: number
  /** Where the words begin, px. */
  readonly wordsX: number
  readonly wordsY: number
}

/** Everything that the drawing needs, px. */
export interface ReserveLayout {
  readonly width: number
  readonly height: number
  readonly left: number
  readonly right: number
  readonly base: number
  /** The unit of the axis. */
  readonly unit: string
  readonly rules: readonly {readonly y: number; readonly text: string}[]
  readonly months: readonly {readonly x: number; readonly words: string}[]
  /** The line up to the as-of day, and from it on. */
  readonly past: string
  readonly toCome: string
  readonly floor: {readonly y: number; readonly words: string} | null
  readonly asOf: {readonly x: number; readonly words: string} | null
  /** The days of cutting; from `now` on they are to come. */
  readonly cutting: {
    readonly from: number
    readonly now: number
    readonly to: number
    readonly words: string
  } | null
  /** Its words on the drawing, and what it says alone, with its unit. */
  readonly lowest: Marked & {readonly wordsX: number; readonly wordsY: number; readonly said: string}
  /** Its words stand at `wordsY`, and under them what it is as full as. */
  readonly refill: (Marked & {readonly wordsY: number}) | null
  readonly measured: readonly Dot[]
  /** The line at the end of each week. */
  readonly weeks: readonly Marked[]
  /** Samplings of former years at this year's structure, with the year beside them where it lies on no other words. */
  readonly former: readonly (Marked & {
    readonly label: (Point & {readonly text: string}) | null
  })[]
  /** The ranges of a study, the wider one first; none before it is run. */
  readonly bands: readonly (Point & {readonly area: string; readonly words: string})[]
  /** Single draws of a study, where they are asked for. */
  readonly singles: readonly string[]
}

/** Five quantiles (10, 25, 50, 75 and 90 of a hundred) of the store at the end of each week. */
export type Bands = readonly (readonly number[])[]

const HEIGHT = 280
const LEFT = 52
const RIGHT = 16
const TOP = 26
const BELOW = 52
/** Between two lines of words, px. */
export const LINE = 17
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"]

/** Lays out the picture of the reserve through the year: kg/ha, or lb/ac, from 0, the model year along. */
export function reserveLayout(
  year: ReserveYear,
  width: number,
  weekly: Bands | null = null,
  singles: readonly (readonly number[])[] = [],
): ReserveLayout {
  const {planting, first, course, open, stop, lowest, refill, asOf, region} = year
  const days = course.reserve.length
  const base = HEIGHT - BELOW
  const measured = planting.measured.filter(({day}) => day >= first && day < first + days)
  // Sugar of a sample stands at the structure that the balance has that day.
  const storeOf = (sugar: number, day: number) => reserveOf(sugar, course.structure[day - first]!)
  const tops = measured.map(({day, sugar, upper}) => storeOf(upper ?? sugar, day))
  const highest = Math.max(
    ...course.reserve,
    planting.floor ?? 0,
    ...tops,
    ...year.former.map(({sugar, day}) => storeOf(sugar, first + day)),
    ...(weekly ?? []).map((week) => week[4]!),
    ...singles.flat(),
  )
  const {unit, shown, text: kg} = storeWords(region)
  const step = stepOf(shown(highest)) // round in the unit that is shown
  const most = step * Math.ceil(shown(highest) / step)
  const x = (day: number) => LEFT + ((day + 1) / days) * (width - LEFT - RIGHT)
  const heightOf = (mark: number) => base - (mark / most) * (base - TOP)
  const y = (kg: number) => heightOf(shown(kg))
  const line = (from: number, to: number) => {
    const points: string[] = []
    for (let day = from; day <= to; day++)
      points.push(`${x(day).toFixed(1)} ${y(course.reserve[day]!).toFixed(1)}`)
    return points.length > 1 ? `M${points.join("L")}` : ""
  }
  const lastOf = (week: number) => Math.min(days - 1, 7 * week + 6)
  const endOf = (week: number) => x(lastOf(week))
  // Its words stand between two of its edges at the end of the year.
  const band = (low: number, high: number, words: string, between: readonly [number, number]) => {
    const points = (weekly ?? []).map((week, i) => ({
      x: endOf(i),
      top: y(week[high]!),
      bottom: y(week[low]!),
    }))
    const edge = [
      ...points.map(({x, top}) => `${x.toFixed(1)} ${top.toFixed(1)}`),
      ...points.toReversed().map(({x, bottom}) => `${x.toFixed(1)} ${bottom.toFixed(1)}`),
    ]
    return {
      area: `M${edge.join("L")}Z`,
      words,
      x: width - RIGHT - 4,
      y: (y(weekly!.at(-1)![between[0]]!) + y(weekly!.at(-1)![between[1]]!)) / 2 + 5,
    }
  }
  const now = asOf ?? 0
  const floor =
    planting.floor === null ? null : {y: y(planting.floor), words: `your floor ${kg(planting.floor)}`}
  const floorBox = floor && boxOfText(floor.words, width - RIGHT - textWidth(floor.words), floor.y - 6)
  const lowestMark = () => {
    const at = {x: x(lowest), y: y(course.reserve[lowest]!), week: weekOf(lowest)}
    const beside = floorWords(year)
    const ends = beside && `, ${beside}`
    const store = `lowest ${kg(course.reserve[lowest]!)}`
    const wide = (text: string) => textWidth(text) * BOLD
    const texts = [`${store} on ${dayText(first + lowest)}${ends}`, `${store}${ends}`]
    const words = texts.find((text) => wide(text) <= width - RIGHT - LEFT) ?? store
    const wordsX = Math.max(LEFT, Math.min(at.x + 8, width - RIGHT - wide(words)))
    const spots = [at.y + 18, (floor?.y ?? at.y) + 17].map((wordsY) => ({
      wordsY,
      box: boxOfText(words, wordsX, wordsY),
    }))
    const level = floor && {left: LEFT, right: width, top: floor.y - 1, bottom: floor.y + 1}
    const {wordsY, box} = clearest(
      spots,
      [floorBox, level].filter((one) => one !== null),
    )!
    const said = `lowest ${kg(course.reserve[lowest]!)} ${unit} on ${dayText(first + lowest)}${ends}`
    return {...at, words, said, wordsX, wordsY, box}
  }
  const {box: lowestBox, ...lowestAt} = lowestMark()
  const refilled = () => {
    const at = {x: x(refill), y: y(course.reserve[refill]!), week: weekOf(refill)}
    const words = `full again ${dayText(first + refill)}`
    const spots = [14, 4, -6].map((down) => {
      const upper = boxOfText(words, at.x + 10, at.y + down)
      return {wordsY: at.y + down, box: {...upper, bottom: upper.bottom + LINE}}
    })
    const rise = Array.from(course.reserve.slice(refill), (mass, i) =>
      boxAround(x(refill + i), y(mass), 1, 1),
    )
    const {wordsY} = clearest(spots, [lowestBox, ...(floorBox ? [floorBox] : []), ...rise])!
    return {...at, words, wordsY}
  }
  const rings = year.former.map((one) => ({one, x: x(one.day), y: y(storeOf(one.sugar, first + one.day))}))
  const taken: Box[] = [...rings, {x: x(lowest), y: y(course.reserve[lowest]!)}].map((at) =>
    boxAround(at.x, at.y, 6, 6),
  )
  const written: Box[] = [] // words
  const dots = measured.map(({day, sugar, lower, upper, plants}): Dot => {
    const dotX = x(day - first)
    // Before the line of the as-of day they end in front of it.
    const end = asOf !== null && day - first < asOf ? x(asOf) - 4 : width
    const said = `${numberText(sugar, 0)} mg/g, ${dayText(day)}`
    const ofPlants =
      plants === null ? [] : [`measured of ${plants === 1 ? "1 plant" : `${plants} plants`}: ${said}`]
    const words = [...ofPlants, `measured ${said}`].find((one) => textWidth(one) <= end - LEFT) ?? said
    const room = end - textWidth(words)
    const dotY = y(storeOf(sugar, day))
    const radius = radiusOf(plants)
    const [top, bottom] = [y(storeOf(upper ?? sugar, day)), y(storeOf(lower ?? sugar, day))]
    const wordsX = Math.max(LEFT, Math.min(dotX + 8, room))
    // Above it, or under it where rings of former years are in the way.
    const spots = [Math.min(top, dotY - radius) - 6, Math.max(bottom, dotY + radius) + 17].map((wordsY) => ({
      wordsY,
      box: boxOfText(words, wordsX, wordsY),
    }))
    const {wordsY, box} = clearest(spots, [...taken, ...written])!
    written.push(box)
    taken.push(boxAround(dotX, dotY, radius, radius))
    return {x: dotX, y: dotY, week: weekOf(day - first), radius, top, bottom, words, wordsX, wordsY}
  })
  return {
    width,
    height: HEIGHT,
    left: LEFT,
    right: width - RIGHT,
    base,
    unit,
    rules: Array.from({length: most / step + 1}, (_, i) => ({
      y: heightOf(i * step),
      text: numberText(i * step, 0),
    })),
    months: monthsOf(first, days).map(({day, month}) => ({x: x(day - 1), words: MONTHS[month]!})),
    past: line(0, now),
    toCome: line(now, days - 1),
    floor,
    asOf: asOf === null ? null : {x: x(asOf), words: `as of ${dayText(first + asOf)}`},
    cutting:
      stop > open
        ? {
            from: x(open - 1),
            now: Math.min(Math.max(x(now), x(open - 1)), x(stop - 1)),
            to: x(stop - 1),
            words: `cutting ${dayText(first + open)} to ${dayText(first + stop - 1)}`,
          }
        : null,
    lowest: lowestAt,
    refill: refill < 0 ? null : refilled(),
    bands: weekly ? [band(0, 4, "8 in 10", [3, 4]), band(1, 3, "half", [1, 2])] : [],
    singles: singles.map(
      (store) => `M${store.map((mass, i) => `${endOf(i).toFixed(1)} ${y(mass).toFixed(1)}`).join("L")}`,
    ),
    measured: dots,
    weeks: Array.from({length: weekOf(days - 1) + 1}, (_, week) => {
      const day = lastOf(week)
      const mass = course.reserve[day]!
      return {x: x(day), y: y(mass), week, words: `${kg(mass)} ${unit} on ${dayText(first + day)}`}
    }),
    former: withYears(rings, taken, written, width - RIGHT),
  }
}

/** The years of former samplings beside their rings, clear of marks where they can be and of other words always. */
function withYears(
  rings: readonly (Point & {readonly one: FormerSample})[],
  marks: readonly Box[],
  written: readonly Box[],
  right: number,
): ReserveLayout["former"] {
  const words = [...written]
  return rings.map(({one, x, y}) => {
    const text = String(yearOf(one.dug))
    const wide = textWidth(text)
    const spots = [
      {x: x + 8, y: y + 5},
      {x: x - wide - 8, y: y + 5},
      {x: x - wide / 2, y: y - 9},
      {x: x - wide / 2, y: y + 19},
    ]
    const best = clearest(
      spots
        .filter((spot) => spot.x >= LEFT && spot.x + wide <= right)
        .map((spot) => ({...spot, box: boxOfText(text, spot.x, spot.y)})),
      [...marks, ...words],
    )!
    const isClear = overlaps(best.box, words) === 0
    if (isClear) words.push(best.box)
    return {
      x,
      y,
      week: weekOf(one.day),
      words: formerWords(one),
      label: isClear ? {text, x: best.x, y: best.y} : null,
    }
  })
}

const weekOf = (day: number) => Math.floor(day / 7)

/** 4.5 px for ten plants, or where their number is not known; within 3 and 8, so that it is seen and hides nothing. Chosen. */
const radiusOf = (plants: number | null) => Math.min(8, Math.max(3, 4.5 * Math.sqrt((plants ?? 10) / 10)))

/** A round step of 1, 2 or 5 times a power of ten that parts the axis in three to six. */
function stepOf(most: number): number {
  const power = 10 ** Math.floor(Math.log10(Math.max(1, most / 3)))
  return [1, 2, 5, 10].map((factor) => factor * power).find((step) => most / step <= 6)!
}

/** The firsts of the months in a model year, days counted from its start. */
function monthsOf(first: number, days: number): {day: number; month: number}[] {
  const months: {day: number; month: number}[] = []
  for (let year = yearOf(first); year <= yearOf(first + days - 1); year++)
    for (let month = 0; month < 12; month++) {
      const day = dayOf(`${year}-${String(month + 1).padStart(2, "0")}-01`)! - first
      if (day >= 0 && day < days) months.push({day, month})
    }
  return months
}
