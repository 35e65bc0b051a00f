import {modelYearOf} from "../../functions/calendar"
import {isRefusal, notYet, type Refusal} from "../../functions/refusal"
import {crownsOf} from "../workbook/crowns"
import {numbersNamed, replantingOf, type Replanting} from "../workbook/replant"
import {rowsOf} from "../workbook/season"
import type {Workbook} from "../workbook/workbook"
import {edgeWithin} from "../../functions/stand/chain"
import {NODES, type PlantingWeeks} from "./bestWeeks"
import {
  weeksRefused,
  type AskedPlanting,
  type BestWeeksInput,
  type Foretold,
  type Ground,
} from "./bestWeeksAsked"

/** What the study of the best weeks runs on in a workbook, and the season it begins with. */
export interface WeeksStudy {
  readonly input: BestWeeksInput
  /** The year of the first season. */
  readonly season: number
  readonly asOf: number | null
  /** A sum today that does not matter, money/ha. */
  readonly little: number
  /** Areas by planting, ha. */
  readonly areas: ReadonlyMap<string, number>
  /** Last age of the table of weeks and ageing; later ages count as that one. */
  readonly lastAge: number
  /** What the sheet Replant says of the same fields. */
  readonly replanting: Replanting | null
}

/** The numbers of the sheet of inputs, by the words in its first column. */
const INPUTS = {
  technicalWeeks: "Most weeks of a last season",
  oldest: "Oldest age",
  age: "Its age at the first cutting",
  structure: "Its structural root then",
  reserve: "Its sugar then",
  open: "Its opening",
  factor: "Its own factor",
  weekCost: "Cost of a week of cutting",
} as const

/** The input that names the planting which stands for a new one, and those that are worked out from it. */
const LIKE = "A new planting is like"
const FROM_LIKE = [INPUTS.structure, INPUTS.reserve, INPUTS.open]

/** The named values that it needs. */
const NAMES = {
  season: "Season",
  rate: "Rate",
  pick: "Pick_cost",
  haul: "Haul_cost",
  pack: "Pack_cost",
  packout: "Packout",
  yearCost: "Field_cost",
  clear: "Clear_cost",
  rest: "Rest_years",
  restIncome: "Rest_income",
  otherUse: "Other_use",
  lossFlow: "Loss_cash",
  lossChance: "Loss_chance",
  fullAge: "Full_age",
  little: "Little_sum",
} as const

/**
 * Reads what the study of the best weeks needs. Null when the workbook has no sheet of it; a refusal names what is missing or
 * wrong. Plantings without a root sample or an opening are left out.
 */
export function weeksStudy(workbook: Workbook): WeeksStudy | Refusal | null {
  const rows = rowsOf(workbook, "life input")
  if (rows.length === 0) return null
  const crowns = crownsOf(workbook)
  if (crowns === null || isRefusal(crowns)) return crowns
  const named = numbersNamed(workbook)
  const values = all(NAMES, named, "on Named values")
  if (isRefusal(values)) return values
  const held = new Map(rows.map((row) => [row.word("life input"), row.number("life input value")]))
  if (FROM_LIKE.some((name) => (held.get(name) ?? null) === null)) {
    const like = rows.find((row) => row.word("life input") === LIKE)?.word("life input value") ?? ""
    return notYet(
      like === ""
        ? `${LIKE}, on Life inputs: no planting named yet`
        : `${LIKE} ${like}, by Life inputs, which has not all of root samples, root mass, a count of plants and an opening`,
    )
  }
  const inputs = all(INPUTS, (name) => held.get(name) ?? null, "on Life inputs")
  if (isRefusal(inputs)) return inputs
  const {season, fullAge, lossChance, little, ...money} = values
  const {technicalWeeks, oldest, age, structure, reserve, open, factor, weekCost} = inputs

  const table = rowsOf(workbook, "table age").flatMap((row) => {
    const at = row.number("table age")
    return at === null ? [] : [{at, weeks: row.number("table weeks"), factor: row.number("table factor")}]
  })
  const byAge = (of: (one: (typeof table)[number]) => number | null) =>
    Array.from({length: oldest + 1}, (_, age) => {
      const found = table.findLast((one) => one.at <= age)
      return found ? (of(found) ?? 0) : 0
    })
  const factors = byAge((one) => one.factor)
  const ages = new Map(rowsOf(workbook, "age").map((row) => [row.word("planting"), row.number("age")]))
  const expected = new Map(rowsOf(workbook, "factor").map((row) => [row.word("planting"), row]))
  const rested = values.rest
  const grounds = new Map(
    rowsOf(workbook, "replant field").map((row): [string, Ground] => [
      row.word("replant field"),
      {rest: row.number("replant rest") ?? rested, loss: row.number("ground loss") ?? 0},
    ]),
  )
  const fullCrop = named("New_full_yield")
  const year = modelYearOf(open, crowns.values.Year_start)
  const plantings = crowns.plantings.flatMap((one): AskedPlanting[] => {
    const its = ages.get(one.planting) ?? null
    if (its === null) return []
    const {planting, structure, reserve, healthy} = one
    return [
      {
        planting,
        age: its,
        crowns: {structure, reserve},
        open: one.open - year.first,
        factor: expected.get(planting)?.number("factor") ?? 1,
        foretold: foretoldBy(
          expected.get(planting)?.number("full crop") ?? null,
          factors,
          its,
          expected.get(planting)?.number("season crop") ?? null,
        ),
        healthy,
        ground: grounds.get(planting) ?? {rest: rested, loss: 0},
      },
    ]
  })
  if (plantings.length === 0)
    return notYet(
      "No planting can be run yet: it needs root samples, root mass, a count of plants and an opening",
    )
  const input: BestWeeksInput = {
    site: {climate: crowns.climate, year, values: crowns.values},
    money: {
      ...money,
      prices: pricesIn(workbook),
      weekCost,
    },
    successor: {
      age,
      crowns: {structure, reserve},
      open: open - year.first,
      factor,
      foretold: foretoldBy(fullCrop === null ? null : factor * fullCrop, factors),
      flows: rowsOf(workbook, "life year")
        .flatMap((row) => row.number("new cash") ?? [])
        .slice(0, age),
    },
    plantings,
    ageFactors: factors.map((factor, age) => (age > fullAge ? factor : 1)),
    caps: byAge((one) => one.weeks),
    technicalWeeks,
    lossChances: [lossChance],
    oldest,
    nodes: NODES,
  }
  const areas = new Map(
    rowsOf(workbook, "name of planting").map((row) => [
      row.word("name of planting"),
      row.number("area") ?? 0,
    ]),
  )
  return (
    weeksRefused(input) ?? {
      input,
      season,
      asOf: crowns.asOf,
      little,
      areas,
      lastAge: table.at(-1)?.at ?? 0,
      replanting: replantingOf(workbook),
    }
  )
}

/** The price of each week from the opening on, in whatever order they are typed: a week that is left out has the one before. */
function pricesIn(workbook: Workbook): number[] {
  const typed = rowsOf(workbook, "price week")
    .flatMap((row) => {
      const [week, price] = [row.number("price week"), row.number("price")]
      return week === null || price === null ? [] : [{week, price}]
    })
    .toSorted((one, other) => one.week - other.week)
  const weeks = Math.min(MOST_WEEKS, typed.at(-1)?.week ?? 0)
  return Array.from({length: weeks}, (_, i) => (typed.findLast(({week}) => week <= i + 1) ?? typed[0]!).price)
}

/** No sheet of prices has more weeks. */
const MOST_WEEKS = 30

/**
 * What a planting is foretold to bring by age, as the sheet Replant counts on it: its crop at full bearing by the age factors,
 * and this season, at the age `now`, what Expected crop says. Null without a record of any crop.
 */
function foretoldBy(
  full: number | null,
  ageFactors: readonly number[],
  now = -1,
  thisSeason: number | null = null,
): Foretold {
  return full !== null && full > 0
    ? ageFactors.map((share, age) => (age === now && thisSeason !== null ? thisSeason : full * share))
    : null
}

/** The fewest and the most seasons of keeping a planting that come within a sum of the best. */
export const nearSeasons = ({keep}: PlantingWeeks, little: number): readonly [number, number] => [
  edgeWithin(keep, little, -1),
  edgeWithin(keep, little, 1),
]

/** The age in the last season that comes within a sum of the best; of one that is cleared now, the age that it has. */
export const lastAgeWeighed = (one: PlantingWeeks, little: number): number =>
  one.age + Math.max(0, nearSeasons(one, little)[1] - 1)

/** "now to 2030": the last seasons before clearing that come within a sum of the best. */
export function nearWords(one: PlantingWeeks, season: number, little: number): string {
  const [least, most] = nearSeasons(one, little)
  return spanWords(least, most, most > 0 && most === one.keep.length - 1, season)
}

/** "now to 2030", "2034 or later": the last seasons of keeping a field so many; `isOpen` where longer was not weighed. */
export function spanWords(least: number, most: number, isOpen: boolean, season: number): string {
  const after = (kept: number) => (kept === 0 ? "now" : String(season + kept - 1))
  if (isOpen) return `${after(least)} or later`
  return least === most ? after(least) : `${after(least)} to ${after(most)}`
}

/** Each number by its name, or a refusal that names the first one that is missing. */
function all<K extends string>(
  names: Readonly<Record<K, string>>,
  read: (name: string) => number | null,
  where: string,
): Record<K, number> | Refusal {
  const found: Partial<Record<K, number>> = {}
  for (const [key, name] of Object.entries(names) as [K, string][]) {
    const value = read(name)
    if (value === null) return notYet(`${name} ${where}: not given yet`)
    found[key] = value
  }
  return found as Record<K, number>
}
