import {expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {SEASON_CROP_BY} from "../../../functions/season/cropBy"
import {SEASON_CROP_ON} from "../../../functions/season/cropOn"
import {SEASON_PICK_ON} from "../../../functions/season/pickOn"
import {generic, number} from "../root/generic"

const OPEN = dayOf("2026-04-25")!
const CLOSE = dayOf("2026-06-19")!
const ranges = [
  [[OPEN], [OPEN]],
  [[CLOSE], [OPEN + 9]],
  [[8000], [500]],
  [[6000], [null]],
  [[6400], [null]],
  generic,
]
const by = (day: number) => number(SEASON_CROP_BY, day, ...(ranges as never as []))

it("is the sum of the days so far", () => {
  const on = Array.from({length: 21}, (_, i) => number(SEASON_CROP_ON, OPEN + i, ...(ranges as never as [])))
  expect(by(OPEN + 20)).toBeCloseTo(
    on.reduce((a, b) => a + b),
    6,
  )
})

it("is nothing before the first opening, and all of it from the last close on", () =>
  expect([by(OPEN - 1), by(CLOSE), by(CLOSE + 30)]).toEqual([0, 8500, 8500]))

it("gives the weeks of the worked example of the balance", () => {
  // Physiology 8.4: 626 724 797 845 866 864 840 800 kg/ha by week, of 6363 in all; printed to whole kg.
  const one = ranges.map((range, i) => (i < 5 ? [range[0]] : range))
  const week = (n: number) => number(SEASON_CROP_BY, OPEN + 7 * n - 1, ...(one as never as []))
  const printed = [626, 724, 797, 845, 866, 864, 840, 800]
  for (const [i, kg] of printed.entries())
    expect(Math.abs(((week(i + 1) - week(i)) * 6363) / 8000 - kg)).toBeLessThanOrEqual(1)
})

it("leaves out what waits after spraying lose, so that it comes to what the pickings bring", () => {
  const climate = Array.from({length: 365}, () => [14, 14, 15])
  const one = [[[OPEN]], [[OPEN + 9]], [[1000]], [[null]], [[null]], climate, null] as never as []
  const waits = [[["A"]], [["A"]], [[OPEN + 3]], [[OPEN + 7]]] as never as []
  // 100 kg a day; the spears of days 3 to 5 (counted from 0) are lost, as the pickings of SEASON.PICK_ON have it.
  const sums = [2, 3, 5, 6, 9].map((day) => number(SEASON_CROP_BY, OPEN + day, ...one, ...waits))
  expect(sums.map(Math.round)).toEqual([300, 300, 300, 400, 700])
  const picked = Array.from({length: 10}, (_, i) => number(SEASON_PICK_ON, OPEN + i, ...one, ...waits))
  expect(picked.reduce((a, b) => a + b)).toBeCloseTo(700, 9)
})

it("leaves out what stands when cutting ends within a wait", () => {
  const climate = Array.from({length: 365}, () => [14, 14, 15])
  const one = [[[OPEN]], [[OPEN + 9]], [[1000]], [[null]], [[null]], climate, null] as never as []
  const waits = [[["A"]], [["A"]], [[OPEN + 7]], [[OPEN + 20]]] as never as []
  // 100 kg a day, picked up to day 6; what comes up on days 7 to 9 is never picked.
  const sums = [5, 6, 7, 9].map((day) => number(SEASON_CROP_BY, OPEN + day, ...one, ...waits))
  expect(sums.map(Math.round)).toEqual([600, 700, 700, 700])
})
