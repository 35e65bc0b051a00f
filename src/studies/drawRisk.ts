import type {Crowns} from "../../functions/root/dailyBalance"
import {balanceRuns} from "./balanceRuns"
import {drawn, type Distribution} from "./distribution"
import {driversAt, hurtFern, sharedYears, weatherChanges, type YearsByChance} from "./sharedYears"
import {weatherTable} from "./weatherTable"
import {yieldFactors} from "./yieldFactors"

/**
 * What a field is to bear in one year before chance. With a first and a last day of cutting, counted from the start of the model
 * year, its crowns live through the year in the daily balance; the day before the first one is a year without cutting.
 */
export type FieldYear =
  /** The balance's crop times `factor` (record, age, plants alive). */
  | {readonly open: number; readonly close: number; readonly factor: number}
  /** A saleable crop that is given, kg/ha. */
  | {readonly open: number; readonly close: number; readonly kg: number}
  /** The same of a field without known crowns, as a young stand by its age curve, or 0 while there is none. */
  | {readonly kg: number}

export interface RiskField {
  /** Its draws belong to its name: the same in every plan, whatever other fields there are. */
  readonly name: string
  /** ha */
  readonly area: number
  /** At the start of its first year with days of cutting. The store is carried on from each such year to the next. */
  readonly crowns: Crowns
  /** How far its expected yield may be off in all years alike, a deviation of logarithms. */
  readonly doubt: number
  readonly years: readonly FieldYear[]
}

/** The farm's money in one year. */
export interface RiskYear {
  /** Price of a saleable kg. */
  readonly price: Distribution
  /** Picking, hauling, packing and selling of a saleable kg. */
  readonly perKg: number
  /** Cash costs that do not follow the crop, taxes and living, less income from off the farm. */
  readonly costs: number
  /** Principal and interest of loans of more than a year. */
  readonly due: number
  /** Of a year under way: what is picked already, kg, and the money for it, the same in every draw. Fields bear the rest. */
  readonly sold?: {readonly kg: number; readonly sales: number}
}

/** One way to go on: which fields are cut for how long, which are replanted, which loan is taken. */
export interface RiskPlan {
  readonly name: string
  readonly fields: readonly RiskField[]
  readonly years: readonly RiskYear[]
  /** Cash at the start. */
  readonly cash: number
}

/** What a study of a farm's risk runs on. */
export interface RiskInput extends YearsByChance {
  /** The first plan is the one that the others are compared with. All have as many years. */
  readonly plans: readonly RiskPlan[]
  /** Of each field's yields by itself, a deviation of logarithms. */
  readonly fieldSpread: number
}

/** The draws from `from` up to `to`; in each list plan by plan, year by year, draw by draw. */
export interface RiskPart {
  readonly from: number
  readonly count: number
  /** Saleable crop of the farm, kg. */
  readonly kg: Float64Array
  /** Money for it. */
  readonly sales: Float64Array
}

/**
 * Runs some of the draws. A draw depends on the seed and its number alone, so any way of sharing them gives the same.
 *
 * A year's yield of a field is what the balance or the plan gives times exp(s), where s adds the effects of the year, of the
 * field in it and of the doubt about the field, less half their variances, so that its mean is what was planned. The price
 * meets the effect of the year at the correlation `priceLink` (normal scores). Each draw has weather of its own, which moves
 * cutting and refilling, and may lose its fern; what that leaves in the store goes into the next year. The effects on the
 * yield do not: they are spears lost or left after the sugar was spent, or ground that bears more or less. Where the weather
 * differs from draw to draw the years are read from a table of each season (`weatherTable.ts`).
 */
export function drawRisk(
  input: RiskInput,
  from: number,
  to: number,
  done: (share: number) => void = () => {},
): RiskPart {
  const {plans, modelYear, values} = input
  const count = to - from
  const years = plans[0]!.years.length
  if (plans.some((plan) => [plan, ...plan.fields].some((one) => one.years.length !== years)))
    throw new RangeError(`All plans and fields must have ${years} years`)
  const kg = new Float64Array(plans.length * years * count)
  const sales = new Float64Array(kg.length)
  const sharedIn = sharedYears(input, years)
  const fields = plans.flatMap((plan, number) =>
    plan.fields.map((field) => ({...field, chance: `${field.doubt} ${field.name}`, plan: number})),
  )
  const {ofFields, crops} = balanceRuns(fields, modelYear.days, values, (season) =>
    weatherChanges(input)
      ? weatherTable({
          ...season,
          values,
          driversAt: (scores) => driversAt(input, scores),
          hurt: input.fernLoss && hurtFern(input.fernLoss, modelYear.days),
        })
      : null,
  )
  const prices = plans.map((plan) => plan.years.map(({price}) => drawn(price)))
  // A field of several plans has the same chances in all of them.
  const chances = new Map(
    fields.map(({chance, name, doubt}) => [chance, yieldFactors(input, name, doubt, years)]),
  )
  for (let row = 0; row < count; row++) {
    const draw = from + row
    const shared = sharedIn(draw)
    const cropOf = crops(shared)
    const place = (plan: number, year: number) => (plan * years + year) * count + row
    const factors = new Map([...chances].map(([chance, of]) => [chance, of(draw, shared.yields)]))
    for (const [number, field] of fields.entries()) {
      const times = factors.get(field.chance)!
      for (const [year, planned] of field.years.entries()) {
        const perHectare = "kg" in planned ? planned.kg : planned.factor * cropOf[ofFields[number]![year]!]!
        kg[place(field.plan, year)]! += field.area * perHectare * times[year]!
      }
    }
    for (const [plan, ofYears] of prices.entries())
      for (const [year, price] of ofYears.entries()) {
        const at = place(plan, year)
        const {sold} = plans[plan]!.years[year]!
        sales[at] = kg[at]! * price.at(shared.prices[year]!) + (sold?.sales ?? 0)
        kg[at]! += sold?.kg ?? 0
      }
    if (row % 100 === 99) done((row + 1) / count)
  }
  return {from, count, kg, sales}
}
