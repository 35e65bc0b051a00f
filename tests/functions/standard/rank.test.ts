import {describe, expect, it} from "vitest"
import {opened, worked} from "./sheet"

const numbers = [[10], [30], [20], [30], ["x"], [null]]

// OASIS (2011). OpenDocument 1.2 part 2, 6.18.65: equal numbers share a rank and put off those after them.
describe("RANK", () => {
  it("counts from the largest down, or from the smallest up", () => {
    const ranks = (order: string) => [10, 20, 30].map((n) => worked(`=RANK(${n},T!A1:A6${order})`, numbers))
    expect(ranks("")).toEqual([4, 3, 1])
    expect(ranks(",0")).toEqual([4, 3, 1])
    expect(ranks(",1")).toEqual([1, 2, 3])
    expect(ranks(",-2")).toEqual([1, 2, 3])
  })
  it("adds up, both ways, to one more than the count less the ties", () => {
    // k numbers equal to it: rank down + rank up = n + 2 - k; here n = 4.
    expect(worked("=RANK(30,T!A1:A4)+RANK(30,T!A1:A4,1)", numbers)).toBe(4)
    expect(worked("=RANK(20,T!A1:A4)+RANK(20,T!A1:A4,1)", numbers)).toBe(5)
  })
  it("refuses a number that is not there", () =>
    expect(worked("=RANK(15,T!A1:A6)", numbers)).toMatchObject({
      code: "#N/A",
      reason: "15 is not among the numbers",
    }))
  it("passes on an error among the numbers and follows an edit", () => {
    const {valueOf, enter} = opened(["=RANK(20,T!A1:A4)"], numbers)
    enter("A1", 40)
    expect(valueOf()).toBe(4)
    enter("A2", "=1/0")
    expect(valueOf()).toMatchObject({code: "#DIV/0!"})
  })
})
