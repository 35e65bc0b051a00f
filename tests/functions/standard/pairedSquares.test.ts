import {describe, expect, it} from "vitest"
import {opened, worked} from "./sheet"

describe("SUMX2MY2, SUMX2PY2 and SUMXMY2", () => {
  const rows = [
    [3, 1],
    [4, 2],
    [null, 9],
    ["x", 9],
    [9, null],
  ]
  it.each([
    ["SUMX2MY2", 9 - 1 + 16 - 4],
    ["SUMX2PY2", 9 + 1 + 16 + 4],
    ["SUMXMY2", 4 + 4],
  ])("%s passes over what is no pair of numbers", (name, wanted) =>
    expect(worked(`=${name}(T!A1:A5,T!B1:B5)`, rows)).toBe(wanted),
  )
  it("follow the identities x² - y² + 2y² = x² + y² and (x - y)² = x² + y² - 2xy", () => {
    const {valueOf} = opened(
      [
        "=SUMX2MY2(T!A1:A2,T!B1:B2)+2*SUMSQ(T!B1:B2)-SUMX2PY2(T!A1:A2,T!B1:B2)",
        "=SUMXMY2(T!A1:A2,T!B1:B2)-SUMX2PY2(T!A1:A2,T!B1:B2)+2*SUMPRODUCT(T!A1:A2,T!B1:B2)",
      ],
      rows,
    )
    expect([valueOf(0), valueOf(1)]).toEqual([0, 0])
  })
  it("count dates and money as the numbers they are", () => {
    expect(worked("=SUMXMY2(T!A1:A1,T!B1:B1)", [["2026-04-25", "2026-04-22"]])).toBe(9)
    expect(worked("=SUMX2MY2(T!A1:A1,T!B1:B1)", [["=FV(0,1,-3)", 1]])).toBe(8)
  })
  it("refuse ranges of different size", () =>
    expect(worked("=SUMXMY2(T!A1:A2,T!B1:B3)")).toMatchObject({code: "#VALUE!"}))
})
