import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {coldChainOf} from "../../src/workbook/coldChain"
import {columnWith, sheetWith, type Content} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"
import {namesIn} from "../../src/workbook/names"
import {Workbook} from "../../src/workbook/workbook"

const read = readFile(
  readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
)
if ("refused" in read) throw new Error(read.refused)
const {document} = read
const workbook = new Workbook(document)

/** The log with these rows, what it says of them by heading, and the cold chain. */
function logged(...loads: readonly (readonly Content[])[]) {
  workbook.show(document)
  const sheet = sheetWith(document, "load planting")
  const {columns, rows} = document.sheets[sheet]!
  const typed = columns.filter(({formula}) => !formula).length
  const cells = rows.flatMap((_, row) =>
    Array.from({length: typed}, (_, col) => ({
      at: {sheet, row, col},
      content: loads[row]?.[col] ?? null,
    })),
  )
  workbook.revise({type: "enter", cells})
  const says = (row: number, heading: string) =>
    workbook.valueAt({sheet, row, col: columns.findIndex((one) => one.heading === heading)})
  return {says, chain: coldChainOf(workbook)!}
}

const name = (named: string, content: Content) =>
  workbook.revise({
    type: "enter",
    cells: [{at: namesIn(workbook.document).find((one) => one.name === named)!.at, content}],
  })

describe("the log of loads", () => {
  it("loses what a crate lost in the sun", () => {
    // Handbook 31 (DeEll and Roddy 2002): a crate of 13.608 kg loses 0.585 kg, 4.3 %, in 4 h.
    const {says, chain} = logged(["Long Acre", "2026-05-20", 13.608, 4, 4])
    expect(says(0, "Lost in the sun")).toBeCloseTo(0.585, 3)
    expect(chain.lost).toBeCloseTo(0.585, 3)
    // Opened on 25 April: 20 May lies in its week 4, 3.00 a packed kg, 86 % packed.
    expect(says(0, "Worth")).toBeCloseTo(13.608 * 0.043 * 0.86 * price(4), 9)
  })

  it("says of a wait that it is short, long or too long, by the named hours", () => {
    // Handbook 5b: warn past 1 h, strongly from 4 h on.
    const {says, chain} = logged(
      ["Long Acre", "2026-05-20", 100, 1],
      ["Sand Piece", "2026-05-21", 100, 1.1],
      ["Well Field", "2026-05-22", 100, 4],
      ["Home Strip", "2026-05-23", 100, null],
    )
    expect([0, 1, 2, 3].map((row) => says(row, "The wait"))).toEqual(["short", "long", "too long", ""])
    expect(chain.loads).toBe(3)
    expect(chain.late).toEqual([
      expect.objectContaining({planting: "Well Field", day: dayOf("2026-05-22"), wait: 4}),
    ])
  })

  it("takes no row for a load that has no planting", () => {
    expect(logged([null, "2026-05-20", 100, 5]).chain).toMatchObject({loads: 0, late: []})
  })

  it("counts keeping that a warm wait uses up, and leaves out what was not measured", () => {
    const {says} = logged(["Long Acre", "2026-05-20", null, 6, 2, 20], ["Long Acre", "2026-05-20", 10, 6])
    const perDegree = Math.log(2.57) / 10
    expect(says(0, "Keeps less")).toBeCloseTo((6 / 24) * Math.exp(perDegree * (20 - 2)), 9)
    expect(says(0, "Lost in the sun")).toBe("")
    expect(says(1, "Keeps less")).toBe("")
  })

  it("says how cold a load left the water, and how long it still needed", () => {
    // Handbook 26 and 27: water at 1 °C, half time 2.2 min: 25 °C to 4 °C in 6.6 min, to 3 °C in 7.9 min.
    const {says} = logged(
      ["Long Acre", "2026-05-20", 100, 1, 0, 25, 1, 6.6],
      ["Long Acre", "2026-05-20", 100, 1, 0, 25, 3, 30],
      ["Long Acre", "2026-05-20", 100, 1, 0, 25, 1, 30],
    )
    expect(says(0, "Left at")).toBeCloseTo(4, 9)
    name("Store_temp", 3)
    expect(says(0, "Still needed")).toBeCloseTo(7.9 - 6.6, 1)
    name("Store_temp", 2)
    expect(says(1, "Still needed")).toBe("colder water")
    expect(says(2, "Still needed")).toBe(0)
  })
})

describe("the store", () => {
  it("holds what was packed in the days of the hold, and breathes", () => {
    const {chain} = logged()
    const days = sheetWith(document, "cutting day")
    const packed = document.sheets[days]!.rows.map((_, row) => {
      const {columns} = document.sheets[days]!
      return Number(
        workbook.valueAt({sheet: days, row, col: columns.findIndex(({heading}) => heading === "Packed")}) ||
          0,
      )
    })
    const held = packed.map((_, i) => packed.slice(Math.max(0, i - 3), i + 1).reduce((a, b) => a + b, 0))
    const most = Math.max(...held)
    const row = held.findIndex((kg) => kg > most - 1e-6)
    const {fullest} = chain.store!
    expect(fullest!.kg).toBeCloseTo(most, 6)
    expect(fullest!.day).toBe(
      workbook.valueAt({sheet: days, row, col: columnWith(document, days, "cutting day")}),
    )
    // UC Davis: 14 to 40 ml at 0 °C, 28 to 68 at 5 °C; 2 mg a ml, 2.96 W a tonne and mg.
    const [low, high] = [14 + 0.4 * 14, 40 + 0.4 * 28].map((ml) => (ml * 2 * 2.96) / 1e6)
    expect(fullest!.breathing).toBeCloseTo(packed[row]! * high! + (held[row]! - packed[row]!) * low!, 6)
  })

  it("warns of cold that injures, and of a hold longer than the crop keeps", () => {
    const {chain} = logged()
    expect(chain.store).toMatchObject({days: 4, temperature: 2, warns: ""})
    expect(chain.store!.keeps).toBeCloseTo(16.4, 1) // handbook 34
    const warns = () => coldChainOf(workbook)!.store!.warns
    // Handbook 35: a hold of 12 days at 0 °C asks for a warning of injury by cold; 10 days do not.
    name("Store_temp", 0)
    name("Hold_days", 12)
    expect(warns()).toMatch("injure the tips")
    name("Hold_days", 10)
    expect(warns()).toBe("")
    name("Store_temp", 10) // keeps 7.7 days
    expect(warns()).toMatch("longer than spears keep")
    name("Hold_days", null)
    expect(coldChainOf(workbook)!.store).toBeNull()
  })
})

function price(week: number): number {
  const sheet = sheetWith(document, "price week")
  return Number(document.sheets[sheet]!.rows.find(([first]) => first === week)![1])
}
