import type {RawCellContent} from "hyperformula"
import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {onDay} from "../../../functions/climate/onDay"
import {soilFromAir} from "../../../functions/climate/soilFromAir"
import {cell} from "../cell"

const flat = {
  air: new Float64Array(365).fill(10),
  soil: new Float64Array(365).fill(9),
  sun: new Float64Array(365).fill(12),
}
/** Warms by a tenth of a degree a day, the soil 3 °C behind. */
const rising = {
  air: Float64Array.from({length: 365}, (_, i) => i / 10),
  soil: Float64Array.from({length: 365}, (_, i) => i / 10 - 3),
  sun: flat.sun,
}
const day = dayOf("2026-05-10")!
const last = (count: number) => Array.from({length: count}, (_, i) => day - i)

describe("soilFromAir", () => {
  it("adds the swing of how much warmer the air was", () => {
    // 2 °C warmer on every day: 9 + 0.75·2.
    expect(soilFromAir(day, last(20), Array(20).fill(12), flat, 0.75, 20)).toBeCloseTo(10.5, 12)
    expect(soilFromAir(day, last(20), Array(20).fill(8), flat, 0.5, 20)).toBeCloseTo(8, 12)
  })
  it("compares each record with the normal of its own day", () => {
    const airs = last(20).map((recorded) => onDay(rising.air, recorded) + 1)
    expect(soilFromAir(day, last(20), airs, rising, 0.75, 20)).toBeCloseTo(onDay(rising.soil, day) + 0.75, 12)
  })
  it("counts the days that end with the day asked for, and no other", () => {
    // Of the four only the first two count: 9 + 0.75·(4 + 0)/2.
    const days = [day, day - 19, day - 20, day + 1]
    expect(soilFromAir(day, days, [14, 10, 50, 50], flat, 0.75, 20)).toBeCloseTo(10.5, 12)
  })
  it("leaves out rows that lack the date or the air", () => {
    expect(soilFromAir(day, [day, null, day - 1], [14, 50, null], flat, 0.75, 20)).toBeCloseTo(12, 12)
  })
  it("gives the normal where nothing is recorded", () => {
    expect(soilFromAir(day, [day - 40], [50], flat, 0.75, 20)).toBe(9)
    expect(soilFromAir(day, [], [], flat, 0.75, 20)).toBe(9)
  })
  it("goes over the turn of the year", () => {
    const newYear = dayOf("2027-01-01")!
    // Normal on 1 January 0 and on 31 December 36.4: 1 °C warmer on both.
    expect(soilFromAir(newYear, [newYear, newYear - 1], [1, 37.4], rising, 0.75, 20)).toBeCloseTo(
      -3 + 0.75,
      12,
    )
  })
  it("refuses lists of different length", () => {
    expect(soilFromAir(day, last(2), [10], flat, 0.75, 20)).toEqual({
      refused: "Days of the records has 2 cells and the air temperatures 1: sizes differ",
      code: "#VALUE!",
    })
  })
})

describe("CLIMATE.SOIL_FROM_AIR", () => {
  const climate = Array.from({length: 12}, () => [10, 9, 12])
  const soil = (records: RawCellContent[][], more = "") =>
    cell(
      `=CLIMATE.SOIL_FROM_AIR("2026-05-10",T!D1:D3,T!E1:E3,T!A1:C12${more})`,
      climate.map((row, i) => [...row, ...(records[i] ?? [])]),
    )

  it("takes three quarters and 20 days unless told otherwise", () => {
    const records = [
      ["2026-05-10", 14],
      ["2026-04-21", 10],
      ["2026-04-20", 30],
    ]
    expect(soil(records)).toBeCloseTo(10.5, 12)
    // One more day lets the third in: 9 + 1·(4 + 0 + 20)/3.
    expect(soil(records, ",1,21")).toBeCloseTo(17, 12)
  })
  it("gives the normal while the table of records is blank", () => {
    expect(soil([])).toBeCloseTo(9, 12)
  })
  it("leaves out an air temperature that is not there yet and passes other errors on", () => {
    expect(
      soil([
        ["2026-05-10", 14],
        ["2026-05-09", "=NA()"],
      ]),
    ).toBeCloseTo(12, 12)
    expect(
      soil([
        ["2026-05-10", 14],
        ["2026-05-09", "=1/0"],
      ]),
    ).toMatchObject({code: "#DIV/0!"})
  })
  it("refuses a part of a day", () => {
    expect(soil([], ",0.75,7.5")).toEqual({
      code: "#NUM!",
      reason: "Days of air that count must be a whole number from 1 to 182 days, not 7.5 days",
    })
  })
})
