import {describe, expect, it} from "vitest"
import {opened, worked} from "./sheet"

// OASIS (2011). OpenDocument 1.2 part 2, 6.18.50: of several the smallest; an error when no two are equal.
describe("MODE", () => {
  it.each([
    ["{7,5,5,7,9}", 5],
    ["9,9,1,1,1", 1],
    ["{-3,-3,2},2,2", 2],
    ["T!A1:A5,12", 12],
  ])("MODE(%s) is %f", (given, wanted) =>
    expect(worked(`=MODE(${given})`, [[12], [8], ["8"], [null], [true]])).toBe(wanted),
  )
  it("refuses numbers of which no two are equal, and none at all", () => {
    for (const given of ["1,2,3", "T!A1:A3"])
      expect(worked(`=MODE(${given})`)).toMatchObject({code: "#N/A", reason: "No number occurs twice"})
  })
  it("refuses text that is given in the place of numbers", () =>
    expect(worked('=MODE(1,1,"1")')).toMatchObject({reason: 'The numbers must be numbers, not the text "1"'}))
  it("follows an edit", () => {
    const {valueOf, enter} = opened(["=MODE(T!A1:A3)"], [[1], [1], [2]])
    enter("A1", 2)
    expect(valueOf()).toBe(2)
  })
})
