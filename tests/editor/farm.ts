import {createStore, type Store} from "../../src/editor/store"
import {column, documentOf, sheet} from "../workbook/documents"

/**
 * Two plantings whose close is so many weeks after the opening, with a crew that leaves ten days later: Long Acre
 * opens on 18 Apr 2026 and closes six weeks, 42 days, later on 30 May; Well Field on 20 Apr, 35 days, 25 May.
 */
export const farm = documentOf(
  sheet("Read me", [column("Subject", {format: "text"})], [["About"]]),
  sheet(
    "Season plan",
    [
      column("Planting", {format: "text", part: "planting"}),
      column("Open", {format: "date"}),
      column("Weeks", {format: 0, rule: {least: 0, most: 12}}),
      column("Close", {formula: "=B1+C1*7", format: "day", part: "close"}),
      column("crew", {formula: "=D1+10", format: "day", part: "limit"}),
      column("Sugar", {unit: "mg/g", kind: "measured", format: 0}),
    ],
    [
      ["Long Acre", "2026-04-18", 6, "=", "=", 409],
      ["Well Field", "2026-04-20", 5, "=", "=", null],
    ],
  ),
  sheet(
    "Named values",
    ["Name", "Value"],
    [
      ["As_of", "2026-05-02"],
      ["Rate", 0.95],
    ],
    {names: true},
  ),
)

export const PLAN = 1

/** A cell of the plan by its address as in a formula. */
export const inPlan = (address: string) => ({
  sheet: PLAN,
  row: Number(address.slice(1)) - 1,
  col: address.charCodeAt(0) - 65,
})

export const farmStore = (): Store => createStore(farm)

/** The content of a cell of the plan. */
export const planContent = (store: Store, address: string) => {
  const {row, col} = inPlan(address)
  return store.getState().document.sheets[PLAN]!.rows[row]?.[col] ?? null
}
