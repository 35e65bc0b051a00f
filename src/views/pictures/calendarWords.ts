import {yearOf} from "../../../functions/calendar"
import type {Limit, Plan, PlanRow} from "../../workbook/plan"
import {dateText, dayText, inTonnes, shownIn, withoutDay} from "../../editor/display"
import type {Region} from "../../workbook/document"
import {PLAIN_REGION} from "../../workbook/region"
import {isoWeekOf, mondayOf} from "./weeks"

/** The name under which a close stands that was typed over. */
export const YOU = "you"

/** The season of one planting, read once, so that its bar, its sentence and its line in the table cannot differ. */
export interface Season {
  readonly row: PlanRow
  readonly opens: number | null
  /** The last day of cutting, or null when there is none: no close, or one before the opening. */
  readonly closes: number | null
  /** Days of cutting, both ends counted. */
  readonly days: number | null
  /** What holds the close: the name of a limit, "you", or the sheet's own words. */
  readonly holder: string
  /** The limit that holds the close, when it is one of the row's own limits. */
  readonly binding: Limit | null
  /** The earliest other limit on or after the close. */
  readonly next: DatedLimit | null
  /** For a close later than its limits: the earliest limit that it passes over. */
  readonly passed: DatedLimit | null
  /** Why there are no days of cutting; empty where there are some. */
  readonly notCut: string
}

type DatedLimit = Limit & {readonly day: number}

/** Whether two names of limits are the same: spaces around them and capitals do not count. */
export const isSameName = (one: string, other: string) => plainName(one) === plainName(other)
export const plainName = (name: string) => name.trim().toLowerCase()

/** A limit's days are whole: a part of a day is left off, as everywhere in the calendar. */
const wholeDay = (day: number | null) => (day === null ? null : Math.floor(day))

export function seasonOf(row: PlanRow): Season {
  const opens = wholeDay(row.opens)
  const close = wholeDay(row.closes)
  const dated = row.limits.flatMap((limit): DatedLimit[] => {
    const day = wholeDay(limit.day)
    return day === null ? [] : [{...limit, day}]
  })
  if (close === null || (opens !== null && close < opens)) {
    const notCut = close === null ? row.heldBy.trim() || "close not known yet" : "closes before it opens"
    return {
      row,
      opens,
      closes: null,
      days: null,
      holder: row.heldBy.trim(),
      binding: null,
      next: null,
      passed: null,
      notCut,
    }
  }
  const {holder, binding} = holderOf(row.heldBy, close, dated)
  const others = dated.filter(({at}) => at !== binding?.at)
  const earliest = (limits: DatedLimit[]) =>
    limits.reduce<DatedLimit | null>((best, limit) => (best && best.day <= limit.day ? best : limit), null)
  return {
    row,
    opens,
    closes: close,
    days: opens === null ? null : close - opens + 1,
    holder,
    binding,
    next: earliest(others.filter(({day}) => day >= close)),
    passed: earliest(others.filter(({day}) => day < close)),
    notCut: "",
  }
}

/**
 * What holds a close. The sheet's word counts where it names a limit that falls on this day, or names no limit at
 * all. A limit named beside a close on another day means that the close was typed over.
 */
function holderOf(heldBy: string, close: number, limits: readonly DatedLimit[]) {
  const named = limits.filter(({name}) => isSameName(name, heldBy))
  const here = named.find(({day}) => day === close)
  if (here) return {holder: here.name.trim(), binding: here}
  if (named.length > 0) return {holder: YOU, binding: null}
  if (heldBy.trim() !== "") return {holder: heldBy.trim(), binding: null}
  const earliest = limits.find(({day}) => limits.every((other) => day <= other.day))
  if (earliest?.day === close) return {holder: earliest.name.trim(), binding: earliest}
  return {holder: YOU, binding: null}
}

/** "Long Acre: 25 Apr to 15 Jun, 52 days, held by reserve; weeks for its age would hold it 4 days later." */
export function calendarSentence(row: PlanRow): string {
  const season = seasonOf(row)
  const {opens, closes, days, holder, next, passed, notCut} = season
  if (closes === null) {
    const close = wholeDay(row.closes)
    if (close !== null && opens !== null)
      return `${row.planting}: closes ${dayText(close)}, before it opens, ${dayText(opens)}${holder && `; ${holder}`}.`
    return `${row.planting}: ${holder === "" || /^not\b/i.test(notCut) ? notCut : `not cut, ${notCut}`}.`
  }
  const span =
    opens === null || days === null
      ? `closes ${dayText(closes)}, opening not known yet`
      : `${spanText(opens, closes)}, ${daysText(days)}`
  return `${row.planting}: ${span}, held by ${holder}; ${rivalText(closes, next, passed)}.`
}

function rivalText(closes: number, next: DatedLimit | null, passed: DatedLimit | null) {
  if (passed) return `${passed.name.trim()} would hold it ${daysText(closes - passed.day)} sooner`
  if (!next) return "no other limit is known yet"
  const name = next.name.trim()
  return next.day === closes
    ? `${name} holds it on the same day`
    : `${name} would hold it ${daysText(next.day - closes)} later`
}

/**
 * The finding of the page: who closes next, what holds it, who follows, and the crop of the farm. The as-of day
 * itself still counts as open, as its bar is still outlined. Without an as-of day it begins with the first close.
 */
export function calendarFinding(plan: Plan): string {
  if (plan.rows.length === 0) return "No plantings in this plan yet. Begin with “Add a planting”."
  return `${closesText(plan)} ${cropText(plan)}`.trim()
}

function closesText({rows, asOf}: Plan) {
  const closing = rows
    .map(seasonOf)
    .flatMap(({row, closes, holder}) =>
      closes === null ? [] : [{name: row.planting, closes, holder, isClosed: row.isClosed}],
    )
    .sort((a, b) => a.closes - b.closes)
  const last = closing.at(-1)
  if (!last) return `No planting has a close yet${lackWords(rows)}.`
  const [first, second] = closing.filter(({closes}) => asOf === null || closes >= Math.floor(asOf))
  if (!first) {
    const isClosed = closing.every((one) => one.isClosed)
    return `Every planting is ${isClosed ? "closed" : "past its close"}, ${last.name} last, on ${dayText(last.closes)}.`
  }
  const next = asOf === null ? "first" : "next"
  const opening = `${first.name} closes ${next}, on ${dayText(first.closes)}, held by ${first.holder}`
  if (!second) return `${opening}.`
  const gap = second.closes - first.closes
  const later = gap === 0 ? "on the same day" : `${daysText(gap)} later`
  return `${opening}; ${second.name} ${later}, held by ${second.holder}.`
}

/** What has to be typed first, where plantings that may be cut have no close for want of it. */
function lackWords(rows: readonly PlanRow[]) {
  const maybeCut = rows.filter(({heldBy}) => heldBy.trim() === "")
  if (maybeCut.length === 0) return ""
  if (maybeCut.every(({opens}) => opens === null)) return ": type the first day of cutting under Open"
  if (maybeCut.every(({age}) => age === null))
    return ": type the year as Season on Named values, and on Plantings when each was planted"
  return ""
}

function cropText({rows, region}: Plan) {
  const weight = (kg: number) => weightText(kg, region)
  // A planting whose close is not known may well be cut: its crop is missing from the sum.
  const cut = rows.filter((row) => seasonOf(row).closes !== null || row.heldBy.trim() === "")
  const known = cut.filter(({crop}) => crop !== null)
  const sum = (values: readonly (number | null)[]) => values.reduce<number>((all, kg) => all + (kg ?? 0), 0)
  const total = sum(known.map(({crop}) => crop))
  if (total <= 0) return ""
  const of = known.length === cut.length ? "in all" : `from ${known.length} of ${cut.length} plantings`
  const ranged = known.every(({cropLow, cropHigh}) => cropLow !== null && cropHigh !== null)
  if (!ranged) return `About ${weight(total)} ${of}.`
  const low = weight(sum(known.map(({cropLow}) => cropLow)))
  const high = weight(sum(known.map(({cropHigh}) => cropHigh)))
  return `About ${weight(total)} ${of}: ${low} if every planting falls low, ${high} if every one falls high.`
}

/** The table twin: headings and rows of words, and the farm's expected crop by day, one line a week. */
export interface CalendarTableWords {
  readonly headings: readonly string[]
  readonly rows: readonly (readonly string[])[]
  readonly crop: {readonly headings: readonly string[]; readonly rows: readonly (readonly string[])[]}
}

export function calendarTable(plan: Plan): CalendarTableWords {
  const seasons = plan.rows.map(seasonOf)
  const limits = plan.rows[0]?.limits.map(({name}) => name) ?? []
  const days = plan.rows.flatMap(({opens, closes, limits}) => [opens, closes, ...limits.map(({day}) => day)])
  const years = new Set(days.filter((day) => day !== null).map(yearOf))
  const dateWords = years.size > 1 ? dateText : dayText
  const ranged = plan.rows.some(({cropLow, cropHigh}) => cropLow !== null && cropHigh !== null)
  return {
    headings: [
      "Planting",
      "Opens",
      "Closes",
      "Days",
      "Held by",
      "Next or passed limit",
      ...limits,
      "Crop",
      ...(ranged ? ["Crop, low to high"] : []),
    ],
    rows: seasons.map(({row, opens, closes, days, holder, next, passed, notCut}) => [
      row.planting,
      opens === null ? "" : dateWords(opens),
      closes === null ? "" : dateWords(closes),
      days === null ? "" : String(days),
      closes === null ? notCut : holder,
      closes === null ? "" : rivalWords(closes, next, passed),
      ...limits.map((_, index) => {
        const day = wholeDay(row.limits[index]?.day ?? null)
        return day === null ? withoutDay(row.limits[index]?.why) : dateWords(day)
      }),
      row.crop === null ? "" : weightText(row.crop, plan.region),
      ...(ranged ? [rangeText(row, plan.region)] : []),
    ]),
    crop: cropByWeek(plan, dateWords),
  }
}

function rivalWords(closes: number, next: DatedLimit | null, passed: DatedLimit | null) {
  if (passed) return `${passed.name.trim()}, ${daysText(closes - passed.day)} sooner`
  if (!next) return ""
  const gap = next.day - closes
  return gap === 0 ? `${next.name.trim()}, same day` : `${next.name.trim()}, ${daysText(gap)} later`
}

const rangeText = ({cropLow, cropHigh}: PlanRow, region: Region | undefined) =>
  cropLow === null || cropHigh === null
    ? ""
    : `${weightText(cropLow, region)} to ${weightText(cropHigh, region)}`

function cropByWeek({daily, region}: Plan, dateWords: (day: number) => string): CalendarTableWords["crop"] {
  const byDay = new Map(daily.map(({day, kg}) => [day, kg]))
  const weeks = [...new Set(daily.map(({day}) => mondayOf(day)))]
  return {
    headings: ["Week", "From", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"],
    rows: weeks.map((monday) => [
      String(isoWeekOf(monday)),
      dateWords(monday),
      ...Array.from({length: 7}, (_, index) => {
        const kg = byDay.get(monday + index)
        return kg === undefined ? "" : weightText(kg, region)
      }),
    ]),
  }
}

/** A weight in kg as words: kg below a tonne, then tonnes, with one decimal below 10 t; so in pounds and tons of 2000 lb. */
export function weightText(kg: number, region: Region = PLAIN_REGION): string {
  const tonnes = shownIn("t", region).number(kg / 1000)
  if (tonnes >= 0.9995) return inTonnes(kg, tonnes < 9.95 ? 1 : 0, region).join(" ")
  const {unit, text} = shownIn("kg", region)
  return `${text(kg, 0)} ${unit}`
}

/** "25 Apr to 15 Jun", with both years where they differ. */
const spanText = (opens: number, closes: number) =>
  yearOf(opens) === yearOf(closes)
    ? `${dayText(opens)} to ${dayText(closes)}`
    : `${dateText(opens)} to ${dateText(closes)}`

const daysText = (days: number) => `${days} ${days === 1 ? "day" : "days"}`
