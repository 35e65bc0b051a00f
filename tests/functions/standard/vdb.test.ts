import {describe, expect, it} from "vitest"
import {opened, worked} from "./sheet"

describe("VDB", () => {
  it.each([
    // 1000 over 5 periods at 2/5 of the rest: 400, 240, 144; then half of the remaining 216 is more than 2/5 of it.
    [0, 1, 400],
    [1, 2, 240],
    [2, 3, 144],
    [3, 4, 108],
    [4, 5, 108],
    [0, 3, 784],
    [0.5, 1.5, 320], // half of 400 and half of 240
    [3, 3, 0],
  ])("of 1000 that end at 0 after 5 periods is from %f to %f %f", (from, to, loss) =>
    expect(worked(`=VDB(1000,0,5,${from},${to})`)).toBeCloseTo(loss, 9),
  )
  it("stops at the worth at the end of life", () => {
    // 1000, end 300: 400, then 600·2/5 = 240 down to 360, then 60 and nothing.
    expect([0, 1, 2, 3, 4].map((k) => worked(`=VDB(1000,300,5,${k},${k + 1})`))).toEqual([400, 240, 60, 0, 0])
  })
  it("keeps declining when told to, and is the engine's DDB then", () => {
    expect(worked("=VDB(1000,0,5,3,4,2,TRUE)")).toBeCloseTo(86.4, 9) // 216·2/5
    for (const period of [1, 2, 3, 4, 5])
      expect(
        worked(`=VDB(2400,300,10,${period - 1},${period},1.5,TRUE)-DDB(2400,300,10,${period},1.5)`),
      ).toBeCloseTo(0, 9)
  })
  it("loses all but the last worth over the whole life, and is SLN at the even rate down to nothing", () => {
    for (const [cost, salvage, life] of [
      [2400, 300, 10],
      [1000, 0, 3],
      [500, 500, 4],
      [900, 0, 4.5],
    ])
      expect(worked(`=VDB(${cost},${salvage},${life},0,${life})`)).toBeCloseTo(cost! - salvage!, 9)
    expect(worked("=VDB(4000,0,4,2,3,1)-SLN(4000,0,4)")).toBeCloseTo(0, 9)
  })
  it("refuses times out of order or beyond the life, and a life of 0", () => {
    expect(worked("=VDB(1000,0,5,2,1)")).toMatchObject({
      code: "#NUM!",
      reason: "Times must be in order and up to 5 periods, not 2 and 1",
    })
    expect(worked("=VDB(1000,0,5,2,6)")).toMatchObject({code: "#NUM!"})
    expect(worked("=VDB(1000,0,0,0,0)")).toMatchObject({
      code: "#NUM!",
      reason: "Periods of its life must be above 0, not 0",
    })
  })
  it("refuses a life that would take too long to work out", () => {
    expect(worked("=VDB(12000,0,12000,0,12000)")).toBeCloseTo(12000, 6)
    expect(worked("=VDB(1,0,1e9,0,1e9)")).toMatchObject({
      code: "#NUM!",
      reason: "Periods of its life must be up to 12000, not 1000000000",
    })
  })
  it("follows an edit", () => {
    const {valueOf, enter} = opened(["=VDB(T!A1,0,5,0,1)"], [[1000]])
    enter("A1", 500)
    expect(valueOf()).toBe(200)
  })
})
