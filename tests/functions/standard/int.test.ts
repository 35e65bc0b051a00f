import {describe, expect, it} from "vitest"
import {opened, worked} from "./sheet"

// OASIS (2011). OpenDocument 1.2 part 2, 6.17.2: "the nearest integer whose value is less than or equal to" the number.
describe("INT", () => {
  it.each([
    [-1.5, -2],
    [-1.2, -2],
    [-0.1, -1],
    [-2, -2],
    [0, 0],
    [1.9, 1],
  ])("gives for %f the whole number %i at or below it", (number, whole) =>
    expect(worked(`=INT(${number})`)).toBe(whole),
  )
  it("is TRUNC at 0 and above and one less below, but for whole numbers", () => {
    for (const number of [0, 0.5, 3, 7.25]) expect(worked(`=INT(${number})-TRUNC(${number})`)).toBe(0)
    for (const number of [-0.5, -7.25]) expect(worked(`=INT(${number})-TRUNC(${number})`)).toBe(-1)
  })
  it("keeps 6.16.42 true: MOD(a,b) is a-b*INT(a/b)", () => {
    for (const [a, b] of [
      [-3, 12],
      [3, -12],
      [-7, -2],
      [7, 2],
    ])
      expect(worked(`=MOD(${a},${b})-(${a}-${b}*INT(${a}/${b}))`)).toBe(0)
  })
  it("takes text that reads as a number, a logical value and a blank as the engine's functions do", () => {
    expect(worked('=INT("-1.5")')).toBe(-2)
    expect(worked("=INT(TRUE)")).toBe(1)
    expect(worked("=INT(T!A1)")).toBe(0)
    expect(worked('=INT("a")')).toMatchObject({code: "#VALUE!"})
  })
  it("works within sums over a range", () =>
    expect(worked("=SUMPRODUCT(INT(T!A1:A3))", [[-1.5], [1.5], [-0.5]])).toBe(-2))
  it("follows the cell it reads", () => {
    const {valueOf, enter} = opened(["=INT(T!A1)"], [[2.5]])
    expect(valueOf()).toBe(2)
    enter("A1", -2.5)
    expect(valueOf()).toBe(-3)
  })
})
