import {expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {lastDayCut} from "../../src/workbook/season"

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
