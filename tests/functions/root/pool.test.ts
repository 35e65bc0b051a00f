import {describe, expect, it} from "vitest"
import {pool} from "../../../functions/root/pool"
import {structure} from "../../../functions/root/structure"
import {cell} from "../cell"

describe("pool", () => {
  it("is 2 000 kg/ha for 400 mg/g in 250 g of 20 000 plants", () => {
    // 0.4·250 g = 100 g sugar a plant; 100 g·20 000 = 2 000 kg.
    expect(pool(400, 250, 20000)).toBe(2000)
  })
  it("gives the sugar of a plant back for one plant", () => expect(pool(500, 600, 1)).toBeCloseTo(0.3, 12))

  it("adds up with the structural root to all the dry root", () => {
    for (const sugar of [0, 288.2, 420.5, 999])
      expect(pool(sugar, 480, 18586) + structure(sugar, 480, 18586)).toBeCloseTo((480 * 18586) / 1000, 9)
  })
  it("is 0 without sugar, root or plants", () => {
    expect([pool(0, 250, 20000), pool(400, 0, 20000), pool(400, 250, 0)]).toEqual([0, 0, 0])
  })
})

describe("ROOT.POOL in a cell", () => {
  it("refuses what is below 0 and a root that is all sugar", () => {
    expect(cell("=ROOT.POOL(400,-1,20000)")).toEqual({
      code: "#NUM!",
      reason: "Dry root of a plant must be 0 g/plant or more, not -1 g/plant",
    })
    expect(cell("=ROOT.POOL(400,250,-1)")).toMatchObject({code: "#NUM!"})
    expect(cell("=ROOT.POOL(1000,250,20000)")).toMatchObject({code: "#NUM!"})
    expect(cell("=ROOT.POOL(400,T!A1,20000)")).toEqual({
      code: "#N/A",
      reason: "Dry root of a plant: not measured yet",
    })
  })
})
