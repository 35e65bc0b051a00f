import type {Column, Content, Document, Sheet} from "../../src/workbook/document"

/** A column that is typed unless `more` says otherwise; worked out when it has a formula. */
export const column = (heading: string, more: Partial<Column> = {}): Column => ({
  heading,
  kind: more.formula === undefined ? "typed" : "worked out",
  ...more,
})

/** A sheet; columns given as words alone are typed columns of that heading. */
export const sheet = (
  name: string,
  columns: readonly (Column | string)[],
  rows: readonly (readonly Content[])[],
  more: Partial<Sheet> = {},
): Sheet => ({
  name,
  group: "Trial",
  columns: columns.map((one) => (typeof one === "string" ? column(one) : one)),
  rows,
  ...more,
})

export const documentOf = (...sheets: Sheet[]): Document => ({name: "Trial", season: "Season 2026", sheets})

/** The address of a cell written as in a formula: on the first sheet unless a number stands before, as in "1!B3". */
export function cellAt(text: string): {sheet: number; row: number; col: number} {
  const [, index = "0", letter, digits] = /^(?:(\d+)!)?([A-Z])(\d+)$/.exec(text)!
  return {sheet: Number(index), row: Number(digits) - 1, col: letter!.charCodeAt(0) - 65}
}

/** Numbers from 0 up to 1 that are the same for one seed, so that a failure can be run again. */
export function seeded(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32
  }
}
