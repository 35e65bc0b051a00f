import {expect, it} from "vitest"
import {daysMoved, mending} from "../../src/studies/mending"
import {dayOf} from "../../functions/calendar"
import {farm, inPlan} from "../editor/farm"
import {column, documentOf, sheet} from "../workbook/documents"

const enter = (address: string, content: number | string) =>
  ({type: "enter", cells: [{at: inPlan(address), content}]}) as const
const day = (iso: string) => dayOf(iso)!

it("tells what each edit by itself moves, and leaves the document as it was", () => {
  const before = structuredClone(farm)
  const moved = mending({
    document: farm,
    edits: [enter("C1", 7), enter("F1", 400), enter("B2", "2026-04-21")],
  })
  expect(moved.map((one) => one!.closes)).toEqual([
    // A week more than the six that close it on 30 May.
    [{planting: "Long Acre", was: day("2026-05-30"), now: day("2026-06-06")}],
    [],
    [{planting: "Well Field", was: day("2026-05-25"), now: day("2026-05-26")}],
  ])
  expect(moved.map((one) => daysMoved(one!))).toEqual([7, 0, 1])
  expect(farm).toEqual(before)
})

it("takes a close that comes to be known for more than one that moves, and a crop alone for less than a day", () => {
  expect(
    daysMoved({closes: [{planting: "a", was: null, now: 46_000}], crop: {was: 0, now: 5}}),
  ).toBeGreaterThan(30)
  const crop = daysMoved({closes: [], crop: {was: 1000, now: 1100}})
  expect(crop).toBeGreaterThan(0)
  expect(crop).toBeLessThan(1)
  expect(daysMoved({closes: [], crop: {was: 1000, now: 1000.1}})).toBe(0)
})

it("tells nothing of a workbook without a plan", () => {
  const document = documentOf(sheet("Only", [column("Kg")], [[1]]))
  expect(
    mending({document, edits: [{type: "enter", cells: [{at: {sheet: 0, row: 0, col: 0}, content: 2}]}]}),
  ).toEqual([null])
})
