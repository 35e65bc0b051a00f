import type {CellAddress, Note} from "../document"
import type {Edit} from "../edit"
import type {Value} from "../value"

/** What a finding is about. Where two weigh the same, the one that comes first here is listed first. */
export const RULES = [
  "error",
  "ring",
  "typed over",
  "missing planting",
  "twin name",
  "number as text",
  "odd number",
  "date outside the season",
  "picked in a wait",
  "picked after its close",
  "opened otherwise",
  "negative store",
  "picked too much",
  "range",
  "odd formula",
  "units",
  "blank in a range",
  "named value",
  "old sample",
  "no yield record",
  "replanting",
  "no source",
  "number in a formula",
] as const
export type Rule = (typeof RULES)[number]

/** Something in the workbook that needs a look. */
export interface Finding {
  readonly rule: Rule
  /** Where to look, the place to go to first. */
  readonly cells: readonly [CellAddress, ...CellAddress[]]
  /** What is the matter, without full stop. */
  readonly sentence: string
  /** What is said of several such cells of one column: "are typed over". Without it they are told one by one. */
  readonly alike?: string
  /** What the person noted at the first cell: why a number was kept, or that it was looked at. */
  readonly note?: Note
  /** An edit that would mend it, and what it is called. */
  readonly fix?: Fix
}

export interface Fix {
  readonly words: string
  readonly edit: Extract<Edit, {type: "enter"}>
}

/** How a cell and its values are told to the person; the screen brings its own words. */
export interface Words {
  /** "Close of Long Acre" */
  name(at: CellAddress): string
  /** "409 mg/g", "6 Jun 2026" */
  shown(at: CellAddress, value: Value): string
}

/** "Fern", "Fern and Crowns", "Fern, Crowns and Records". */
export const inARow = (words: readonly string[]) =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`
