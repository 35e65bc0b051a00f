import {renderToStaticMarkup} from "react-dom/server"
import {expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {PickedByWeek} from "../../../src/views/pictures/PickedByWeek"
import {textWidth} from "../../../src/views/pictures/placing"
import type {PlantingWeek, SeasonWeek} from "../../../src/workbook/season"

const sums = (...days: readonly [string, number][]) => days.map(([day, kg]) => ({day: dayOf(day)!, kg}))
const planting = (name: string, area: number, more: Partial<PlantingWeek>) =>
  ({planting: name, area, cells: {}, plannedSoFar: [], pickedSoFar: [], ...more}) as unknown as PlantingWeek
const plantings = [
  planting("Long Acre", 2, {
    plannedSoFar: sums(["2026-05-12", 400], ["2026-05-19", 1000], ["2026-05-26", 1200]),
    pickedSoFar: sums(["2026-05-12", 200], ["2026-05-19", 1000]),
  }),
  planting("Well Field", 1, {plannedSoFar: sums(["2026-05-19", 400])}),
]
const week: SeasonWeek = {sheet: 0, asOf: dayOf("2026-05-25")!, plantings}

it("draws each week picked and planned for each hectare, on one scale that ends at a round number", () => {
  const markup = renderToStaticMarkup(
    <PickedByWeek week={week} plantings={plantings} width={300} columns={2} onGo={undefined} />,
  )
  const heights = (pattern: RegExp) => [...markup.matchAll(pattern)].map(([, high]) => Number(high))
  // Long Acre: 100 and 400 kg/ha picked; 200, 300 and 100 planned. Well Field: 400 planned, nothing picked.
  const picked = heights(/class="past"[^>]* height="([\d.]+)"/g)
  const planned = heights(/class="planned-week" d="M[^v]*v-?([\d.]+)/g)
  expect(picked.map((one) => one / picked[0]!)).toEqual([1, 4, 0])
  expect(planned.map((one) => one / picked[0]!)).toEqual([2, 3, 1, 4])
  expect(markup).toContain(">400 kg/ha</text>")
  expect(markup).toContain("Long Acre, week from 18 May: 800\u00a0kg picked, 600\u00a0kg planned.")
  expect(markup).toContain("Long Acre, week from 25 May: to come, 200\u00a0kg planned.")
})

it("cuts a name short that would run into the next picture, and says it whole", () => {
  const long = planting("Well Field with the deep well by the oaks", 1, {
    plannedSoFar: sums(["2026-05-19", 400]),
  })
  const markup = renderToStaticMarkup(
    <PickedByWeek week={week} plantings={[long, plantings[0]!]} width={300} columns={2} onGo={undefined} />,
  )
  const [, name] = /class="strong"[^>]*>([^<]+)</.exec(markup)!
  expect(name).toMatch(/^Well Field.*… oaks$/)
  expect(textWidth(name!)).toBeLessThan(150)
  expect(markup).toContain("Well Field with the deep well by the oaks, week from 18 May")
})
