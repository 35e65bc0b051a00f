import {describe, expect, it} from "vitest"
import {movedLayout, type MovedRow} from "../../../src/views/pictures/movedLayout"
import {fittedName, textWidth} from "../../../src/views/pictures/placing"

const row = (words: string, by: number): MovedRow => ({
  words: [words, "weeks for its age, now price"],
  by,
  text: `${by < 0 ? "\u2212" : "+"}${Math.abs(by)} d`,
})
const days = {sides: ["days earlier", "later"], least: 7} as const
const rows = [row("North Bench: 19 Jun to 12 Jun", -7), row("Sand Piece: 6 Jun to 7 Jun", 1)]

describe("the picture of what moved", () => {
  it.each([320, 358, 416, 600])("keeps bars, words and numbers inside and apart at %d px", (width) => {
    const {middle, scale, height, rows: places} = movedLayout(rows, width, days)
    for (const [i, {words, by, text}] of rows.entries()) {
      const [from, to] = [middle + Math.min(0, by) * scale, middle + Math.max(0, by) * scale]
      const left = by < 0 ? from - 5 - textWidth(text) : from
      expect(left).toBeGreaterThanOrEqual(0)
      expect(by > 0 ? to + 5 + textWidth(text) : to).toBeLessThanOrEqual(width)
      const {y, barY} = places[i]!
      // Bars that stand beside their words begin after them; the others stand under them.
      if (barY < y + 31) expect(left).toBeGreaterThan(Math.max(...words.map((one) => textWidth(one))))
      expect(barY + 16).toBeLessThanOrEqual(height)
    }
  })
  it("keeps the bars near their words on a wide page", () => {
    const {middle, scale} = movedLayout(rows, 1000, days)
    const widest = Math.max(...rows.flatMap(({words}) => words.map((one) => textWidth(one))))
    const longest = middle - 7 * scale - 5 - textWidth("\u22127 d") // of the two rows the one that reaches further left
    expect(longest - widest).toBeLessThan(40)
  })
  it("has room for a week at least, so that one day stays short", () => {
    const {scale} = movedLayout([row("A", 1)], 440, days)
    expect(scale * 7).toBeLessThanOrEqual(80)
  })

  it("cuts a long name short, and not the days that its close moved between", () => {
    const said = "Bottom Meadow West of the Brook Crossing: 6 Jun to 7 Jun"
    const short = fittedName(said, 240)
    expect(short).toMatch(/^Bottom .*\u2026.*: 6 Jun to 7 Jun$/)
    expect(textWidth(short)).toBeLessThanOrEqual(240)
    expect(fittedName(said, 600)).toBe(said)
  })
})
