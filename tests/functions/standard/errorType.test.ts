import {describe, expect, it} from "vitest"
import {opened, worked} from "./sheet"

describe("ERROR.TYPE", () => {
  // OASIS (2011). OpenDocument 1.2 part 2, 6.13.11 says 7 for NA(); table 4 has the others.
  it.each([
    ["NA()", 7],
    ["1/0", 2],
    ['"a"+1', 3],
    ["NOSUCH(1)", 5],
    ["SQRT(-1)", 6],
    ["T!A1", 7],
    ["SPEAR.HEAT(7,19,5)", 6], // a refusal of ours
  ])("ERROR.TYPE(%s) is %i", (formula, wanted) =>
    expect(worked(`=ERROR.TYPE(${formula})`, [["=NA()"]])).toBe(wanted),
  )
  it("knows what was cut off by removing a row", () => expect(worked("=ERROR.TYPE(#REF!)")).toBe(4))
  it("refuses what is no error, and an error without a number", () => {
    expect(worked("=ERROR.TYPE(5)")).toMatchObject({code: "#VALUE!", reason: "5 is no error"})
    expect(worked("=ERROR.TYPE(T!A1)")).toMatchObject({reason: "A blank is no error"})
    expect(worked("=ERROR.TYPE(T!A1)", [["=A1"]])).toMatchObject({
      reason: "The standard has no number for this error",
    })
  })
  it("follows an edit", () => {
    const {valueOf, enter} = opened(["=ERROR.TYPE(T!A1)"], [["=1/0"]])
    enter("A1", "=NA()")
    expect(valueOf()).toBe(7)
  })
})
