import {expect, it} from "vitest"
import {
  addFieldRow,
  agreePlan,
  closeToFern,
  moveClose,
  takeFieldRowBack,
  takeWeek,
} from "../../src/editor/commands/season"
import {createStore} from "../../src/editor/store"
import {planOf} from "../../src/workbook/plan"
import {column, documentOf, sheet} from "../workbook/documents"

const farm = documentOf(
  sheet(
    "Season plan",
    [
      column("Planting", {part: "planting"}),
      column("Open", {format: "date", part: "open"}),
      column("Close", {format: "date", part: "close"}),
      column("Held by", {part: "held by"}),
      column("Crop", {unit: "t", part: "crop"}),
    ],
    [
      ["Long Acre", "2026-04-25", "2026-06-06", "reserve", 24.1234567],
      ["Top Corner", null, "not cut", "young", 0],
    ],
  ),
  sheet(
    "Agreed plan",
    [
      column("Planting", {part: "agreed planting"}),
      column("Agreed on", {format: "date", part: "agreed on"}),
      column("Open", {format: "date", part: "agreed open"}),
      column("Close", {format: "date", part: "agreed close"}),
      column("Held by", {part: "agreed held by"}),
      column("Crop", {part: "agreed crop"}),
      column("Now", {formula: "=1"}),
    ],
    [["Long Acre", "2026-03-01", null, null, null, null, "="]],
  ),
  sheet(
    "This week",
    [
      column("Planting", {part: "week planting"}),
      column("Close last week", {format: "date", part: "close last week"}),
      column("Held by", {part: "held by last week"}),
    ],
    [
      ["Long Acre", null, null],
      ["Top Corner", null, null],
    ],
  ),
  sheet(
    "Plantings",
    [
      column("Planting", {part: "name of planting"}),
      column("Closed", {format: "date", part: "closed"}),
      column("Why", {part: "why closed"}),
    ],
    [["Long Acre", null, null]],
  ),
  sheet(
    "Pickings",
    [
      column("Planting", {part: "picking planting"}),
      column("Day", {format: "date", part: "picking day"}),
      column("Weight", {part: "picking weight"}),
      column("A hectare", {formula: "=C1/2"}),
    ],
    [],
  ),
)
const rows = (store: ReturnType<typeof createStore>, name: string) =>
  store.getState().document.sheets.find((one) => one.name === name)!.rows

it("agrees the plan as it stands, in the rows there are and new ones, in one step", () => {
  const store = createStore(farm)
  store.run(agreePlan(planOf(store.workbook)!, "2026-03-14"))
  expect(rows(store, "Agreed plan")).toEqual([
    ["Long Acre", "2026-03-14", "2026-04-25", "2026-06-06", "reserve", 24.123, "="],
    ["Top Corner", "2026-03-14", null, "not cut", "young", 0, "="],
  ])
  expect(store.getState().undoable.map(({name}) => name)).toEqual(["plan agreed"])
  expect(store.canRun(agreePlan(planOf(store.workbook)!, "2026-03-14"))).toBe(false)
})

it("takes the plan for this week's, so that what moves is told against it", () => {
  const store = createStore(farm)
  store.run(takeWeek(planOf(store.workbook)!))
  expect(rows(store, "This week")).toEqual([
    ["Long Acre", "2026-06-06", "reserve"],
    ["Top Corner", null, "young"],
  ])
})

it("closes a planting to fern with its reason", () => {
  const store = createStore(farm)
  store.run(closeToFern("Long Acre", "2026-06-04", " crew short "))
  expect(rows(store, "Plantings")).toEqual([["Long Acre", "2026-06-04", "crew short"]])
  expect(store.getState().undoable.at(-1)!.name).toBe("Long Acre closed to fern")
})

const mark = (digit: string) => ({
  id: digit.repeat(32),
  device: "Phone",
  entered: "2026-05-25T06:12:00.000Z",
})

const contents = {
  "picking planting": "Long Acre",
  "picking day": "2026-05-25",
  "picking weight": 1160,
} as const

it("takes back the row that was entered in the field last, then the one before it", () => {
  const store = createStore(farm)
  store.run(addFieldRow(contents, mark("a"), "picking of Long Acre"))
  store.run(addFieldRow({...contents, "picking weight": 40}, mark("b"), "picking of Long Acre"))
  expect(store.canRun(takeFieldRowBack("a".repeat(32), mark("c")))).toBe(false)
  store.run(takeFieldRowBack("b".repeat(32), mark("c")))
  expect(rows(store, "Pickings")).toEqual([["Long Acre", "2026-05-25", 1160, "="]])
  expect(store.getState().document.field).toHaveLength(3)
  store.run(takeFieldRowBack("a".repeat(32), mark("d")))
  expect(rows(store, "Pickings")).toEqual([])
})

it("adds a row from the field under the columns of its parts", () => {
  const store = createStore(farm)
  store.run(addFieldRow(contents, mark("a"), "picking of Long Acre"))
  store.run(addFieldRow({...contents, "picking weight": 40}, mark("b"), "picking of Long Acre"))
  expect(rows(store, "Pickings")).toEqual([
    ["Long Acre", "2026-05-25", 1160, "="],
    ["Long Acre", "2026-05-25", 40, "="],
  ])
})

it("does nothing in a workbook that has no such sheet", () => {
  const store = createStore(documentOf(sheet("Plan", ["A"], [[1]])))
  expect(store.canRun(closeToFern("Long Acre", "2026-06-04", ""))).toBe(false)
  expect(store.canRun(addFieldRow({"picking planting": "Long Acre"}, mark("a"), "picking"))).toBe(false)
})

it("moves a close along the calendar as one step for each movement, and gives it back to the limits", () => {
  const plan = documentOf(
    sheet(
      "Season plan",
      [
        column("Planting", {part: "planting"}),
        column("Close", {format: "date", part: "close", formula: "=DATE(2026,6,6)"}),
      ],
      [["Long Acre", "="]],
    ),
  )
  const store = createStore(plan)
  const close = () => rows(store, "Season plan")[0]![1]
  store.run(moveClose(0, 46180), "", "first")
  store.run(moveClose(0, 46181), "", "first")
  expect([close(), store.getState().undoable.length]).toEqual(["2026-06-08", 1])
  store.run(moveClose(0, 46182), "", "second")
  expect(store.getState().undoable.length).toBe(2)
  store.run(moveClose(0, null), "", "third")
  expect(close()).toBe("=")
  expect(store.canRun(moveClose(0, null))).toBe(false)
  for (let i = 0; i < 3; i++) store.undo()
  expect(store.getState().document).toBe(plan)
})
