import {yearOf} from "../../../functions/calendar"

/** The Monday on or before a day. Day 2 of the calendar, 1900-01-01, was a Monday. */
export const mondayOf = (day: number): number => day - ((((day - 2) % 7) + 7) % 7)

/** The week number of ISO 8601: weeks begin on Monday, and week 1 holds the first Thursday of its year. */
export function isoWeekOf(day: number): number {
  const thursday = mondayOf(day) + 3
  const year = yearOf(thursday)
  let first = thursday
  while (yearOf(first - 7) === year) first -= 7
  return 1 + (thursday - first) / 7
}
