import {isoOf} from "../../../functions/calendar"
import type {PlantingWeeks} from "../../studies/bestWeeks"
import {nearWords, type WeeksStudy} from "../../studies/weeksStudy"
import {whyWeeks} from "../../studies/whyWeeks"
import {columnWith, sheetWith, type Content, type Document, type Part} from "../../workbook/document"
import type {Edit, Entry} from "../../workbook/edit"
import {namesIn} from "../../workbook/names"
import type {Command, Question, Turn} from "../store"
import {rowsEdit} from "./season"

/** What one day more of cutting takes from later seasons, money/ha: a seventh of what the next week takes; null where there is none. */
export const dayCostOf = ({years: [year]}: PlantingWeeks): number | null =>
  year?.nextWeek ? year.nextWeek.cost / 7 : null

/** Whether it is cut on after this season, so that what its roots keep counts. */
export const goesOn = ({years}: PlantingWeeks): boolean => years.length > 1

/** Keeps what the study found: a row for each planting on Field life, and its seasons ahead in place of those kept before. */
export const keepWeeks =
  (
    found: readonly PlantingWeeks[],
    {season, asOf, little}: Pick<WeeksStudy, "season" | "asOf" | "little">,
  ): Command =>
  ({document}) => {
    const summary = rowsEdit(
      document,
      "life planting",
      found.map((one) => [
        one.planting,
        {...summaryOf(one, season, asOf), "life near": nearWords(one, season, little)},
      ]),
      "",
    )
    const ahead = aheadEdits(document, found, season)
    const edits = [...(summary ? [summary] : []), ...ahead]
    return edits.length ? {type: "several", edits, name: "best weeks kept"} : null
  }

function summaryOf(one: PlantingWeeks, season: number, runOn: number | null): Partial<Record<Part, Content>> {
  const [first] = one.years
  const dayCost = dayCostOf(one)
  return {
    "life run on": runOn === null ? null : isoOf(runOn),
    "life weeks": first ? first.weeks : 0,
    "life days": one.days,
    "life last season": lastSeasonWords(one, season),
    "life replace age": one.replaceAge,
    "life why": first ? whyWeeks(first) : "Clearing it now is worth more than any season of it.",
    "life reserve worth": first ? rounded(first.reserveWorth, 3) : 0,
    "life stop price": stopPriceOf(first),
    "life day cost": dayCost === null ? null : rounded(dayCost, 1),
    "life worth": Math.round(one.worth),
    "life clear now": Math.round(one.clearNow),
  }
}

/** "now", "2036", or "2036 or later" where it is cleared because the ages end there. */
export const lastSeasonWords = ({years, replaceAge, age, isAtEnd}: PlantingWeeks, season: number) =>
  years.length === 0 ? "now" : `${season + replaceAge - age - 1}${isAtEnd ? OR_LATER : ""}`

/** What stands after a last season on the edge of the ages that were weighed. */
export const OR_LATER = " or later"

/** The rows of the seasons ahead: other plantings' as they are, then those found. The old ones go. */
function aheadEdits(document: Document, found: readonly PlantingWeeks[], season: number): Edit[] {
  const sheet = sheetWith(document, "ahead planting")
  if (sheet < 0) return []
  const {rows, columns} = document.sheets[sheet]!
  const keyAt = columnWith(document, sheet, "ahead planting")
  const names = new Set(found.map(({planting}) => planting))
  const others = rows.filter((row) => row[keyAt] && !names.has(String(row[keyAt])))
  const fresh = found.flatMap(({planting, age, years}) =>
    years.map((year) => {
      const contents: Partial<Record<Part, Content>> = {
        "ahead planting": planting,
        "ahead season": String(season + year.age - age),
        "ahead age": year.age,
        "ahead weeks": year.weeks,
        "ahead crop": Math.round(year.crop),
        "ahead margin": Math.round(year.margin),
        "ahead sugar": Math.round(year.sugar),
        "ahead reserve": Math.round(year.reserveLeft),
        "ahead reserve worth": rounded(year.reserveWorth, 3),
        "ahead stop price": stopPriceOf(year),
        "ahead why": whyWeeks(year),
      }
      return columns.map(({part}) => (part ? (contents[part] ?? null) : null))
    }),
  )
  const cells = [...others, ...fresh].flatMap((contents, row) =>
    contents.flatMap((content, col): Entry[] => (content === null ? [] : [{at: {sheet, row, col}, content}])),
  )
  const cleared: Edit[] = rows.length ? [{type: "removeRows", sheet, first: 0, count: rows.length}] : []
  return [...cleared, ...(cells.length ? [{type: "enter", cells} as const] : [])]
}

const stopPriceOf = (year: PlantingWeeks["years"][number] | undefined): number | null =>
  year?.nextWeek && Number.isFinite(year.nextWeek.stopPrice) ? rounded(year.nextWeek.stopPrice, 3) : null

const rounded = (value: number, decimals: number) => Number(value.toFixed(decimals))

/** The day's cost over the plantings that go on, weighed by their ground; null when none does. */
export function meanDayCost(
  found: readonly PlantingWeeks[],
  areas: ReadonlyMap<string, number>,
): number | null {
  let [sum, ground] = [0, 0]
  for (const one of found) {
    const cost = dayCostOf(one)
    const area = areas.get(one.planting) ?? 0
    if (cost === null || !goesOn(one) || area <= 0) continue
    sum += cost * area
    ground += area
  }
  return ground > 0 ? Math.round(sum / ground) : null
}

/** Asks whether the day's cost found may stand as Next_year_cost, which all price limits rest on; null when there is nothing to ask. */
export function askDayCost(document: Document, cost: number, plantings: number): Turn | null {
  const at = namesIn(document).find(({name}) => name.toLowerCase() === "next_year_cost")?.at
  if (!at) return null
  const was = document.sheets[at.sheet]!.rows[at.row]?.[at.col] ?? null
  const question: Question = {
    asks:
      `Next_year_cost is ${was === null ? "blank" : String(was)} money/ha/day. The study gives ${cost}, the mean over the ground of ` +
      `${plantings === 1 ? "the planting that goes" : `the ${plantings} plantings that go`} on. It stands for all plantings, and their price limits follow it. Put ${cost} there?`,
    yes: `Put ${cost} there`,
    edit: {type: "enter", cells: [{at, content: cost}], name: "worth of the reserve into Next_year_cost"},
    links: [{at, words: "Next_year_cost"}],
  }
  return () => ({question})
}
