import type {CellAddress} from "./document"

/** An error as the engine gives it: its code, its sentence, and the cell where it began. */
export interface Fault {
  readonly code: string
  readonly reason: string
  readonly began: CellAddress | null
}

/** What a cell shows. A date is the number of its day (see functions/calendar.ts). */
export type Value = number | string | boolean | null | Fault

/** A worked-out value that an edit changed. */
export interface Change {
  readonly at: CellAddress
  readonly was: Value
  readonly now: Value
}

export const isFault = (value: unknown): value is Fault =>
  typeof value === "object" && value !== null && "code" in value
