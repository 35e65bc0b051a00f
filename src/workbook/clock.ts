export const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"]

/** "2026-05-25": the day on the clock of this device. */
export const isoDate = (at: Date) =>
  [at.getFullYear(), at.getMonth() + 1, at.getDate()].map((part) => String(part).padStart(2, "0")).join("-")

/** "25 May 2026": the same with the month in letters. */
export const dateWords = (at: Date) => `${at.getDate()} ${MONTHS[at.getMonth()]} ${at.getFullYear()}`

/** "14:02": the time on the clock of this device. */
export const isoTime = (at: Date) => at.toTimeString().slice(0, 5)

/** "14:02:31", likewise. */
export const isoSecond = (at: Date) => at.toTimeString().slice(0, 8)
