import {describe, expect, it} from "vitest"
import {sugar} from "../../../functions/root/sugar"
import {cell} from "../cell"

describe("sugar", () => {
  it("lies on the line: 20·18.5 + 15 is 385", () => expect(sugar(18.5, 20, 15)).toBe(385))

  it("is the offset at a reading of 0 and rises by the slope for each °Brix", () => {
    expect(sugar(0, 20, 15)).toBe(15)
    expect((sugar(19.5, 20, 15) as number) - (sugar(18.5, 20, 15) as number)).toBeCloseTo(20, 10)
  })
  it("may be 0, but refuses less", () => {
    expect(sugar(4, 20, -80)).toBe(0)
    expect(sugar(3, 20, -80)).toEqual({
      refused: "Your line gives -20.0 mg/g at 3 °Brix, which is below 0",
      code: "#NUM!",
    })
  })
  it("refuses as much as the whole root", () => {
    expect(sugar(49, 20, 15)).toBe(995)
    expect(sugar(50, 20, 0)).toEqual({
      refused: "Your line gives 1000.0 mg/g at 50 °Brix, which is no less than the whole root (1000 mg/g)",
      code: "#NUM!",
    })
  })
})

describe("ROOT.SUGAR in a cell", () => {
  it("refuses a reading outside 0 to 50 °Brix and a line that falls", () => {
    expect(cell("=ROOT.SUGAR(50.1,10,0)")).toEqual({
      code: "#NUM!",
      reason: "Refractometer reading of the sap must be from 0 to 50 °Brix, not 50.1 °Brix",
    })
    expect(cell("=ROOT.SUGAR(-1,10,100)")).toMatchObject({code: "#NUM!"})
    expect(cell("=ROOT.SUGAR(15,0,100)")).toMatchObject({
      code: "#NUM!",
      reason: "Slope of your line must be above 0 mg/g per °Brix, not 0 mg/g per °Brix",
    })
  })
  it("is not measured yet while the reading is blank", () => {
    expect(cell("=ROOT.SUGAR(T!A1,20,15)")).toEqual({
      code: "#N/A",
      reason: "Refractometer reading of the sap: not measured yet",
    })
  })
})
