import type {BestYear} from "./bestCourse"
import type {PlantingWeeks} from "./bestWeeks"

/** How sums are written, with their units: as the screen has them, or metric for a sheet. */
export interface MoneyWords {
  perHa(sum: number): string
  perKg(sum: number): string
}

const METRIC: MoneyWords = {
  perHa: (sum) => `${Math.round(sum)} money/ha`,
  perKg: (sum) => `${sum.toFixed(2)} money/kg`,
}

/** Why a season is best as long as it is, as a sentence. */
export function whyWeeks({age, weeks, why, nextWeek}: BestYear, {perHa, perKg} = METRIC): string {
  if (why === "last season")
    return `Cleared after this season: what the roots keep is worth nothing, so it is cut to the technical limit, ${weeksOf(weeks)}.`
  if (why === "last season, price")
    return `Cleared after this season: what the roots keep is worth nothing, and after ${weeksOf(weeks)} a further one no longer pays its picking.`
  if (why === "most weeks") return `The most weeks of your table at age ${age}: ${weeksOf(weeks)}.`
  if (why === "price" || !nextWeek)
    return `After ${weeksOf(weeks)} a further one does not pay its own picking.`
  return (
    `After ${weeksOf(weeks)} a further one takes ${perHa(nextWeek.cost)} from later seasons: ` +
    `it pays from a price of ${perKg(nextWeek.stopPrice)} packed.`
  )
}

/**
 * Why a planting is cleared after the season that it is: what a year sooner and a year later are worth less, each with the weeks
 * that are best for it. Empty where it is cleared now.
 */
export function whyYear(
  {keep, years, replaceAge, age, isAtEnd}: PlantingWeeks,
  season: number,
  {perHa} = METRIC,
): string {
  const kept = years.length
  if (kept === 0) return ""
  const last = season + replaceAge - age - 1
  if (isAtEnd) return `The oldest age allowed ends it after ${last}: with more ages, longer may be better.`
  const less = (other: number) =>
    keep[other] === undefined ? null : perHa(Math.max(0, keep[kept]! - keep[other]))
  const [sooner, later] = [less(kept - 1), less(kept + 1)]
  return `Cleared after ${last}: a year sooner is worth ${sooner} less${later === null ? "" : `, a year later ${later} less`}.`
}

const weeksOf = (weeks: number) => `${weeks} week${weeks === 1 ? "" : "s"}`
