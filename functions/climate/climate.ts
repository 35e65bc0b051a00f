import {dayOfYear, type ModelYear} from "../calendar"
import {readOnce, remembering} from "../memo"
import {isRange, shown, type Held, type Parameter} from "../parameters"
import {isWithin, limitsInWords, withUnit, type Limits, type Unit} from "../quantity"
import {isRefusal, notYet, outOfRange, wrongKind, type Refusal} from "../refusal"
import {monthlyToDays} from "./monthlyToDays"

/** The weather of one year from 1 January, one value a day: 365 of them, or 366. */
export interface Climate {
  /** Mean air temperature, °C. */
  readonly air: Float64Array
  /** Mean soil temperature at crown depth, °C. */
  readonly soil: Float64Array
  /** Solar radiation, MJ/m²/day. */
  readonly sun: Float64Array
}

const COLUMNS: readonly {readonly what: string; readonly unit: Unit; readonly limits: Limits}[] = [
  {what: "air temperature", unit: "°C", limits: {min: -60, max: 60}},
  {what: "soil temperature", unit: "°C", limits: {min: -40, max: 50}},
  {what: "solar radiation", unit: "MJ/m²/day", limits: {min: 0, max: 50}},
]

/**
 * The climate of a site: 12 rows, January to December, or 365 or 366 rows a day from 1 January; three columns, mean air
 * temperature °C, mean soil temperature at crown depth °C, solar radiation MJ/m²/day. Months become days by
 * `monthlyToDays`.
 */
export const climateRange: Parameter<Climate> = {
  label: "Climate",
  unit: "°C, °C, MJ/m²/day",
  takes: "12 monthly or 365 daily rows of three columns: mean air and soil temperature, solar radiation",
  isRange: true,
  read: (given) => (isRange(given) ? readClimate(given) : wrongShape()),
}

const wrongShape = () =>
  wrongKind("Climate must be a range of three columns: mean air and soil temperature, solar radiation")

const readClimate = readOnce((rows: readonly (readonly Held[])[]): Climate | Refusal => {
  if (rows.some((row) => row.length !== 3)) return wrongShape()
  if (![12, 365, 366].includes(rows.length))
    return wrongKind(`Climate must have 12 monthly rows or 365 daily ones, not ${rows.length}`)
  const numbers: number[] = []
  for (const [i, row] of rows.entries())
    for (const [j, held] of row.entries()) {
      const number = readEntry(held, i, j, rows.length === 12)
      if (isRefusal(number)) return number
      numbers.push(number)
    }
  return remembered(numbers, () => climateOf(numbers))
})

/** Monthly normals as they can be typed into a formula, for the examples of the help (an invented site). */
export const EXAMPLE_CLIMATE =
  "{0.6,3.6,4.4;1.5,3,7.1;4.5,4.2,11.1;9.1,7,15.4;13.9,10.6,18.8;17.6,14,20.4;" +
  "19.3,16.4,19.7;18.5,17,16.8;15.4,15.7,12.8;10.8,12.9,8.5;6,9.3,5.1;2.3,5.9,3.6}"

const remembered = remembering<Climate>(20)

/** A climate from its numbers, row by row: the same numbers give the same object again, while it is remembered. */
function climateOf(numbers: readonly number[]): Climate {
  const column = (j: number) => Float64Array.from({length: numbers.length / 3}, (_, i) => numbers[3 * i + j]!)
  const days = (j: number) => (numbers.length === 36 ? monthlyToDays(column(j)) : column(j))
  return {air: days(0), soil: days(1), sun: days(2)}
}

function readEntry(held: Held, row: number, col: number, monthly: boolean): number | Refusal {
  const {what, unit, limits} = COLUMNS[col]!
  const place = `Climate, ${monthly ? "month" : "day"} ${row + 1}: ${what}`
  if (held === null) return notYet(`${place} is not measured yet`)
  if (typeof held !== "number") return wrongKind(`${place} must be a number, not ${shown(held)}`)
  if (isWithin(held, limits)) return held
  return outOfRange(`${place} must be ${limitsInWords({unit, limits})}, not ${withUnit(held, unit)}`)
}

/**
 * One column of a climate laid along a model year. A day of the calendar takes the row of its number in its own year;
 * where the rows end a day early, the last one stands for the 366th day.
 */
export function alongYear(days: Float64Array, {first, days: length}: ModelYear): Float64Array {
  const along = new Float64Array(length)
  for (let i = 0, number = dayOfYear(first); i < length; i++, number++) {
    if (number > 365 && dayOfYear(first + i) === 1) number = 1
    along[i] = days[Math.min(number, days.length) - 1]!
  }
  return along
}
