import {expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {toTheEnd} from "../../src/workbook/checks/checks"
import {consequence, rankedByMoves, rankedByStep, toTry, unsettled, type Tried} from "../../src/editor/checks"
import {createStore} from "../../src/editor/store"
import type {Ranked} from "../../src/workbook/checks/effects"
import {farm, inPlan} from "./farm"

const plain = (text: string) => text.replaceAll(/[\u00a0\u202f]/g, " ")

/** The farm with both closes typed over: what is found there, in the order of what rests on it. */
function twoTypedOver(): readonly Ranked[] {
  const store = createStore(farm)
  const cells = ["D1", "D2"].map((address) => ({at: inPlan(address), content: "2026-06-20"}))
  store.run(() => ({type: "enter", cells}))
  return toTheEnd(rankedByStep(store.workbook)).filter(({rule}) => rule === "typed over")
}

const day = (iso: string) => dayOf(iso)!
const moved = (planting: string, was: string, now: string) => ({
  closes: [{planting, was: day(was), now: day(now)}],
  crop: {was: 100_000, now: 98_000},
})

it("puts first what moves the closes by the most days, and last what moves nothing", () => {
  const [first, second] = twoTypedOver() as [Ranked, Ranked]
  const more: Tried = new Map([
    [first, moved("Long Acre", "2026-06-20", "2026-06-10")],
    [second, moved("Well Field", "2026-06-20", "2026-05-25")],
  ])
  expect(rankedByMoves([first, second], more)).toEqual([second, first])
  const none: Tried = new Map([[first, {closes: [], crop: {was: 1, now: 1}}]])
  expect(rankedByMoves([first, second], none)).toEqual([second, first])
  expect(rankedByMoves([first, second], new Map())).toEqual([first, second])
})

it("says what mending moves where that was tried, else what rests on it", () => {
  const [first] = twoTypedOver() as [Ranked]
  expect(consequence(first, new Map())).toBe("The close of Long Acre rests on this")
  expect(plain(consequence(first, new Map([[first, moved("Long Acre", "2026-06-20", "2026-06-10")]])))).toBe(
    "Mending it moves the close of Long Acre from 20 Jun 2026 to 10 Jun 2026 and the crop of the farm from 100.0 t to 98.0 t",
  )
  expect(consequence(first, new Map([[first, {closes: [], crop: {was: 1, now: 1}}]]))).toBe(
    "Mending it moves no close and no crop of the plan",
  )
})

it("tries what can be mended, and not without end", () => {
  const found = twoTypedOver()
  expect(toTry(found)).toEqual(found)
  expect(toTry(Array.from({length: 40}, () => found[0]!)).length).toBeLessThan(40)
})

it("puts last, and does not try, what a note says is settled", () => {
  const [first, second] = twoTypedOver() as [Ranked, Ranked]
  const settled: Ranked = {...first, note: {text: "Agreed", written: "2026-05-25T10:00", settled: true}}
  expect(rankedByMoves([settled, second], new Map([[second, {closes: [], crop: {was: 1, now: 1}}]]))).toEqual(
    [second, settled],
  )
  expect(toTry([settled, second])).toEqual([second])
  expect(unsettled([settled, second])).toEqual([second])
})
