import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {SEASON_PICKED} from "../../../functions/season/picked"
import {Workbook} from "../../../src/workbook/workbook"
import {cellAt, documentOf, seeded, sheet} from "../../workbook/documents"
import {ask, number} from "../root/generic"

const MAY = (date: number) => dayOf(`2026-05-${String(date).padStart(2, "0")}`)!
const plantings = [["Long Acre"], ["Sand Piece"], ["long acre"], ["Long Acre"], [null], ["Sand Piece"]]
const days = [["2026-05-20"], ["2026-05-19"], ["2026-05-18"], ["2026-05-25"], [null], ["not known"]]
const weights = [[390], [1100], [400], [300], [7], [50]]
const picked = (from: number, until: number, planting: string | null = null) =>
  number(SEASON_PICKED, plantings, days, weights, MAY(from), MAY(until), planting)

describe("the weight picked", () => {
  it("is that of the days asked for, both ends counted, in whatever order they stand", () =>
    expect([picked(18, 24, "Long Acre"), picked(18, 25, "Long Acre"), picked(19, 19, "Long Acre")]).toEqual([
      790, 1090, 0,
    ]))
  it("is that of all plantings where none is named", () => expect(picked(1, 31)).toBe(390 + 1100 + 400 + 300))
  it("is nothing of a planting without a record", () => expect(picked(1, 31, "Home Strip")).toBe(0))
  it("agrees with a plain sum over the rows, whatever is asked", () => {
    const random = seeded(5)
    const rows = Array.from(
      {length: 300},
      () =>
        [
          `Field ${Math.floor(random() * 7)}`,
          MAY(1 + Math.floor(random() * 31)),
          Math.round(random() * 900),
        ] as const,
    )
    const columns = [0, 1, 2].map((i) => rows.map((row) => [row[i]!])) as never[]
    for (let i = 0; i < 40; i++) {
      const [a, b] = [1 + Math.floor(random() * 31), 1 + Math.floor(random() * 31)].sort((x, y) => x - y) as [
        number,
        number,
      ]
      const name = `Field ${i % 8}`
      const plain = rows.reduce(
        (sum, [one, day, kg]) => sum + (one === name && day >= MAY(a) && day <= MAY(b) ? kg : 0),
        0,
      )
      expect(number(SEASON_PICKED, ...columns, MAY(a), MAY(b), name)).toBe(plain)
    }
  })
  it("follows a row that is typed anew", () => {
    const workbook = new Workbook(
      documentOf(
        sheet(
          "Pickings",
          ["Planting", "Day", "Weight", "Sum"],
          [
            ["A", "2026-05-18", 400, '=SEASON.PICKED(A1:A2,B1:B2,C1:C2,"2026-05-01","2026-05-31","A")'],
            ["A", "2026-05-19", 10, null],
          ],
        ),
      ),
    )
    expect(workbook.valueAt(cellAt("D1"))).toBe(410)
    workbook.revise({type: "enter", cells: [{at: cellAt("C2"), content: 25}]})
    expect(workbook.valueAt(cellAt("D1"))).toBe(425)
    workbook.revise({type: "enter", cells: [{at: cellAt("A2"), content: "B"}]})
    expect(workbook.valueAt(cellAt("D1"))).toBe(400)
  })
})

it("refuses an end before the beginning, and ranges of different sizes", () => {
  expect(ask(SEASON_PICKED, plantings, days, weights, MAY(3), MAY(2))).toMatchObject({
    refused: "The last day 2026-05-02 is before the first, 2026-05-03",
  })
  expect(ask(SEASON_PICKED, plantings, days, [[1]], MAY(1), MAY(2))).toMatchObject({
    refused: "The ranges of the pickings have 6, 6 and 1 cells: sizes differ",
  })
})
