/** "2026-05-25": the day on the clock of this device. */
export const isoDate = (at: Date) =>
  [at.getFullYear(), at.getMonth() + 1, at.getDate()].map((part) => String(part).padStart(2, "0")).join("-")

/** "14:02": the time on the clock of this device. */
export const isoTime = (at: Date) => at.toTimeString().slice(0, 5)
