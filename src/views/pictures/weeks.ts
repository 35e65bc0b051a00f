import {dayOf, yearOf} from "../../../functions/calendar"

/** The Monday on or before a day. Day 2 of the calendar, 1900-01-01, was a Monday. */
export const mondayOf = (day: number): number => day - ((((day - 2) % 7) + 7) % 7)

/** The week number of ISO 8601: weeks begin on Monday, and week 1 holds the first Thursday of its year. */
export function isoWeekOf(day: number): number {
  const thursday = mondayOf(day) + 3
  const newYear = dayOf(`${String(yearOf(thursday)).padStart(4, "0")}-01-01`)!
  return 1 + Math.floor((thursday - newYear) / 7)
}
