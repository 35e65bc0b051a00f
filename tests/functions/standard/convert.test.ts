import {describe, expect, it} from "vitest"
import {opened, worked} from "./sheet"

const converted = (number: number, from: string, into: string) =>
  worked(`=CONVERT(${number},"${from}","${into}")`)

describe("CONVERT", () => {
  it.each([
    // OASIS (2011). OpenDocument 1.2 part 2, 6.16.18, table 24: factors given as exact.
    ["uk_acre", "m2", 4046.8564224],
    ["us_acre", "m2", 4046 + 13525426 / 15499969],
    ["ha", "m2", 10_000],
    ["ar", "m^2", 100],
    ["Morgen", "m2", 2500],
    ["ft2", "m2", 0.3048 ** 2],
    ["in^2", "m2", 0.0254 ** 2],
    ["ft", "m", 0.3048],
    ["in", "cm", 2.54],
    ["mi", "m", 1609.344],
    ["Nmi", "m", 1852],
    ["survey_mi", "m", 6336000 / 3937],
    ["yd", "m", 0.9144],
    ["ell", "in", 45],
    ["lbm", "g", 453.59237],
    ["ton", "lbm", 2000],
    ["cwt", "lbm", 100],
    ["shweight", "lbm", 100],
    ["uk_cwt", "lbm", 112],
    ["lcwt", "lbm", 112],
    ["uk_ton", "lbm", 2240],
    ["LTON", "brton", 1],
    ["stone", "lbm", 14],
    ["ozm", "lbm", 1 / 16],
    ["grain", "lbm", 1 / 7000],
    // Table 25, prefixes; in a square unit they count twice.
    ["kg", "g", 1000],
    ["Mg", "kg", 1000],
    ["km2", "m2", 1e6],
    ["km2", "ha", 100],
    ["dam", "m", 10],
    ["em", "m", 10],
    ["mm", "m", 0.001],
    ["har", "ha", 1], // a hectare is a hundred ares
  ])("makes of 1 %s in %s %f", (from, into, factor) => {
    expect((converted(1, from, into) as number) / factor).toBeCloseTo(1, 12)
    expect(converted(factor, into, from) as number).toBeCloseTo(1, 12)
  })
  it("knows 43 560 square feet to an acre, and 640 acres to a square mile, of either kind of foot", () => {
    expect(converted(1, "uk_acre", "ft2")).toBeCloseTo(43_560, 6)
    expect(converted(1, "mi2", "uk_acre")).toBeCloseTo(640, 9)
    // A survey foot is 1200/3937 m.
    expect(worked(`=CONVERT(1,"us_acre","m2")/(1200/3937)^2`)).toBeCloseTo(43_560, 6)
  })
  it("knows that 1 kg/ha is 0.892179 lb/ac", () =>
    // By the exact factors 453.59237 and 4046.8564224: 1000/453.59237/(10 000/4046.8564224).
    expect(
      Math.abs((worked('=CONVERT(1,"kg","lbm")/CONVERT(1,"ha","uk_acre")') as number) - 0.892179),
    ).toBeLessThan(5e-7))

  it.each([
    [0, "C", "F", 32],
    [100, "C", "F", 212],
    [-40, "F", "C", -40],
    [0, "C", "K", 273.15],
    [0, "K", "Rank", 0],
    [32, "F", "Rank", 491.67],
    [80, "Reau", "C", 100], // °C = °Ré · 5/4
    [0, "Reau", "C", 0],
    [25, "cel", "fah", 77],
    [1, "kK", "K", 1000],
  ])("makes of %f degrees %s in %s %f", (degrees, from, into, wanted) =>
    expect(converted(degrees, from, into)).toBeCloseTo(wanted, 10),
  )
  it("goes there and back", () => {
    for (const [a, b] of [
      ["F", "Reau"],
      ["us_acre", "yd2"],
      ["stone", "kg"],
    ])
      expect(worked(`=CONVERT(CONVERT(12.34,"${a}","${b}"),"${b}","${a}")`)).toBeCloseTo(12.34, 10)
  })
  it("leaves a number as it is in its own unit", () => expect(converted(0.1, "F", "fah")).toBe(0.1))

  it("refuses a unit of another kind, an unknown one, a wrong case and a prefix where none goes", () => {
    const reasons = (from: string, into: string) => (converted(1, from, into) as {reason: string}).reason
    expect(reasons("kg", "ha")).toBe('"kg" is a unit of mass and "ha" one of area')
    expect(reasons("gal", "m2")).toBe('There is no unit "gal" of area, length, mass or temperature')
    expect(reasons("HA", "m2")).toContain('There is no unit "HA"')
    expect(reasons("m2", "klbm")).toContain('There is no unit "klbm"')
    expect(reasons("kha", "m2")).toContain('There is no unit "kha"')
    expect(converted(1, "gal", "m2")).toMatchObject({code: "#VALUE!"})
  })
  it("says what to write for a unit that people write otherwise", () => {
    const reason = (from: string) => (converted(1, from, "g") as {reason: string}).reason
    expect(reason("acre")).toBe('There is no unit "acre": write "us_acre" or "uk_acre"')
    expect(reason("lb")).toBe('There is no unit "lb": write "lbm"')
    expect(reason("t")).toBe('There is no unit "t": write "Mg" (1000 kg) or "ton" (2000 lb)')
  })
  it("converts a whole range within a sum and follows an edit", () => {
    const {valueOf, enter} = opened(['=SUMPRODUCT(CONVERT(T!A1:A2,"ha","m2"))'], [[1], [2]])
    expect(valueOf()).toBe(30_000)
    enter("A2", 4)
    expect(valueOf()).toBe(50_000)
  })
})
