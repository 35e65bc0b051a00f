import type {Store} from "../editor/store"
import {sheetWith, type Document} from "../workbook/document"
import {namesIn, numberNamed} from "../workbook/names"
import {coldChainOf, type ColdChain} from "../workbook/coldChain"
import {planOf} from "../workbook/plan"
import {needsOf, weekOf, type SeasonWeek, type WeekNeeds} from "../workbook/season"
import {shedDayOf, type ShedDay} from "../workbook/shedDay"

/** What the page of the week shows when its sheet is open, read once for each document; null on other sheets. */
export const weekShown = (store: Store): SeasonWeek | null =>
  shown(store, "to do", weeks, () => weekOf(store.workbook))

/** The needs of each week when their sheet is open; null on other sheets. */
export const needsShown = (store: Store): readonly WeekNeeds[] | null =>
  shown(store, "need from", needs, () => needsOf(store.workbook))

/** The plantings that are cut and have no part in those needs, since their crops are not known. */
export const uncountedShown = (store: Store): readonly string[] =>
  shown(store, "need from", uncounted, () =>
    (planOf(store.workbook)?.rows ?? []).flatMap(({planting, closes, crop}) =>
      closes !== null && crop === null ? planting : [],
    ),
  ) ?? []

/** The cold chain, when the sheet of the needs is open; null on other sheets. */
export const coldChainShown = (store: Store): ColdChain | null =>
  shown(store, "need from", chains, () => coldChainOf(store.workbook))

/** The day of the packing list when its sheet is open; null on other sheets. */
export const shedDayShown = (store: Store): ShedDay | null =>
  shown(store, "shed in", shedDays, () => shedDayOf(store.workbook))

/** The day on which the plan stands, or null where none is typed. */
export const asOfDay = ({workbook}: Store): number | null => numberNamed(workbook, "As_of")

/** What has to be typed before the page of the open sheet can say anything, in a sentence; null where that is there. */
export function typedFirst({workbook, getState}: Store): string | null {
  const {document, cell} = getState()
  const plantings = document.sheets[sheetWith(document, "name of planting")]?.rows
  if (!plantings?.some(([name]) => name)) return null
  const names = new Set(namesIn(document).map(({name}) => name))
  const missing = TYPED_FIRST.find(
    ({parts, name}) =>
      parts.some((part) => cell.sheet === sheetWith(document, part)) &&
      names.has(name) &&
      numberNamed(workbook, name) === null,
  )
  return missing ? `${missing.words}: type ${missing.name} on the sheet Named values.` : null
}

const TYPED_FIRST = [
  {
    parts: ["close", "to do", "need from", "shed in"],
    name: "Season",
    words: "No year is typed for the season",
  },
  {parts: ["to do"], name: "As_of", words: "No day is typed on which the plan stands"},
  {parts: ["shed in"], name: "Shed_day", words: "No day is typed for the list"},
] as const

const weeks = new WeakMap<Document, SeasonWeek | null>()
const needs = new WeakMap<Document, readonly WeekNeeds[] | null>()
const uncounted = new WeakMap<Document, readonly string[] | null>()
const chains = new WeakMap<Document, ColdChain | null>()
const shedDays = new WeakMap<Document, ShedDay | null>()

function shown<T>(
  store: Store,
  part: "to do" | "need from" | "shed in",
  held: WeakMap<Document, T | null>,
  read: () => T | null,
): T | null {
  const {document, cell} = store.getState()
  if (cell.sheet !== sheetWith(document, part)) return null
  if (!held.has(document)) held.set(document, read())
  return held.get(document)!
}
