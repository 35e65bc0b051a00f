import {renderToStaticMarkup} from "react-dom/server"
import {expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {lineSpread} from "../../../functions/spear/lineSpread"
import {textWidth} from "../../../src/views/pictures/placing"
import {SpearSize} from "../../../src/views/pictures/SpearSize"
import {spearLayout} from "../../../src/views/pictures/spearLayout"
import type {PlantingSpears, SpearSizes} from "../../../src/workbook/spears"

const start = dayOf("2026-05-04")!
const [days, means] = [
  [start, start + 7, start + 14],
  [12, 10, 11.5],
] as const
const one: PlantingSpears = {
  planting: "Sand Piece",
  days: days.map((day, row) => ({
    day,
    mean: means[row]!,
    counted: 40,
    tally: null,
    under: null,
    at: {sheet: 0, row, col: 2},
  })),
  line: {day: start + 7, mean: 33.5 / 3, slope: -0.5 / 14},
  lastDay: null,
  spread: lineSpread(days, means, 0.8),
  lastDays: null,
  isExpected: false,
  shareDay: null,
}
const sizes: SpearSizes = {
  plantings: [one],
  limit: null,
  share: null,
  confidence: 0.8,
  asOf: null,
  region: {},
}

it("keeps the band within the picture where the means scatter so that it reaches far beyond", () => {
  const {band, left, right, top, base} = spearLayout(one, sizes, 480)
  const heights = [...band!.area.matchAll(/ (-?[\d.]+)/g)].map(([, y]) => Number(y))
  expect(Math.min(...heights)).toBeLessThan(top)
  expect(Math.max(...heights)).toBeGreaterThan(base)
  const drawn = renderToStaticMarkup(<SpearSize one={one} sizes={sizes} isAlone />)
  const [, group, id, rect, inside] =
    /<g clip-path="url\(#([^"]+)\)"><clipPath id="([^"]+)">(<rect [^>]+>)<\/rect><\/clipPath>(.*?)<\/g>/.exec(
      drawn,
    )!
  expect(group).toBe(id)
  expect(rect).toBe(`<rect x="${left}" y="${top}" width="${right - left}" height="${base - top}">`)
  expect(inside!.match(/<path/g)).toHaveLength(drawn.match(/class="band/g)!.length)
})

it.each([300, 358, 480])("keeps the days under its axis apart and within the picture, at %d px", (width) => {
  for (let days = 20; days < 48; days++) {
    const ahead = {...one, lastDay: start + days}
    const drawn = renderToStaticMarkup(
      <SpearSize one={ahead} sizes={{...sizes, plantings: [ahead]}} width={width} isAlone />,
    )
    const words = [...drawn.matchAll(/x="([\d.]+)" y="\d+" text-anchor="middle">(\d+ \w{3})</g)].map(
      ([, x, text]) => ({x: Number(x), half: textWidth(text!) / 2}),
    )
    expect(words.length).toBeGreaterThan(1)
    for (const [i, {x, half}] of words.entries()) {
      expect(x + half).toBeLessThanOrEqual(width)
      if (i > 0) expect(x - half).toBeGreaterThan(words[i - 1]!.x + words[i - 1]!.half)
    }
  }
})
