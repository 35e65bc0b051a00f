import {modelYearOf, type ModelYear} from "../../functions/calendar"
import {isRefusal} from "../../functions/refusal"
import {dailyBalance, driversOf, emptyCourse} from "../../functions/root/dailyBalance"
import {crownsOf, type CrownYears, type PlantingCrowns} from "../workbook/crowns"
import {sentenceOf} from "../workbook/faults"
import {numberNamed, valueNamed} from "../workbook/names"
import {rowsOf, type Row} from "../workbook/season"
import {isFault} from "../workbook/value"
import type {Workbook} from "../workbook/workbook"
import type {FieldYear, RiskField, RiskInput, RiskPlan, RiskYear} from "./drawRisk"
import {ASSUMED} from "./howSure"
import {seasonUnderWay, type SeasonUnderWay} from "./seasonUnderWay"

/**
 * Spreads that no workbook has records enough for, as deviations of logarithms: of all yields of a year alike, of each field,
 * and of what is expected of a field at all; of the price as a share; how the price meets a full crop; and of the weather, which
 * moves the crop and what the crowns carry into the next year. Assumed.
 */
export const ASSUMED_RISK = {
  yearSpread: 0.15,
  fieldSpread: 0.2,
  doubt: 0.1,
  priceVariation: 0.15,
  priceLink: -0.3,
  priceMemory: 0.5,
  /** Of the year's air, °C, and of its sun, a share: what the daily balance is run on, as in the study of how sure. */
  airSpread: ASSUMED.airSpread,
  sunSpread: ASSUMED.sunSpread,
} as const

/**
 * What the study of a lender's risk runs on: the plan of cash and debt as it stands, and the same under the stress that is
 * shown, on the same draws. The crop expected of a stand is that of the sheet Crop by year. Where its crowns are known the
 * daily balance carries them from year to year through weather that is drawn, cut from the opening to the close of this plan, and
 * the crop moves as the balance's does beside a run in the usual weather; in a year for which no yield is planned they are not
 * cut. What is picked of the season under way is the same in every draw, and no stress moves it: what is left to chance is what
 * still comes, at the pace so far. It goes from this season's year up to the first one that cannot be worked out. Null where
 * there is no such year, or no crowns with their weather: `whyNoRisk` says which.
 */
export function lenderRisk(
  workbook: Workbook,
  seed: number,
  assumed: Readonly<Record<keyof typeof ASSUMED_RISK, number>> = ASSUMED_RISK,
): RiskInput | null {
  const crowns = crownsOf(workbook)
  if (crowns === null || isRefusal(crowns)) return null
  const opens = crowns.plantings[0]?.open
  const money = knownYears(workbook)
  const [first] = money
  if (opens === undefined || !first) return null
  const modelYear = modelYearOf(opens, crowns.values.Year_start)
  const usual = usualCrops(crowns, modelYear)
  const season = seasonUnderWay(workbook, first.kg > 0 ? first.sales / first.kg : 0)
  const stands = standsOf(workbook, money)
  const fields = (times: number): readonly RiskField[] =>
    stands.map(({name, ground, isStanding, area, years}) => {
      const own = isStanding ? crowns.plantings.find(({planting}) => planting === ground) : undefined
      const [open, close] = own ? [own.open - modelYear.first, own.close - modelYear.first] : [0, -1]
      // A planting that is not cut this season has no dates to be cut by in later ones.
      const cuts =
        own && close >= open
          ? years.map(({isThere, kg}) => (isThere ? {open, close: kg > 0 ? close : open - 1} : null))
          : []
      const crops = own ? usual(own, cuts) : []
      const left = isStanding && years[0]?.isThere ? season?.toCome.get(ground) : undefined
      return {
        name,
        area,
        crowns: {structure: own?.structure ?? 0, reserve: own?.reserve ?? 0},
        doubt: assumed.doubt,
        years: years.map((planned, year): FieldYear => {
          const kg = times * (year === 0 && left !== undefined ? left / area : planned.kg)
          const [cut, crop] = [cuts[year], crops[year] ?? 0]
          if (!cut) return {kg}
          return crop < LEAST_CARRIED ? {...cut, kg} : {...cut, factor: kg / crop}
        }),
      }
    })
  const shown = valueNamed(workbook, "Stress_shown")
  const stress = rowsOf(workbook, "stress set").find((row) => row.word("stress set") === shown)
  const by = (part: "yield" | "price" | "costs" | "rates") => stress?.number(`stress ${part}`) ?? 0
  const cash = numberNamed(workbook, "Cash_start")
  const plan = (name: string, change: Change): RiskPlan => ({
    name,
    fields: fields(1 + change.yield),
    years: money.map((year, number) =>
      riskYear(year, change, assumed.priceVariation, number === 0 ? season : null),
    ),
    cash: cash ?? 0,
  })
  const {yearSpread, fieldSpread, priceLink, priceMemory, airSpread, sunSpread} = assumed
  return {
    firstYear: first.year,
    plans: [
      plan("plan", {yield: 0, price: 0, costs: 0, rates: 0}),
      ...(stress
        ? [
            plan("stress", {
              yield: by("yield"),
              price: by("price"),
              costs: by("costs"),
              rates: by("rates"),
            }),
          ]
        : []),
    ],
    climate: crowns.climate,
    modelYear,
    values: crowns.values,
    airSpread,
    sunSpread,
    fernLoss: null,
    yearSpread,
    fieldSpread,
    priceLink,
    priceMemory,
    seed,
  }
}

/** Changes as shares; of rates in points of what is owed. */
interface Change {
  readonly yield: number
  readonly price: number
  readonly costs: number
  readonly rates: number
}

interface YearMoney {
  readonly year: number
  readonly kg: number
  readonly sales: number
  readonly picking: number
  /** Field and fixed costs, which a stress of costs moves. */
  readonly own: number
  /** All that takes from the capacity and does not follow the crop. */
  readonly costs: number
  readonly due: number
  readonly owed: number
}

/** Why there is no study of a workbook, in sentences. */
export function whyNoRisk(workbook: Workbook): string {
  const [first] = rowsOf(workbook, "cash year")
  const year = first?.number("cash year") ?? null
  if (!first || year === null) return "There are no years of cash and debt yet: the season is not known."
  if (!moneyOf(first)) {
    const fault = (["capacity", "due"] as const)
      .map((part) => workbook.valueAt(first.cells[part]!))
      .find(isFault)
    return `Cash and debt of ${year} cannot be worked out, and the study begins there${fault ? `. ${sentenceOf(fault)}.` : "."}`
  }
  const crowns = crownsOf(workbook)
  if (isRefusal(crowns)) return `The study runs the crowns through the weather. ${crowns.refused}.`
  return "The study needs a planting with root samples: it carries the crowns from year to year."
}

/** The years of cash and debt from this season's up to the first one that cannot be worked out: no year is felt in the next across a gap. */
function knownYears(workbook: Workbook): readonly YearMoney[] {
  const years = rowsOf(workbook, "cash year").map(moneyOf)
  const end = years.indexOf(null)
  return years.slice(0, end < 0 ? years.length : end).filter((one) => one !== null)
}

function moneyOf(row: Row): YearMoney | null {
  const [year, capacity, due] = [row.number("cash year"), row.number("capacity"), row.number("due")]
  if (year === null || capacity === null || due === null) return null
  const [sales, picking] = [row.number("cash sales") ?? 0, row.number("cash picking") ?? 0]
  return {
    year,
    kg: (row.number("cash crop") ?? 0) * 1000,
    sales,
    picking,
    own: (row.number("cash field") ?? 0) + (row.number("cash fixed") ?? 0),
    costs: sales - picking - capacity,
    due,
    owed: row.number("owed before") ?? 0,
  }
}

function riskYear(
  {kg, sales, picking, own, costs, due, owed}: YearMoney,
  change: Change,
  variation: number,
  season: SeasonUnderWay | null,
): RiskYear {
  const each = (money: number) => (kg > 0 ? money / kg : 0)
  const sold = season?.sold
  return {
    price: {shape: "lognormal", mean: (season?.price ?? each(sales)) * (1 + change.price), variation},
    perKg: each(picking) * (1 + change.costs),
    // What is picked has been paid for.
    costs: costs + change.costs * (own - each(picking) * (sold?.kg ?? 0)),
    due: due + owed * change.rates,
    ...(sold ? {sold} : {}),
  }
}

/** Below this crop by the balance, kg/ha, its moves say nothing of a stand's: the crop is taken as given then. Chosen. */
const LEAST_CARRIED = 300

/** First and last day of cutting, counted from the start of the model year. */
interface Cut {
  readonly open: number
  readonly close: number
}

/**
 * What the balance gives for the years of a planting in the usual weather, each on the crowns that the one before left, up to the
 * first year that it does not stand.
 */
function usualCrops({climate, values}: CrownYears, modelYear: ModelYear) {
  const drivers = driversOf(climate, modelYear, values)
  const whole = new Float64Array(modelYear.days).fill(1)
  const last = modelYear.days - 1
  return ({structure, reserve}: PlantingCrowns, cuts: readonly (Cut | null)[]): readonly number[] => {
    let crowns = {structure, reserve}
    const crops: number[] = []
    for (const cut of cuts) {
      if (cut === null) break
      const cutting = {open: cut.open, stop: cut.close + 1, fernEnd: values.Fern_end - 1}
      const course = dailyBalance(crowns, drivers, cutting, whole, values, emptyCourse(modelYear.days))
      crowns = {structure: course.structure[last]!, reserve: course.reserve[last]!}
      crops.push(course.picked[last]!)
    }
    return crops
  }
}

/** The stands with their yields year by year, kg/ha, and whether they are in the ground. */
function standsOf(workbook: Workbook, money: readonly YearMoney[]) {
  const rows = rowsOf(workbook, "stand name")
  const ahead = new Map(rowsOf(workbook, "stand ground").map((row) => [row.word("stand"), row]))
  const names = [...new Set(rows.map((row) => row.word("stand name")).filter(Boolean))]
  return names.map((name) => {
    const own = rows.filter((row) => row.word("stand name") === name)
    const inYear = (year: number) => own.find((row) => row.number("stand year") === year)
    return {
      name,
      ground: ahead.get(name)?.word("stand ground") ?? name,
      /** In the ground now; one that is yet to be planted has no crowns. */
      isStanding: (ahead.get(name)?.number("stand replanted") ?? null) === null,
      area: Math.max(0, ...own.map((row) => row.number("stand area") ?? 0)),
      years: money.map(({year}) => {
        const row = inYear(year)
        return {kg: row?.number("stand yield") ?? 0, isThere: (row?.number("stand area") ?? 0) > 0}
      }),
    }
  })
}
