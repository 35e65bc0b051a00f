import {describe, expect, it} from "vitest"
import {opened, worked} from "./sheet"

const diameters = [[7], [8], [11.5], [12], [15], ["x"], [null]]

// OASIS (2011). OpenDocument 1.2 part 2, 6.18.29: the intervals include their upper borders.
describe("FREQUENCY", () => {
  it("counts the numbers at or below one border", () => {
    expect(worked("=FREQUENCY(T!A1:A7,8)", diameters)).toBe(2)
    expect(worked("=FREQUENCY(T!A1:A7,7.9)", diameters)).toBe(1)
    expect(worked("=FREQUENCY(T!A1:A7,T!A4)", diameters)).toBe(4)
  })
  it("gives the count between two borders as a difference, and all counts together are all numbers", () => {
    expect(worked("=FREQUENCY(T!A1:A7,12)-FREQUENCY(T!A1:A7,8)", diameters)).toBe(2)
    expect(worked('=FREQUENCY(T!A1:A7,12)+COUNTIF(T!A1:A7,">12")-COUNT(T!A1:A7)', diameters)).toBe(0)
  })
  it("refuses more than one border, and none", () => {
    expect(worked("=FREQUENCY(T!A1:A7,{8,12})", diameters)).toMatchObject({
      code: "#VALUE!",
      reason: "FREQUENCY takes one border here, not 2",
    })
    expect(worked("=FREQUENCY(T!A1:A7,T!B1)", diameters)).toMatchObject({code: "#VALUE!"})
  })
  it("follows an edit", () => {
    const {valueOf, enter} = opened(["=FREQUENCY(T!A1:A7,8)"], diameters)
    enter("A3", 3)
    expect(valueOf()).toBe(3)
  })
})
