import {describe, expect, it} from "vitest"
import {history} from "../../../functions/crop/history"
import {cell} from "../cell"

describe("history", () => {
  it("gives the mean of the last three years, as a federal farm loan plan begins", () => {
    // 7 CFR 761.104 (Farm Service Agency): a farm's own last three years come first; by hand for
    // 4 200, 2 400 and 4 500: 11 100 / 3 = 3 700. With 3 600 put for the disaster year's 2 400: 12 300 / 3 = 4 100.
    expect(history([2023, 2024, 2025], [4200, 2400, 4500], 3, [])).toBe(3700)
    expect(history([2023, 2024, 2025], [4200, 3600, 4500], 3, [])).toBe(4100)
  })
  it("gives the means of six harvest years of two trials", () => {
    // Brock, D.E. (2012). High density planting of asparagus. Acta Horticulturae 950, 33-35: crates of 30 lb an acre.
    // 1 310 / 6 = 218.33, where 218.6 is printed; 1 293 / 6 = 215.5.
    const years = [1, 2, 3, 4, 5, 6]
    expect(history(years, [75, 301, 275, 249, 225, 185], 6, [])).toBeCloseTo(218.33, 2)
    expect(history(years, [52, 273, 275, 255, 242, 196], 6, [])).toBe(215.5)
  })
  it("takes the latest years, wherever their rows stand", () => {
    // (3 820 + 4 460) / 2 = 4 140; all three: 12 430 / 3 = 4 143.33.
    expect(history([2023, 2024, 2025], [4150, 3820, 4460], 2, [])).toBe(4140)
    expect(history([2025, 2023, 2024], [4460, 4150, 3820], 2, [])).toBe(4140)
    expect(history([2025, 2023, 2024], [4460, 4150, 3820], 3, [])).toBeCloseTo(12430 / 3, 9)
    expect(history([2023, 2024, 2025], [4150, 3820, 4460], 1, [])).toBe(4460)
  })
  it("passes over a year without a record and takes an older one", () => {
    expect(history([2019, 2022, 2025], [3000, 4000, 5000], 3, [])).toBe(4000)
  })
  it("leaves out the years to skip and takes older ones for them", () => {
    expect(history([2022, 2023, 2024, 2025], [4000, 4200, 2400, 4400], 3, [2024])).toBe(4200)
    // A year that is not on record may be skipped too.
    expect(history([2023, 2024, 2025], [4200, 2400, 4500], 3, [1999])).toBe(3700)
  })
  it("counts a year of no crop", () => expect(history([2024, 2025], [0, 4000], 2, [])).toBe(2000))

  it("has no mean of fewer years than asked for", () => {
    expect(history([2024, 2025], [3820, 4460], 3, [])).toEqual({
      refused: "only 2 of 3 years recorded",
      code: "#N/A",
    })
    expect(history([2023, 2024, 2025], [4200, 2400, 4500], 3, [2024])).toEqual({
      refused: "only 2 of 3 years recorded, with 1 skipped",
      code: "#N/A",
    })
  })
  it("refuses a year given twice, also one that is old or skipped", () => {
    const refused = {refused: "Year 2020 is given twice", code: "#VALUE!"}
    expect(history([2020, 2020, 2025], [4200, 2400, 4500], 1, [])).toEqual(refused)
    expect(history([2020, 2025, 2020], [4200, 2400, 4500], 1, [2020])).toEqual(refused)
  })
})

describe("CROP.HISTORY in a cell", () => {
  const rows = [
    [2025, 4460, "record"],
    [2023, 4150, ""],
    [2024, 3820, ""],
    [2026, null, "not cut yet"],
    [null, null, "end"],
  ]
  it("leaves out a year whose yield is blank", () => {
    expect(cell("=CROP.HISTORY(T!A:A,T!B:B,2)", rows)).toBe(4140)
    expect(cell("=CROP.HISTORY(T!A:A,T!B:B,4)", rows)).toEqual({
      code: "#N/A",
      reason: "only 3 of 4 years recorded",
    })
  })
  it("skips no year when the list of years to skip is blank", () => {
    expect(cell("=CROP.HISTORY(T!A:A,T!B:B,2,T!E1:E3)", rows)).toBe(4140)
    expect(cell("=CROP.HISTORY(T!A:A,T!B:B,2,T!E1)", rows)).toBe(4140)
    expect(cell("=CROP.HISTORY(T!A:A,T!B:B,2,)", rows)).toBe(4140)
  })
  it("skips one year or several", () => {
    // Without 2024: (4 460 + 4 150) / 2 = 4 305.
    expect(cell("=CROP.HISTORY(T!A:A,T!B:B,2,2024)", rows)).toBe(4305)
    expect(cell("=CROP.HISTORY(T!A:A,T!B:B,1,{2024,2025})", rows)).toBe(4150)
  })
  it("is not measured yet without a record", () => {
    expect(cell("=CROP.HISTORY(T!A1:A1,T!B1:B1,3)", [[2026, null]])).toEqual({
      code: "#N/A",
      reason: "Yields of those years: not measured yet",
    })
  })
  it("refuses a count that is no whole number and a year that is none", () => {
    expect(cell("=CROP.HISTORY(T!A:A,T!B:B,0)", rows)).toMatchObject({code: "#NUM!"})
    expect(cell("=CROP.HISTORY(T!A:A,T!B:B,1.5)", rows)).toMatchObject({code: "#NUM!"})
    expect(cell("=CROP.HISTORY(25,4000,1)")).toEqual({
      code: "#NUM!",
      reason: "Years on record must be a whole number from 1900 to 2200, not 25",
    })
  })
})
