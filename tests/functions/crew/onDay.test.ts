import {expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {CREW_ON_DAY} from "../../../functions/crew/onDay"
import {ask, generic, number} from "../root/generic"

const DAY = dayOf("2026-05-01")!
/** Plantings that are all picked once, on the day: their crop in kg and their ground in ha. */
const people = (...plantings: (readonly [crop: number, area: number | null])[]) => {
  const each = (value: unknown) => plantings.map(() => [value]) as never
  const [crops, areas] = [plantings.map(([crop]) => [crop]), plantings.map(([, area]) => [area])]
  return number(CREW_ON_DAY, DAY, each(DAY), each(DAY), crops, each(null), each(null), areas, generic, 20, 8)
}

it("counts by weight on a heavy picking, by walking on a thin one", () => {
  // A person picks 20 kg/h x 8 h = 160 kg, or walks 1 ha: 200 kg/ha on 2 ha is 400 kg, 2.5 people; 80 kg/ha on 2 ha is 2.
  expect([people([400, 2]), people([160, 2])]).toEqual([2.5, 2])
})

it("adds up the plantings, which may share a person; one without ground needs none", () =>
  expect(people([400, 2], [160, 2], [500, null])).toBe(4.5))

it("gives a whole number where adding up leaves a hair beside it, which would call for one more person", () => {
  const grounds = [5.2, 3.6, 4.4, 2.9, 3.3, 0.6] // 20 ha, each walked at 1 ha a person
  expect(grounds.reduce((sum, ground) => sum + ground, 0)).toBeGreaterThan(20)
  expect(people(...grounds.map((ground) => [80 * ground, ground] as const))).toBe(20)
})

it("refuses grounds that are not as many as the plantings", () =>
  expect(
    ask(CREW_ON_DAY, DAY, [[DAY]], [[DAY]], [[1]], [[null]], [[null]], [[1], [2]], generic, 20, 8),
  ).toMatchObject({
    refused: "The ranges of the plantings have 1 and 2 cells: sizes differ",
  }))

it("needs nobody for a planting that waits after spraying", () => {
  const given = [[[DAY]], [[DAY]], [[400]], [[null]], [[null]], [[2]], generic, 20, 8, 1, null] as never as []
  const on = (until: number) => number(CREW_ON_DAY, DAY, ...given, [["A"]], [["A"]], [[DAY - 3]], [[until]])
  expect([on(DAY + 1), on(DAY)]).toEqual([0, 2.5])
})
