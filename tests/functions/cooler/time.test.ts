import {describe, expect, it} from "vitest"
import {time} from "../../../functions/cooler/time"
import {cell} from "../cell"

describe("time", () => {
  it("takes one half-time for each halving of the difference to the water", () => {
    expect(time(25, 13, 1, 2.2)).toBeCloseTo(2.2, 12)
    expect(time(25, 4, 1, 2.2)).toBeCloseTo(6.6, 12) // seven eighths: three half-times
    expect(time(25, 4, 1, 1.1)).toBeCloseTo(3.3, 12)
    // log2(24/2) = 3.58496; by 2.2 = 7.887
    expect(time(25, 3, 1, 2.2)).toBeCloseTo(7.887, 3)
  })
  it("refuses water that never gets there, and nothing to cool", () => {
    expect(time(25, 3, 3, 2.2)).toEqual({
      refused: "Water at 3 °C never cools spears to 3 °C: it must be colder than that",
      code: "#NUM!",
    })
    expect(time(3, 3, 1, 2.2)).toMatchObject({refused: "There is nothing to cool from 3 °C to 3 °C"})
  })
})

it.each(["25,3,-1,2.2", "25,3,1,0", "25,-0.7,1,2.2"])("COOLER.TIME refuses %s", (given) =>
  expect(cell(`=COOLER.TIME(${given})`)).toMatchObject({code: "#NUM!"}),
)
