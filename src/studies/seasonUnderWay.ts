import {numberNamed} from "../workbook/names"
import {rowsOf} from "../workbook/season"
import type {Workbook} from "../workbook/workbook"

/** A season of which some is picked. Crops in kg as harvested, prices for one of them. */
export interface SeasonUnderWay {
  /** Picked before As_of, and the money for it at the prices of the weeks it was picked in. */
  readonly sold: {readonly kg: number; readonly sales: number}
  /** Of each planting with a picking on record: what the plan still has from As_of on, at its pace so far. */
  readonly toCome: ReadonlyMap<string, number>
  /** Mean price of what the plan still has. */
  readonly price: number
}

/**
 * The season whose pickings the workbook records, or null before the first. The prices of its weeks are moved together so that
 * the plan's whole season brings `meanPrice`, which is theirs unless it was typed over.
 */
export function seasonUnderWay(workbook: Workbook, meanPrice: number): SeasonUnderWay | null {
  const asOf = numberNamed(workbook, "As_of")
  const begun = rowsOf(workbook, "pick planting").flatMap((row) => {
    const kg = row.number("picked so far") ?? 0
    return kg > 0 ? [{planting: row.word("pick planting"), kg, toCome: row.number("pick to come") ?? 0}] : []
  })
  if (asOf === null || !begun.length) return null
  const weeks = weeksIn(workbook)
  const planned = meanOf(weeks)
  const priced = (price: number | null) =>
    price !== null && planned ? (price / planned) * meanPrice : meanPrice
  const pickings = rowsOf(workbook, "picking planting").flatMap((row) => {
    const [day, kg] = [row.number("picking day") ?? 0, row.number("picking weight") ?? 0]
    return day > asOf - YEAR && day < asOf ? [{planting: row.word("picking planting"), day, kg}] : []
  })
  const sales = begun.map(({planting, kg}) => {
    const own = weeks.filter((week) => week.planting === planting)
    const weekOf = (day: number) => own.findLast(({from}) => from <= day) ?? own[0]
    const sold = pickings.flatMap((one) => {
      const price = one.planting === planting ? weekOf(one.day)?.price : undefined
      return price === undefined ? [] : [{kg: one.kg, price}]
    })
    return kg * priced(meanOf(sold))
  })
  const left = weeks.map(({from, kg, price}) => ({
    kg: kg * Math.min(1, Math.max(0, (from + 7 - asOf) / 7)),
    price,
  }))
  return {
    sold: {kg: sumOf(begun.map(({kg}) => kg)), sales: sumOf(sales)},
    toCome: new Map(begun.map(({planting, toCome}) => [planting, toCome])),
    price: priced(meanOf(left)),
  }
}

/** Days within which a picking is of this season. */
const YEAR = 365

/** The weeks of the plan that have a price, each planting's in their order. */
const weeksIn = (workbook: Workbook) =>
  rowsOf(workbook, "sale planting").flatMap((row) => {
    const [from, price] = [row.number("sale from"), row.number("sale price")]
    if (from === null || price === null) return []
    return [{planting: row.word("sale planting"), from, kg: row.number("sale crop") ?? 0, price}]
  })

const sumOf = (all: readonly number[]) => all.reduce((sum, one) => sum + one, 0)

/** Mean price by weight; null where nothing weighs. */
function meanOf(parts: readonly {readonly kg: number; readonly price: number}[]): number | null {
  const kg = sumOf(parts.map((one) => one.kg))
  return kg > 0 ? sumOf(parts.map((one) => one.kg * one.price)) / kg : null
}
