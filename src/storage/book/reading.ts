import type {Book, BookName} from "./book"
import {LIMITS, Unreadable} from "./limits"
import {readXml} from "./xml"

// What the readers of both forms of book share.

/** Refuses a cell that lies too far out, or is one too many. */
export function checkPlace(sheet: string, row: number, col: number, room: {cells: number}) {
  if (row >= LIMITS.rows)
    throw new Unreadable(`${sheet} has more than ${LIMITS.rows} rows that hold something`)
  if (col >= LIMITS.columns)
    throw new Unreadable(`${sheet} has more than ${LIMITS.columns} columns that hold something`)
  if (--room.cells < 0) throw new Unreadable(`It has more than ${LIMITS.cells} cells that hold something`)
}

/** Rules for entry that are left out, in words that go on with "are left out". */
export const OTHER_RULES = "rules for entry that are not limits or words for a whole column"
export const WHOLE_NUMBERS = "rules that numbers be whole"

/** A limit of a rule for entry, where it is a number and not a formula; else null. */
export const limitIn = (text = "") =>
  /^\s*[-+]?\d{1,15}(\.\d+)?([eE][-+]?\d{1,2})?\s*$/.test(text) ? Number(text) : null

const MOST_NAMES = 5000

/** A name that cannot be taken, and why: "belongs to one sheet alone". */
export interface NameLeft {
  readonly name: string
  readonly why: string
}

/** The names of a book that are taken, and in sentences those that are not. */
export function namesTaken(names: readonly BookName[], others: readonly NameLeft[]) {
  const left = others
    .slice(0, MOST_NAMES)
    .map(({name, why}) => `The name ${name.slice(0, 60)} ${why}, so it is left out`)
  const more = [names, others].reduce((sum, {length}) => sum + Math.max(0, length - MOST_NAMES), 0)
  if (more) left.push(`${more} more of its names are left out: ${MOST_NAMES} are the most`)
  return {names: names.slice(0, MOST_NAMES), left}
}

export const OF_ONE_SHEET = "belongs to one sheet alone"

/** Gaps of an array that was filled here and there, filled. */
export const filledTo = <T>(holed: readonly T[], blank: T): T[] => Array.from(holed, (one) => one ?? blank)

/** An ISO date, with a time or without, as a day. */
export function dayIn(text: string): number | null {
  const time = Date.parse(
    /^\d{4}-\d{2}-\d{2}$/.test(text) ? `${text}T00:00:00Z` : `${text.replace(/Z$/, "")}Z`,
  )
  return Number.isNaN(time) ? null : time / 86_400_000 + 25_569 // 1970-01-01
}

/** What a book says of itself, in the terms of Dublin Core that both forms use; nothing where the part is missing. */
export function propertiesIn(
  bytes: Uint8Array | null | undefined,
): Pick<Book, "title" | "subject" | "about"> {
  const found: Record<string, string> = {}
  let element = ""
  if (bytes)
    readXml(bytes, {
      open(name) {
        element = name
      },
      words(text) {
        found[element] = ((found[element] ?? "") + text).slice(0, 500)
      },
      close() {
        element = ""
      },
    })
  return {title: found.title ?? "", subject: found.subject ?? "", about: found.description ?? ""}
}
