import {modelYearOf} from "../../functions/calendar"
import {isRefusal} from "../../functions/refusal"
import {crownsOf} from "../workbook/crowns"
import {valueNamed} from "../workbook/lender"
import {rowsOf, type Row} from "../workbook/season"
import type {Workbook} from "../workbook/workbook"
import type {RiskField, RiskInput, RiskPlan, RiskYear} from "./drawRisk"

/**
 * Spreads that no workbook has records enough for, as deviations of logarithms: of all yields of a year alike, of each field,
 * and of what is expected of a field at all; of the price as a share; and how the price meets a full crop. Assumed.
 */
export const ASSUMED_RISK = {
  yearSpread: 0.15,
  fieldSpread: 0.2,
  doubt: 0.1,
  priceVariation: 0.15,
  priceLink: -0.3,
  priceMemory: 0.5,
} as const

/**
 * What the study of a lender's risk runs on: the plan of cash and debt as it stands, and the same under the stress that is
 * shown, on the same draws. Every stand's crop is that of the sheet Crop by year; the balance takes no part in it. Null where
 * the workbook has no such years, or no crowns with their weather.
 */
export function lenderRisk(
  workbook: Workbook,
  seed: number,
  assumed: Readonly<Record<keyof typeof ASSUMED_RISK, number>> = ASSUMED_RISK,
): RiskInput | null {
  const crowns = crownsOf(workbook)
  if (crowns === null || isRefusal(crowns)) return null
  const opens = crowns.plantings[0]?.open
  const money = rowsOf(workbook, "cash year").flatMap(moneyOf)
  const [first] = money
  if (opens === undefined || !first) return null
  const stands = standsOf(rowsOf(workbook, "stand name"), money)
  const fields = (times: number): readonly RiskField[] =>
    stands.map(({name, area, yields}) => ({
      name,
      area,
      crowns: {structure: 0, reserve: 0},
      doubt: assumed.doubt,
      years: yields.map((kg) => ({kg: kg * times})),
    }))
  const shown = valueNamed(workbook, "Stress_shown")
  const stress = rowsOf(workbook, "stress set").find((row) => row.word("stress set") === shown)
  const by = (part: "yield" | "price" | "costs" | "rates") => stress?.number(`stress ${part}`) ?? 0
  const cash = valueNamed(workbook, "Cash_start")
  const plan = (name: string, change: Change): RiskPlan => ({
    name,
    fields: fields(1 + change.yield),
    years: money.map((year) => riskYear(year, change, assumed.priceVariation)),
    cash: typeof cash === "number" ? cash : 0,
  })
  const {yearSpread, fieldSpread, priceLink, priceMemory} = assumed
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
    modelYear: modelYearOf(opens, crowns.values.Year_start),
    values: crowns.values,
    airSpread: 0,
    sunSpread: 0,
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

function moneyOf(row: Row): readonly YearMoney[] {
  const [year, capacity] = [row.number("cash year"), row.number("capacity")]
  if (year === null || capacity === null) return []
  const [sales, picking] = [row.number("cash sales") ?? 0, row.number("cash picking") ?? 0]
  return [
    {
      year,
      kg: (row.number("cash crop") ?? 0) * 1000,
      sales,
      picking,
      own: (row.number("cash field") ?? 0) + (row.number("cash fixed") ?? 0),
      costs: sales - picking - capacity,
      due: row.number("due") ?? 0,
      owed: row.number("owed before") ?? 0,
    },
  ]
}

function riskYear(
  {kg, sales, picking, own, costs, due, owed}: YearMoney,
  change: Change,
  variation: number,
): RiskYear {
  const each = (money: number) => (kg > 0 ? money / kg : 0)
  return {
    price: {shape: "lognormal", mean: each(sales) * (1 + change.price), variation},
    perKg: each(picking) * (1 + change.costs),
    costs: costs + own * change.costs,
    due: due + owed * change.rates,
  }
}

/** The stands with their yields year by year, kg/ha, 0 while they are not in the ground. */
function standsOf(rows: readonly Row[], money: readonly YearMoney[]) {
  const names = [...new Set(rows.map((row) => row.word("stand name")).filter(Boolean))]
  return names.map((name) => {
    const own = rows.filter((row) => row.word("stand name") === name)
    const inYear = (year: number) => own.find((row) => row.number("stand year") === year)
    return {
      name,
      area: Math.max(0, ...own.map((row) => row.number("stand area") ?? 0)),
      yields: money.map(({year}) => inYear(year)?.number("stand yield") ?? 0),
    }
  })
}
