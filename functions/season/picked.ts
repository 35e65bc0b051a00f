import {defineFunction, type Refusal} from "../define"
import {date, everyDay, everyNumber, everyWord, optional, word} from "../parameters"
import {outOfRange, wrongKind} from "../refusal"
import {isoOf} from "../calendar"

/** Weights on record by planting, each with its days in rising order and the sum up to each of them. */
type Record = ReadonlyMap<string, {readonly days: readonly number[]; readonly sums: readonly number[]}>

/**
 * Weight picked from one day through another, kg, of one planting or of all. A row without a day or a weight takes no part.
 * Refuses an end before the beginning, and ranges of different sizes.
 */
export function picked(
  plantings: readonly string[],
  days: readonly (number | null)[],
  weights: readonly (number | null)[],
  from: number,
  until: number,
  planting: string | null,
): number | Refusal {
  if (until < from) return outOfRange(`The last day ${isoOf(until)} is before the first, ${isoOf(from)}`)
  if (plantings.length !== days.length || days.length !== weights.length)
    return wrongKind(
      `The ranges of the pickings have ${plantings.length}, ${days.length} and ${weights.length} cells: sizes differ`,
    )
  const record = recordOf(plantings, days, weights)
  const one = record.get(planting === null ? ALL : planting.toLowerCase())
  return one ? sumBy(one, until) - sumBy(one, from - 1) : 0
}

const ALL = "\n" // no planting is called so

function sumBy(
  {days, sums}: {readonly days: readonly number[]; readonly sums: readonly number[]},
  day: number,
): number {
  let [low, high] = [0, days.length] // the first place whose day is later lies between
  while (low < high) {
    const middle = (low + high) >> 1
    if (days[middle]! <= day) low = middle + 1
    else high = middle
  }
  return low === 0 ? 0 : sums[low - 1]!
}

/** The record of a range of weights; put in order once, as long as the ranges hold the same. */
function recordOf(
  plantings: readonly string[],
  days: readonly (number | null)[],
  weights: readonly (number | null)[],
): Record {
  const found = held.get(weights)
  if (found && found.plantings === plantings && found.days === days) return found.record
  const rows = new Map<string, {day: number; kg: number}[]>()
  for (const [row, name] of plantings.entries()) {
    const [day, kg] = [days[row], weights[row]]
    if (day === null || day === undefined || kg === null || kg === undefined) continue
    for (const key of [name.toLowerCase(), ALL]) {
      const list = rows.get(key)
      if (list) list.push({day, kg})
      else rows.set(key, [{day, kg}])
    }
  }
  const record = new Map(
    [...rows].map(([key, list]) => {
      list.sort((a, b) => a.day - b.day)
      let sum = 0
      return [key, {days: list.map(({day}) => day), sums: list.map(({kg}) => (sum += kg))}]
    }),
  )
  held.set(weights, {plantings, days, record})
  return record
}

const held = new WeakMap<
  object,
  {readonly plantings: unknown; readonly days: unknown; readonly record: Record}
>()

export const SEASON_PICKED = defineFunction({
  name: "SEASON.PICKED",
  summary: "Weight picked from one day through another, of one planting or of all",
  about: "Reads the record of pickings once for all the cells that ask, however long it grows.",
  parameters: {
    plantings: everyWord("Plantings of the pickings"),
    days: everyDay("Days of the pickings"),
    weights: everyNumber("Weights of the pickings", "kg"),
    from: date("First day counted"),
    until: date("Last day counted"),
    planting: optional(word("The planting asked for"), null, "all"),
  },
  returns: {label: "Weight picked", unit: "kg"},
  refuses: ["a last day before the first", "ranges of different sizes"],
  sources: ["identity"],
  example: {
    formula:
      '=SEASON.PICKED({"Long Acre";"Sand Piece";"Long Acre"},{"2026-05-18";"2026-05-19";"2026-05-20"},{400;1100;390},"2026-05-18","2026-05-24","Long Acre")',
    gives: 790,
  },
  calculate: ({plantings, days, weights, from, until, planting}) =>
    picked(plantings, days, weights, from, until, planting),
})
