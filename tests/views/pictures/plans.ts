import {dayOf} from "../../../functions/calendar"
import type {Plan, PlanRow} from "../../../src/workbook/plan"

/** A day of 2026 as "04-27", or any day as an ISO text. */
export const day = (text: string): number => dayOf(text.length === 5 ? `2026-${text}` : text)!

type Days = Readonly<Record<string, string | null>>

/** A row of a plan; its limits stand in columns 10, 11, ... in the order given. */
export function planRow(
  row: number,
  planting: string,
  [opens, closes]: readonly [string | null, string | null],
  heldBy: string,
  limits: Days = {},
  crop: readonly [number, number?, number?] | null = null,
): PlanRow {
  return {
    row,
    planting,
    age: null,
    opens: opens === null ? null : day(opens),
    closes: closes === null ? null : day(closes),
    heldBy,
    isClosed: false,
    slack: null,
    weeks: null,
    crop: crop?.[0] ?? null,
    cropLow: crop?.[1] ?? null,
    cropHigh: crop?.[2] ?? null,
    lostInWaits: 0,
    limits: Object.entries(limits).map(([name, text], index) => ({
      name,
      day: text === null ? null : day(text),
      at: {sheet: 0, row, col: 10 + index},
    })),
    cells: {},
  }
}

export const planWith = (
  rows: readonly PlanRow[],
  asOf: string | null = null,
  daily: Plan["daily"] = [],
): Plan => ({
  sheet: 0,
  rows,
  asOf: asOf === null ? null : day(asOf),
  daily,
})

/** The same weight on each day from one to another, both counted. */
export const everyDay = (from: string, to: string, kg: number): Plan["daily"] =>
  Array.from({length: day(to) - day(from) + 1}, (_, index) => ({day: day(from) + index, kg}))

/**
 * Six weeks from Monday 27 April to Sunday 7 June 2026, 42 days: at a width of 440 px each day is 10 px wide.
 * Long Acre: 21 days, 2100 kg. Sand Piece: 35 days, 3500 kg. Row 1 of the sheet is blank.
 */
export const sixWeeks = planWith(
  [
    planRow(
      0,
      "Long Acre",
      ["04-27", "05-17"],
      "reserve",
      {reserve: "05-17", "weeks for its age": "05-21", price: null},
      [2100, 1800, 2500],
    ),
    planRow(
      2,
      "Sand Piece",
      ["05-04", "06-07"],
      "price",
      {reserve: null, "weeks for its age": null, price: "06-07"},
      [3500, 3000, 4200],
    ),
  ],
  "05-11",
  [
    ...everyDay("04-27", "05-03", 100),
    ...everyDay("05-04", "05-17", 200),
    ...everyDay("05-18", "06-07", 100),
  ],
)
