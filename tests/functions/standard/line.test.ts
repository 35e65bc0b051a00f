import {describe, expect, it} from "vitest"
import {opened, worked} from "./sheet"

// Anscombe, F.J. (1973). Graphs in statistical analysis. The American Statistician 27, 17-21: four sets of eleven
// points, each with mean of x 9.0, mean of y 7.5 and line y = 3 + 0.5x. Numbers from memory; the first two sets.
const X = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5]
const Y1 = [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68]
const Y2 = [9.14, 8.14, 8.74, 8.77, 9.26, 8.1, 6.13, 3.1, 9.13, 7.26, 4.74]
const anscombe = X.map((x, i) => [x, Y1[i]!, Y2[i]!])

describe("the line of least squares", () => {
  it.each(["T!B1:B11", "T!C1:C11"])("has the published intercept and slope (%s)", (y) => {
    // Printed as 3 and 0.5.
    expect(Math.abs((worked(`=INTERCEPT(${y},T!A1:A11)`, anscombe) as number) - 3)).toBeLessThan(0.005)
    expect(Math.abs((worked(`=FORECAST(9,${y},T!A1:A11)`, anscombe) as number) - 7.5)).toBeLessThan(0.005)
    const slope = worked(`=FORECAST(10,${y},T!A1:A11)-FORECAST(9,${y},T!A1:A11)`, anscombe)
    expect(Math.abs((slope as number) - 0.5)).toBeLessThan(0.005)
  })
  it("agrees with the engine's SLOPE, and goes through the means", () => {
    const differences = [
      "=INTERCEPT(T!B1:B11,T!A1:A11)-(AVERAGE(T!B1:B11)-SLOPE(T!B1:B11,T!A1:A11)*AVERAGE(T!A1:A11))",
      "=FORECAST(AVERAGE(T!A1:A11),T!B1:B11,T!A1:A11)-AVERAGE(T!B1:B11)",
      "=TREND(T!B1:B11,T!A1:A11,20)-FORECAST(20,T!B1:B11,T!A1:A11)",
      "=LN(GROWTH(T!B1:B11,T!A1:A11,20))-FORECAST(20,LN(T!B1:B11),T!A1:A11)",
    ]
    const {valueOf} = opened(differences, anscombe)
    for (const row of differences.keys()) expect(valueOf(row)).toBeCloseTo(0, 10)
  })
  it("passes over pairs in which a blank, text or a logical value stands", () => {
    // Left are (1, 5), (2, 7) and (4, 11), on y = 3 + 2x.
    const rows = [
      [5, 1],
      [7, 2],
      [null, 3],
      [99, "x"],
      [11, 4],
      [true, 5],
    ]
    expect(worked("=INTERCEPT(T!A1:A6,T!B1:B6)", rows)).toBeCloseTo(3, 12)
    expect(worked("=FORECAST(10,T!A1:A6,T!B1:B6)", rows)).toBeCloseTo(23, 12)
  })
  it("reads dates as the numbers of their days", () => {
    const rows = [
      ["2026-04-20", 13],
      ["2026-04-30", 12],
    ]
    expect(worked('=FORECAST("2026-05-10",T!B1:B2,T!A1:A2)', rows)).toBeCloseTo(11, 9)
  })
  it("follows an edit in either range", () => {
    const {valueOf, enter} = opened(
      ["=FORECAST(3,T!A1:A2,T!B1:B2)"],
      [
        [1, 1],
        [2, 2],
      ],
    )
    expect(valueOf()).toBeCloseTo(3, 12)
    enter("A2", 3) // y = -1 + 2x
    expect(valueOf()).toBeCloseTo(5, 12)
    enter("B2", 3) // y = x
    expect(valueOf()).toBeCloseTo(3, 12)
  })
  it("refuses ranges of different size, no pairs, equal x and an error", () => {
    expect(worked("=INTERCEPT(T!A1:A2,T!B1:B3)")).toMatchObject({
      code: "#VALUE!",
      reason: "y has 2 × 1 cells and x has 3 × 1: sizes differ",
    })
    expect(worked("=INTERCEPT(T!A1:B1,T!A1:A2)")).toMatchObject({code: "#VALUE!"})
    expect(worked("=INTERCEPT(T!A1:A2,T!B1:B2)")).toMatchObject({code: "#N/A"})
    expect(worked("=FORECAST(1,{1,2},{3,3})")).toMatchObject({
      code: "#DIV/0!",
      reason: "All x values are equal",
    })
    expect(worked("=FORECAST(1,T!A1:A2,T!B1:B2)", [["=1/0", 1]])).toMatchObject({code: "#DIV/0!", reason: ""})
  })
})

describe("TREND and GROWTH", () => {
  it("count x from 1 when it is left out", () => {
    expect(worked("=TREND({5,7,9},,4)")).toBeCloseTo(11, 12)
    expect(worked("=TREND({5;7;9},,4)")).toBeCloseTo(11, 12)
    expect(worked("=GROWTH({3,6,12},,4)")).toBeCloseTo(24, 9)
  })
  it("go through the origin when told to", () => {
    // Slope Σxy/Σx² = (1·2 + 2·3)/(1 + 4) = 8/5.
    expect(worked("=TREND({2,3},{1,2},10,FALSE)")).toBeCloseTo(16, 12)
    // 2 and 4 are 1·2ˣ, whatever the line may do.
    expect(worked("=GROWTH({2,4},{1,2},5,FALSE)")).toBeCloseTo(32, 9)
    expect(worked("=TREND({2,3},{0,0},10,FALSE)")).toMatchObject({reason: "All x values are 0"})
  })
  it("refuse a growth of what is not above 0", () =>
    expect(worked("=GROWTH({3,0,12},{1,2,3},4)")).toMatchObject({
      code: "#NUM!",
      reason: "Known y must be above 0, not 0",
    }))
})
