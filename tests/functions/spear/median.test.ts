import {describe, expect, it} from "vitest"
import {median} from "../../../functions/spear/median"
import {cell} from "../cell"

const table = [11.5, 13, 13.5, 13, 12.5, 11.5, 10.5, 9.5]

describe("median", () => {
  it("is the table itself for a season of its length", () => {
    for (const [row, mm] of table.entries()) expect(median(row + 1, 8, table)).toBeCloseTo(mm, 12)
  })
  it("lies between two rows in a season half as long", () => {
    expect(median(1, 4, table)).toBeCloseTo(12.25, 12)
    expect(median(4, 4, table)).toBeCloseTo(10, 12)
  })
  it("stays level before the middle of the first row and after that of the last", () => {
    expect(median(1, 16, table)).toBe(11.5)
    expect(median(16, 16, table)).toBe(9.5)
    expect(median(20, 8, table)).toBe(9.5)
  })
  it("is the same in every week of a table of one row", () => expect(median(3, 8, [12])).toBe(12))
  it("makes half of the last week's spears thinner than 9.5 mm, the sign to stop", () => {
    expect(
      cell("=PACK.SIZE_SHARE(SPEAR.MEDIAN(8,8,{11.5,13,13.5,13,12.5,11.5,10.5,9.5}),0.3,0,9.5)"),
    ).toBeCloseTo(0.5, 12)
  })
})

it("SPEAR.MEDIAN refuses week 0", () =>
  expect(cell("=SPEAR.MEDIAN(0,8,{12,11})")).toMatchObject({code: "#NUM!"}))
