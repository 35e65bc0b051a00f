import {readFileSync} from "node:fs"
import {expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import type {Content, Document} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"
import {sampleSpreadOf, type Sampling} from "../../src/workbook/sampleSpread"
import {rowsOf} from "../../src/workbook/season"
import {Workbook} from "../../src/workbook/workbook"

const reading = readFile(
  readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
)
if ("refused" in reading) throw new Error(reading.refused)
/** The farm with more samples: a second dormant day with a blank, a planting by readings alone, later and former samplings. */
const more: Content[][] = [
  ["Long Acre", 11, "2026-03-09", null, 440, "=", "laboratory", "="],
  ["Long Acre", 12, "2026-03-09", 18, null, "=", "reading", "="],
  ["Long Acre", 13, "2026-03-09", null, null, "=", null, "="],
  ["Top Corner", 1, "2026-03-05", 18, null, "=", "reading", "="],
  ["Top Corner", 2, "2026-03-05", 20, null, "=", "reading", "="],
  ["Top Corner", 3, null, 19, null, "=", "reading", "="],
  ["North Bench", 1, "2026-07-01", null, 300, "=", "laboratory", "="],
  ["Sand Piece", 1, "2026-07-01", null, 300, "=", "laboratory", "="],
  ["Sand Piece", 1, "2026-08-01", null, 350, "=", "laboratory", "="],
  ["Sand Piece", 1, "2026-09-01", null, 400, "=", "laboratory", "="],
  ["Well Field", 1, "2025-03-10", null, 300, "=", "laboratory", "="],
  ["Well Field", 2, "2025-10-14", null, 310, "=", "laboratory", "="], // the fern of 2025 ended on the next day
  ["Well Field", 11, "2025-10-15", null, 530, "=", "laboratory", "="],
]
const withMore = ({sheets, ...rest}: Document): Document => ({
  ...rest,
  sheets: sheets.map((sheet) =>
    sheet.name === "Root samples" ? {...sheet, rows: [...sheet.rows, ...more]} : sheet,
  ),
})
const workbook = new Workbook(withMore(reading.document))
const {samplings, confidence} = sampleSpreadOf(workbook)!
const of = (planting: string) => samplings.filter((one) => one.planting === planting)

it("has the means and the ends of the intervals that Crowns works out, also of readings and of two dormant days", () => {
  let compared = 0
  for (const crown of rowsOf(workbook, "sampled sugar")) {
    if (crown.word("planting") === "Sand Piece") continue // its dormant sampling is not among the last three
    const dormant = of(crown.word("planting")).find(({isFormer}) => !isFormer)
    const sugar = crown.number("sampled sugar")
    if (!dormant || sugar === null) continue
    compared++
    expect(dormant.mean).toBeCloseTo(sugar, 9)
    expect(dormant.at).toEqual(crown.cells["sampled sugar"])
    expect(dormant.interval![0]).toBeCloseTo(crown.number("sampled lower")!, 9)
    expect(dormant.interval![1]).toBeCloseTo(crown.number("sampled upper")!, 9)
    expect(dormant.plants).toHaveLength(crown.number("samples used")!)
    expect(dormant.day).toBe(crown.number("sampled on"))
  }
  expect(compared).toBe(5)
  expect(confidence).toBe(0.8)
})

it("keeps a later sampling apart, without an interval where one plant was dug", () => {
  const [dormant, later, ...rest] = of("North Bench") as [Sampling, Sampling]
  expect(rest).toEqual([])
  expect(dormant.plants).toHaveLength(10)
  expect(later).toMatchObject({day: dayOf("2026-07-01"), mean: 300, interval: null, taken: 1})
  expect(workbook.valueAt(later.at!)).toBe(300)
})

it("holds the last three samplings of a planting", () =>
  expect(of("Sand Piece").map(({day, mean}) => [day, mean])).toEqual([
    [dayOf("2026-07-01"), 300],
    [dayOf("2026-08-01"), 350],
    [dayOf("2026-09-01"), 400],
  ]))

it("leaves the samplings of former seasons out of the dormant one", () => {
  expect(of("Well Field").map(({day, isFormer, taken}) => [day, isFormer, taken])).toEqual([
    [dayOf("2025-03-10"), true, 1],
    [dayOf("2025-10-14"), true, 1],
    [dayOf("2026-03-05"), false, 11],
  ])
  expect(of("Well Field").map(({at}) => at !== undefined)).toEqual([false, false, true])
  // 552 528 541 519 560 534 547 525 538 536 of March, and the 530 of the autumn before
  expect(of("Well Field").at(-1)!.mean).toBeCloseTo((5380 + 530) / 11, 9)
})

it("counts a blank as taken and not as used, and has the cell of each plant", () => {
  const [longAcre] = of("Long Acre") as [Sampling]
  expect([longAcre.plants.length, longAcre.taken]).toEqual([12, 13]) // by a reading too, since the laboratory has no sugar of that plant
  expect(workbook.valueAt(longAcre.plants[0]!.at)).toBe(412)
})
