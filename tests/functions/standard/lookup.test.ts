import {describe, expect, it} from "vitest"
import {opened, worked} from "./sheet"

const sizes = [
  [8, "thin", "2026-05-01", 5],
  [10, "small", "2026-05-08", 6],
  [12, "medium", "2026-05-15", null],
  [16, "large", "2026-05-22", 8],
]

// OASIS (2011). OpenDocument 1.2 part 2, 6.14.8.
describe("LOOKUP", () => {
  it("takes the largest key at or below what is looked for, with results of their own", () => {
    expect(worked("=LOOKUP(11,T!A1:A4,T!B1:B4)", sizes)).toBe("small")
    expect(worked("=LOOKUP(12,T!A1:A4,T!B1:B4)", sizes)).toBe("medium")
    expect(worked("=LOOKUP(99,T!A1:A4,T!B1:B4)", sizes)).toBe("large")
    expect(worked("=LOOKUP(11,T!A1:A4,{1,2,3,4})", sizes)).toBe(2) // a column of keys, a row of results
  })
  it("searches the first column and gives the last when it is square or taller", () => {
    expect(worked("=LOOKUP(11,T!A1:B4)", sizes)).toBe("small")
    expect(worked("=LOOKUP(2,{1,10;2,20})")).toBe(20)
  })
  it("searches the first row and gives the last when it is wider", () => {
    expect(worked("=LOOKUP(2,{1,2,3;10,20,30})")).toBe(20)
    expect(worked("=LOOKUP(2,{1,2,3;4,5,6;7,8,9})")).toBe(3) // square: by column
  })
  it("takes the last of equal keys", () => expect(worked("=LOOKUP(2,{1,2,2,3},{10,20,30,40})")).toBe(30))
  it("puts numbers before text, whatever the case of letters", () => {
    expect(worked('=LOOKUP("b",{-2,0,2,"A","B"},{1,2,3,4,5})')).toBe(5)
    expect(worked('=LOOKUP(7,{-2,0,2,"A","B"},{1,2,3,4,5})')).toBe(3)
  })
  it("finds nothing below the first key, and no number for text", () => {
    expect(worked("=LOOKUP(7,T!A1:A4,T!B1:B4)", sizes)).toMatchObject({
      code: "#N/A",
      reason: "Nothing at or below 7 stands there",
    })
    expect(worked('=LOOKUP("b",{1,2,3},{4,5,6})')).toMatchObject({code: "#N/A"})
    expect(worked("=LOOKUP(T!D3,T!A1:A4,T!B1:B4)", sizes)).toMatchObject({
      code: "#N/A",
      reason: "What is looked for is blank",
    })
  })
  it("passes over blank keys, and gives a date as a date", () => {
    expect(worked("=LOOKUP(7,T!D1:D4,T!B1:B4)", sizes)).toBe("small")
    const {valueOf, isDate} = opened(["=LOOKUP(11,T!A1:A4,T!C1:C4)", "=LOOKUP(11,T!A1:A4)"], sizes)
    expect(valueOf()).toBe(46150) // 8 May is 13 days after 25 April 2026, day 46137
    expect([isDate(0), isDate(1)]).toEqual([true, false])
  })
  it("gives a result that is an error, and passes on one among the keys", () => {
    const faulty = [
      [1, "=1/0"],
      [2, 5],
      ["=NA()", 6],
    ]
    expect(worked("=LOOKUP(1,T!A1:A2,T!B1:B2)", faulty)).toMatchObject({code: "#DIV/0!"})
    expect(worked("=LOOKUP(2,T!A1:A2,T!B1:B2)", faulty)).toBe(5)
    expect(worked("=LOOKUP(2,T!A1:A3,T!B1:B3)", faulty)).toMatchObject({code: "#N/A", reason: ""})
  })
  it("refuses results of another number, or of several rows and columns", () => {
    expect(worked("=LOOKUP(11,T!A1:A4,T!B1:B3)", sizes)).toMatchObject({
      code: "#VALUE!",
      reason: "4 cells are searched and there are 3 results: sizes differ",
    })
    expect(worked("=LOOKUP(11,T!A1:A4,T!B1:C2)", sizes)).toMatchObject({code: "#VALUE!"})
  })
  it("follows an edit of key, result and what is looked for", () => {
    const {valueOf, enter} = opened(
      ["=LOOKUP(T!D1,T!A1:A4,T!B1:B4)"],
      [[8, "a", null, 11], ...sizes.slice(1)],
    )
    expect(valueOf()).toBe("small")
    enter("B2", "slim")
    expect(valueOf()).toBe("slim")
    enter("A3", 11)
    expect(valueOf()).toBe("medium")
    enter("D1", 8)
    expect(valueOf()).toBe("a")
  })
})
