import {describe, expect, it} from "vitest"
import {opened, worked} from "./sheet"

const rows = [
  [-10000, "2005-01-01"],
  [2750, "2005-03-01"],
  [4250, "2005-10-30"],
  [3250, "2006-02-15"],
]

describe("XNPV", () => {
  // Printed in a public test file of OpenDocument formulas.
  it("has the printed values", () => {
    expect(Math.abs((worked("=XNPV(9%,T!A1:A4,T!B1:B4)", rows) as number) + 380.389117853)).toBeLessThan(1e-9)
    const others = [
      [-1000, "2005-01-01"],
      [2000, "2005-01-10"],
      [3000, "2005-01-15"],
    ]
    expect(Math.abs((worked("=XNPV(10%,T!A1:A3,T!B1:B3)", others) as number) - 3984.3581140636)).toBeLessThan(
      1e-9,
    )
  })
  it("is nothing at the rate of XIRR, and the plain sum at rate 0", () => {
    const {valueOf} = opened(
      ["=XNPV(XIRR(T!A1:A4,T!B1:B4),T!A1:A4,T!B1:B4)", "=XNPV(0,T!A1:A4,T!B1:B4)-SUM(T!A1:A4)"],
      rows,
    )
    expect(valueOf(0)).toBeCloseTo(0, 4)
    expect(valueOf(1)).toBeCloseTo(0, 9)
  })
  it("passes over rows that are blank, and follows an edit", () => {
    const {valueOf, enter} = opened(
      ["=XNPV(10%,T!A1:A3,T!B1:B3)"],
      [
        [-100, "2026-04-25"],
        [null, null],
        [110, "2027-04-25"],
      ],
    )
    expect(valueOf()).toBeCloseTo(0, 9) // 365 days on
    enter("A2", 5)
    expect(valueOf()).toMatchObject({code: "#VALUE!", reason: "Amount 2 must be a number with a date"})
    enter("B2", "2026-04-25")
    expect(valueOf()).toBeCloseTo(5, 9)
  })
  it("refuses a date before the first, ranges of different size and a rate of -1", () => {
    expect(
      worked("=XNPV(9%,T!A1:A2,T!B1:B2)", [
        [1, "2026-04-25"],
        [2, "2026-04-24"],
      ]),
    ).toMatchObject({
      code: "#NUM!",
      reason: "No date may come before the first (2026-04-25)",
    })
    expect(worked("=XNPV(9%,T!A1:A4,T!B1:B3)", rows)).toMatchObject({code: "#VALUE!"})
    expect(worked("=XNPV(-1,T!A1:A4,T!B1:B4)", rows)).toMatchObject({
      code: "#NUM!",
      reason: "Rate for a year must be above -1, not -1",
    })
  })
})
