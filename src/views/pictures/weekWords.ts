import {dateText, dayText, inTonnes, numberText, percentText, quantityText} from "../../editor/display"
import type {Region} from "../../workbook/document"
import type {PlantingWeek, SeasonWeek, WeekNeeds} from "../../workbook/season"
import type {ShedDay} from "../../workbook/shedDay"
import type {Decimal} from "../../workbook/region"
import {isoWeekOf} from "./weeks"

const tonnes = (kg: number, region: Region | undefined) => inTonnes(kg, 1, region).join("\u202f")

/** Words in a row: "North Bench, Long Acre and Sand Piece". */
export function inARow(words: readonly string[]): string {
  if (words.length < 2) return words.join("")
  return `${words.slice(0, -1).join(", ")} and ${words.at(-1)!}`
}

/** Chosen: more plantings than this are counted in a sentence, not named; their table has them all. */
const MOST_NAMED = 4

/** The first words in a row and how many more there are: "North Bench, Long Acre, Sand Piece and 13 more". */
export const firstInARow = (words: readonly string[]): string =>
  inARow(
    words.length > MOST_NAMED
      ? [...words.slice(0, MOST_NAMED - 1), `${words.length - MOST_NAMED + 1} more`]
      : words,
  )

/** What the page of the week found, in a sentence or two. */
export function weekFinding(week: SeasonWeek): string {
  const moved = week.plantings.filter(({moved}) => moved !== null && moved !== 0)
  const first = dayText(week.asOf)
  const closes = !hasWeekBefore(week)
    ? "No week’s plan has been used yet"
    : moved.length === 0
      ? "No close has moved since last week"
      : `${moved.length === 1 ? "One close" : `${moved.length} closes`} moved since last week`
  const now = week.plantings
    .filter(({toDo}) => toDo.startsWith("Close to fern now"))
    .map(({planting}) => planting)
  const ends = now.length ? `; ${firstInARow(now)} should close to fern` : ""
  return `Week ${isoWeekOf(week.asOf)}, from ${first}. ${closes}${ends}.`
}

/** What came in, against the plan. */
export function cameInWords({plantings, asOf, region}: SeasonWeek): string {
  const sum = (of: (one: PlantingWeek) => number | null) =>
    plantings.reduce((total, one) => total + (of(one) ?? 0), 0)
  const [picked, planned] = [sum((one) => one.picked), sum((one) => one.planned)]
  if (picked === 0) return `Nothing came in from ${dayText(asOf - 7)} to ${dayText(asOf - 1)}.`
  const late = plantings.filter(({pace}) => pace !== null && pace < 0.9)
  const furthestFirst =
    late.length > MOST_NAMED ? late.toSorted((one, other) => one.pace! - other.pace!) : late
  const behind = firstInARow(
    furthestFirst.map(({planting, pace}) => `${planting} stands at ${percentText(pace!)} of its plan`),
  )
  const ofPlan = planned > 0 ? `, ${percentText(picked / planned)} of plan` : ""
  return `${tonnes(picked, region)} came in from ${dayText(asOf - 7)} to ${dayText(asOf - 1)}${ofPlan}.${behind && ` ${behind}${late.length > MOST_NAMED ? " are behind theirs" : ""}.`}`
}

/** Whether the plan of a week was used, so that there is something to tell moves against. */
const hasWeekBefore = ({plantings}: SeasonWeek) =>
  plantings.some(({closeLastWeek, heldByLastWeek}) => closeLastWeek !== null || heldByLastWeek !== "")

/** What held a close last week and what holds it now: "price last week, now by reserve". */
export const heldWords = ({heldBy, heldByLastWeek}: PlantingWeek) =>
  heldByLastWeek === ""
    ? heldBy
    : heldBy === heldByLastWeek
      ? `${heldBy}, as last week`
      : `${heldByLastWeek} last week, now by ${heldBy}`

/** "Sand Piece: from 6 Jun to 7 Jun, held by price last week, now by spear size." */
export const movedSentence = (one: PlantingWeek): string =>
  `${one.planting}: from ${dayText(one.closeLastWeek!)} to ${dayText(one.close!)}, held by ${heldWords(one)}.`

/** What moved, the farthest first, what held it last week and what holds it now. */
export function movedWords(week: SeasonWeek): string {
  if (!hasWeekBefore(week)) return "Nothing to tell it by: no week’s plan has been used yet."
  const moves = week.plantings.filter(({moved}) => moved !== null && moved !== 0)
  if (moves.length === 0) return "No close has moved since the plan of last week."
  const more = moves.length > MOST_NAMED ? moves.length - MOST_NAMED + 1 : 0
  const size = ({moved}: PlantingWeek) => Math.abs(moved!)
  const farthestFirst = moves.toSorted((one, other) => size(other) - size(one)) // as the picture beside has them
  const named = more ? farthestFirst.slice(0, MOST_NAMED - 1) : farthestFirst
  const told = named.map((one) => {
    const {planting} = one
    const moved = one.moved!
    const days = `${Math.abs(moved)} ${Math.abs(moved) === 1 ? "day" : "days"}`
    return `${planting} closes ${days} ${moved < 0 ? "earlier" : "later"}, held by ${heldWords(one)}`
  })
  return `${told.join("; ")}${more ? `; ${more} more closes moved` : ""}.`
}

/** Where one more day still pays, and where it no longer does. */
export function goOnWords({plantings}: SeasonWeek): string {
  const known = plantings.filter(({dayWorth}) => dayWorth !== null)
  if (known.length === 0)
    return "What one more day is worth is not known yet: it needs a plan, a price and a crop."
  const [pays, not] = [
    known.filter(({dayWorth}) => dayWorth! >= 0),
    known.filter(({dayWorth}) => dayWorth! < 0),
  ]
  const names = (some: readonly PlantingWeek[]) => firstInARow(some.map(({planting}) => planting))
  if (not.length === 0) return "One more day still pays everywhere that is being cut."
  if (pays.length === 0) return "One more day pays nowhere."
  return `One more day still pays on ${names(pays)}; on ${names(not)} it no longer does.`
}

/** The day of the packing list and what the shed has to do on it: "28 May 2026: 2 907 kg come in by the plan, …". */
export function shedFinding(shed: ShedDay, region: Region): string {
  const {day, isPast, comesIn, packed, crates, cartons} = shed
  const [came, how] = isPast ? ["came", ""] : ["come", " by the plan"]
  if (comesIn === null) return `${dateText(day)}: what ${came}${isPast ? "" : "s"} in is not known yet.`
  if (comesIn === 0) return `${dateText(day)}: nothing ${isPast ? "came" : "comes"} in${how}.`
  const weight = (kg: number) => quantityText(kg, 0, "kg", region)
  const filled = (count: number | null, one: string) =>
    count === null ? [] : `${numberText(count, 0)} ${count === 1 ? one : `${one}s`}`
  const filling = [filled(crates, "crate"), filled(cartons, "carton")].flat().join(" or ")
  const forPacking =
    packed === null
      ? "what is packed of it is not known yet"
      : `${weight(packed)} packed${filling && `: ${filling}`}`
  return `${dateText(day)}: ${weight(comesIn)} ${came} in${how}, ${forPacking}.`
}

/** Whether a number as it is shown tells of something. */
const isSeen = (text: string) => /[1-9]/.test(text)

/** The weeks of cutting that are short of people or of cold, from a day on. What plantings of unknown crop need is not in it. */
export function needsFinding(
  needs: readonly WeekNeeds[],
  asOf: number | null,
  decimal: Decimal = ".",
  uncounted: readonly string[] = [],
): string {
  if (needs.length === 0) return "No week of cutting is planned yet."
  const coming = needs.filter(({from}) => asOf === null || from + 7 > asOf)
  const lacks = coming.map((one) => ({...one, short: one.short ?? 0, over: one.over ?? 0}))
  const kW = (one: (typeof lacks)[number]) => numberText(one.over, 1, decimal)
  const short = lacks.filter((one) => one.short > 0)
  const over = lacks.filter((one) => one.over > 0 && isSeen(kW(one)))
  const unknown = notKnownNeeds(coming, uncounted)
  if (short.length === 0 && over.length === 0)
    return unknown || "People and cold are enough for every week to come."
  const worst = (some: typeof lacks, of: (one: (typeof lacks)[number]) => number) =>
    some.reduce((most, one) => (of(one) > of(most) ? one : most))
  const people = short.length ? worst(short, (one) => one.short) : null
  const cold = over.length ? worst(over, (one) => one.over) : null
  const hands =
    people &&
    `week ${people.week} is ${people.short} ${people.short === 1 ? "cutter" : "cutters"} short on its worst day`
  const load = cold && `${kW(cold)} kW over what is fitted`
  const said =
    people === cold
      ? [`${hands} and ${load}`]
      : [hands, cold && `week ${cold.week} is ${load}`].filter((one) => one !== null)
  const others = lacks.filter(
    (one) => (short.includes(one) || over.includes(one)) && one !== people && one !== cold,
  ).length
  const more = others
    ? `; ${others} more ${others === 1 ? "week is" : "weeks are"} short of one or the other`
    : ""
  const found = `${said.join("; ")}${more}.`.replace(/^./, (letter) => letter.toUpperCase())
  return unknown ? `${found} ${unknown}` : found
}

/** What of some weeks, or of plantings in them, is not known, in sentences; "" where all is. */
export const notKnownNeeds = (needs: readonly WeekNeeds[], uncounted: readonly string[]): string =>
  [unknownNeeds(needs), uncountedNeeds(uncounted)].filter(Boolean).join(" ")

/** "Long Acre is not counted: its crop is not known yet." */
function uncountedNeeds(plantings: readonly string[]): string {
  if (plantings.length === 0) return ""
  const [are, their] = plantings.length === 1 ? ["is", "its crop is"] : ["are", "their crops are"]
  return `${firstInARow(plantings)} ${are} not counted: ${their} not known yet.`
}

/** The sentence on what is not known of some week, so that nobody takes it for enough; "" where all is. */
function unknownNeeds(needs: readonly WeekNeeds[]): string {
  const [people, cold] = [needs.some(({short}) => short === null), needs.some(({over}) => over === null)]
  if (!people && !cold) return ""
  const what = people && cold ? "people and cold are" : people ? "people are" : "the cold is"
  return `Whether ${what} enough is not known yet: Days of cutting says what is missing.`
}

/**
 * The title of a picture of needs: "3 cutters short in week 22, 1 in week 23". `words` tells an amount with what it is
 * of; from the third week on the rest are counted. A week whose shortage is null is not known.
 */
export function shortTitle(
  weeks: readonly {readonly week: number; readonly short: number | null}[],
  words: (amount: number) => string,
  amount: (short: number) => string,
  enough: string,
): string {
  const short = weeks.flatMap(({week, short}) =>
    short !== null && short > 0 && isSeen(amount(short)) ? [{week, short}] : [],
  )
  const [first, second, ...rest] = short
  const isKnown = weeks.every(({short}) => short !== null)
  if (!first) return isKnown ? enough : `${enough}: not known yet`
  const also = second ? `, ${amount(second.short)} in week ${second.week}` : ""
  const more = rest.length ? ` and some in ${rest.length} more` : ""
  return `${words(first.short)} in week ${first.week}${also}${more}`
}
