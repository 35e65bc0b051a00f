import {describe, expect, it} from "vitest"
import {asIfAge} from "../../../functions/crop/asIfAge"
import {cell} from "../cell"

const ages = [0, 1, 2, 3, 4, 5, 6, 8]
const shares = [0, 0, 0.15, 0.5, 0.8, 0.95, 1, 1]

describe("asIfAge", () => {
  it("goes by the ratio of the curve at both ages", () => {
    expect(asIfAge(2400, 4, 7, ages, shares)).toBeCloseTo(3000, 9) // 2400/0.8
    expect(asIfAge(3000, 7, 3, ages, shares)).toBeCloseTo(1500, 9)
    expect(asIfAge(1300, 3.5, 6, ages, shares)).toBeCloseTo(2000, 9) // the line gives 0.65
  })
  it("leaves a record of the same age as it is, and comes back", () => {
    expect(asIfAge(2345, 4, 4, ages, shares)).toBe(2345)
    expect(asIfAge(asIfAge(2345, 4, 6, ages, shares) as number, 6, 4, ages, shares)).toBeCloseTo(2345, 9)
  })
  it("makes ages 3 to 6 of one stand agree, where the plain mean falls short", () => {
    const record = [3, 4, 5, 6].map((age) => ({age, kg: 4000 * shares[ages.indexOf(age)]!}))
    for (const {age, kg} of record) expect(asIfAge(kg, age, 7, ages, shares)).toBeCloseTo(4000, 9)
    expect(record.reduce((sum, {kg}) => sum + kg, 0) / 4).toBe(3250)
  })
  it("refuses a record from an age without crop, and an age outside the curve", () => {
    expect(asIfAge(100, 1, 7, ages, shares)).toEqual({
      refused: "The age curve has no crop at age 1: its yield says nothing about age 7",
      code: "#DIV/0!",
    })
    expect(asIfAge(100, 4, 9, ages, shares)).toMatchObject({code: "#N/A"})
    expect(asIfAge(100, 9, 4, ages, shares)).toMatchObject({code: "#N/A"})
  })
})

it("CROP.AS_IF_AGE refuses ages that do not rise", () => {
  expect(cell("=CROP.AS_IF_AGE(2400,4,7,{4,3},{0.5,1})")).toMatchObject({code: "#VALUE!"})
})
