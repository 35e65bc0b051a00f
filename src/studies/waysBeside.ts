import type {BestYear} from "./bestCourse"
import type {BestWeeksInput} from "./bestWeeksAsked"
import {mostWeeks, mostWeeksOfLast, type Field} from "./plantingSeason"

/** How a way differs from the one found. Longer seasons stay within the weeks that are allowed at their age. */
export type WayName = "as found" | "a week less" | "a week more" | "cleared sooner" | "cleared later"

/** A way to go on with a planting: the weeks of each season ahead; it is cleared after the last one, without any now. */
export interface Way {
  readonly name: WayName
  readonly weeks: readonly number[]
}

/**
 * The way found, and beside it every season a week shorter or longer, and clearing a year sooner or later with the weeks that
 * are best for that. `kept` has those by the number of seasons. A way that is the one found is left out.
 */
export function waysBeside(
  input: BestWeeksInput,
  age: number,
  field: Pick<Field, "room">,
  {years}: {readonly years: readonly Pick<BestYear, "weeks">[]},
  kept: readonly (readonly number[] | undefined)[],
): Way[] {
  const found = years.map(({weeks}) => weeks)
  const most = (year: number) =>
    year === found.length - 1 ? mostWeeksOfLast(input, field) : mostWeeks(input, field, age + year)
  const others: readonly [WayName, readonly number[] | undefined][] = [
    ["a week less", found.map((weeks) => Math.max(0, weeks - 1))],
    ["a week more", found.map((weeks, year) => Math.min(most(year), weeks + 1))],
    ["cleared sooner", kept[found.length - 1]],
    ["cleared later", kept[found.length + 1]],
  ]
  return [
    {name: "as found", weeks: found},
    ...others.flatMap(([name, weeks]) => (weeks && weeks.join() !== found.join() ? [{name, weeks}] : [])),
  ]
}
