import type {BestYear} from "./bestCourse"

/** Why a season is best as long as it is, as a sentence. */
export function whyWeeks({age, weeks, why, nextWeek}: BestYear): string {
  if (why === "last season")
    return `Cleared after this season: what the roots keep is worth nothing, so it is cut to the technical limit, ${weeksOf(weeks)}.`
  if (why === "last season, price")
    return `Cleared after this season: what the roots keep is worth nothing, and after ${weeksOf(weeks)} a further one no longer pays its picking.`
  if (why === "most weeks") return `The most weeks of your table at age ${age}: ${weeksOf(weeks)}.`
  if (why === "price" || !nextWeek)
    return `After ${weeksOf(weeks)} a further one does not pay its own picking.`
  return (
    `After ${weeksOf(weeks)} a further one takes ${Math.round(nextWeek.cost)} money/ha from later seasons: ` +
    `it pays from a price of ${nextWeek.stopPrice.toFixed(2)} money/kg packed.`
  )
}

const weeksOf = (weeks: number) => `${weeks} week${weeks === 1 ? "" : "s"}`
