import {expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {lastDayCut, weekOf} from "../../src/workbook/season"
import {enter, open, place} from "../workbooks/shipped"

const day = (iso: string) => dayOf(iso)!

it("closes a planting on the last day that it was cut, not on a close that the plan has before it", () => {
  const asOf = day("2026-05-25")
  const lastDay = (close: string | null, ...picked: string[]) =>
    lastDayCut(
      {
        close: close === null ? null : day(close),
        pickedSoFar: picked.map((one) => ({day: day(one), kg: 400})),
      },
      asOf,
    )
  expect(lastDay("2026-05-03", "2026-05-01", "2026-05-24")).toBe(day("2026-05-24"))
  expect(lastDay("2026-05-11", "2026-05-09")).toBe(day("2026-05-11"))
  expect(lastDay("2026-05-29", "2026-05-24")).toBe(asOf)
  expect(lastDay(null)).toBe(asOf)
})

it("counts what was picked day by day as the sheet does, however the planting is written", () => {
  const workbook = open("hollow-brook-farm.json")
  const daysOf = () => weekOf(workbook)!.plantings.find(({planting}) => planting === "Long Acre")!.days
  const was = daysOf()
  expect(Math.max(...was)).toBeGreaterThan(0)
  const first = place(workbook.document, "Pickings", "Long Acre", "Planting")
  const rows = workbook.document.sheets[first.sheet]!.rows
  for (const [row, [name]] of rows.entries())
    if (name === "Long Acre") enter(workbook, [{...first, row}, "LONG ACRE"])
  expect(daysOf()).toEqual(was)
})
