import {describe, expect, it} from "vitest"
import {replantYear} from "../../../functions/stand/replantYear"
import {cell} from "../cell"

const years = [2026, 2027, 2028, 2029, 2030]
const margins = [3100, 2700, 2250, 1700, 1200]

describe("replantYear", () => {
  // Invented margins; the yearly worth of twelveYears (testStand.ts) is 2 425, 2 092 and 1 753 at 4, 7 and 10 %.
  it.each([
    [2425, 2028],
    [2092, 2029],
    [1753, 2029],
  ])("against %s a year is %s", (perYear, year) => {
    expect(replantYear(years, margins, perYear)).toBe(year)
  })
  it("keeps a machine as long as its next year costs less than the new one's equivalent", () => {
    // Newnan, Eschenbach and Lavelle, examples 13-2 and 13-4: 13 250, 14 600, 15 950 against 15 426.83: keep, keep, replace.
    expect(replantYear([1, 2, 3], [-13250, -14600, -15950], -15426.83)).toBe(3)
  })
  it("keeps a season that brings exactly as much", () => {
    expect(replantYear([2026, 2027], [500, 499], 500)).toBe(2027)
  })
  it("has no year when the crop stays better", () => {
    expect(replantYear(years, margins, 1200)).toEqual({
      refused: "Never up to 2030: the standing crop brings 1200 or more in every season",
      code: "#N/A",
    })
  })
  it("refuses seasons that do not rise", () => {
    expect(replantYear([2027, 2026], [500, 400], 450)).toMatchObject({code: "#VALUE!"})
  })
})

it("STAND.REPLANT_YEAR leaves out a season without cash", () => {
  const rows = [
    [2026, 3100],
    [2027, null],
    [2028, 1000],
  ]
  expect(cell("=STAND.REPLANT_YEAR(T!A1:A3,T!B1:B3,2092)", rows)).toBe(2028)
})
