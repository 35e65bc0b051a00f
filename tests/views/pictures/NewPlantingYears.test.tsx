import {renderToStaticMarkup} from "react-dom/server"
import {expect, it} from "vitest"
import {NewPlantingYears} from "../../../src/views/pictures/NewPlantingYears"

const flows = [-9000, -1500, 4500, 6000]
const years = flows.map((cash, i) => ({
  age: i + 1,
  yielding: Math.max(0, cash),
  other: Math.min(0, cash),
  sales: 0,
  at: {sheet: 0, row: i, col: 0},
}))
const draw = (black: number | null) =>
  renderToStaticMarkup(<NewPlantingYears years={years} black={black} region={{}} />)

it("hangs costs below the line and stands cash on it, in proportion", () => {
  const bars = [
    ...draw(4).matchAll(/<rect class="([a-z-]+)" x="\d+" y="([\d.]+)" width="20" height="([\d.]+)"/g),
  ]
  expect(bars.map(([, kind]) => kind)).toEqual(["to-come", "to-come", "past", "past"])
  const heights = bars.map(([, , , height]) => Number(height))
  // The largest sum is 76 px; the others are to it as 1 500, 4 500 and 6 000 to 9 000.
  for (const [i, share] of [1, 1 / 6, 1 / 2, 2 / 3].entries()) expect(heights[i]).toBeCloseTo(76 * share, 6)
  const zero = Number(bars[0]![2])
  for (const [i, [, , y]] of bars.entries())
    expect(Number(y) + (flows[i]! < 0 ? 0 : heights[i]!)).toBeCloseTo(zero, 6)
})

it("names the year in the black and says each sum", () => {
  expect(draw(4)).toContain(
    'aria-label="Year 1 of its life: \u22129\u202f000 money/ha. Year 2 of its life: \u22121\u202f500 money/ha. ' +
      'Year 3 of its life: 4\u202f500 money/ha. Year 4 of its life: 6\u202f000 money/ha, in the black."',
  )
  expect(draw(null)).not.toContain("in the black")
})
