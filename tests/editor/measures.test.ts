import {describe, expect, it} from "vitest"
import {measureOf, shownNumber, storedNumber, storedUnit, turned} from "../../src/editor/measures"
import {PLAIN_REGION} from "../../src/workbook/region"
import {seeded} from "../workbook/documents"

const US = {measures: "US"} as const
const shown = (value: number, unit: string) => shownNumber(value, measureOf(unit, US))
const typed = (value: number, unit: string) => storedNumber(value, measureOf(unit, US))

describe("US measures", () => {
  // Exact by definition, from memory: National Institute of Standards and Technology, Handbook 44, Appendix C, "General
  // Tables of Units of Measurement". Checked below against each other.
  it.each([
    [1, "lb", "kg", 0.45359237],
    [1, "in", "mm", 25.4],
    [1, "ft", "m", 0.3048],
    [1, "US gal", "L", 3.785411784],
    [1, "ton", "t", 0.90718474],
  ])("%d %s is %s %d", (value, us, metric, stored) => {
    expect(measureOf(metric, US).unit).toBe(us)
    expect(typed(value, metric)).toBeCloseTo(stored, 14)
  })

  it("have the acre of 43 560 square feet, and not the survey acre", () => {
    // Looked up: The World Factbook, Central Intelligence Agency, Appendix G, "Weights and Measures": acres to hectares,
    // multiply by 0.404 685 642 24; to square feet by 43 560; to square metres by 4 046.856 422 4.
    expect(typed(1, "ha")).toBeCloseTo(0.40468564224, 15)
    expect(typed(43_560, "m²")).toBeCloseTo(4046.8564224, 9)
  })

  it("hang together: 12 in are a foot, 2000 lb a ton, 231 cubic inches a gallon", () => {
    expect(turned(12, "in", "ft")).toBe(1)
    expect([turned(2000, "lb", "ton"), turned(1, "short ton", "ton")]).toEqual([1, 1])
    expect(turned(1, "ft³", "US gal")).toBeCloseTo(1728 / 231, 11)
    expect(turned(1, "mi", "ft")).toBe(5280)
  })

  it("have their own zero of temperature: water freezes at 32 °F and boils at 212 °F", () => {
    expect([0, 100, -40, 37].map((celsius) => shown(celsius, "°C"))).toEqual([32, 212, -40, 98.6])
    expect([32, 212, -40].map((fahrenheit) => typed(fahrenheit, "°C"))).toEqual([0, 100, -40])
    expect([turned(50, "°F", "°C"), turned(10, "°C", "°F")]).toEqual([10, 50])
    expect(shown(typed(0, "°C"), "°C")).toBe(0)
  })

  it("take no zero into a difference of temperature", () => {
    expect(measureOf("°C·day", US).unit).toBe("°F·day")
    expect(measureOf("°C d", US).unit).toBe("°F d")
    expect(shown(10, "°C·day")).toBe(18)
    expect(measureOf("cm/day/°C", US).unit).toBe("in/day/°F")
    expect(shown(2.54 * 1.8, "cm/day/°C")).toBe(1)
  })

  it.each([
    ["kg/ha", "lb/ac"],
    ["kg/ha/day", "lb/ac/day"],
    ["per ha", "per ac"],
    ["plants per ha", "plants per ac"],
    ["money/kg", "money/lb"],
    ["money/ha", "money/ac"],
    ["money/ha/day", "money/ac/day"],
    ["kg/h", "lb/h"],
    ["kg sugar per kg spears", "lb sugar per lb spears"],
    ["litre", "ft³"],
    ["kg/litre", "lb/ft³"],
    ["L/ha", "US gal/ac"],
    ["per day and °C", "per day and °F"],
    ["ha/day", "ac/day"],
    ["mm/day", "in/day"],
  ])("put %s as %s", (metric, us) => {
    expect(measureOf(metric, US).unit).toBe(us)
    expect(storedUnit(us, US)).toBe(metric)
  })

  it.each([
    "mg/g",
    "mg/g per °Brix",
    "MJ/m²/day",
    "°C, °C, MJ/m²/day",
    "kW",
    "money/h",
    "kJ/kg·K",
    "g/plant",
    "°Brix",
    "per √°C",
    "days",
    "share",
    "2026",
    "%",
    "",
    "lb/ac",
  ])("leave %s as it is", (unit) => {
    expect(measureOf(unit, US)).toEqual({unit, factor: 1, offset: 0, moreDecimals: 0})
    expect(shown(0.1 + 0.2, unit)).toBe(0.1 + 0.2)
  })

  it("show 4 500 kg/ha as 4 015 lb/ac", () => {
    // 4500 × 0.40468564224 / 0.45359237 = 4014.8038..., the acceptance case AG10 of the project.
    expect(Math.round(shown(4500, "kg/ha"))).toBe(4015)
    expect(shown(1, "kg/ha")).toBeCloseTo(0.40468564224 / 0.45359237, 12)
    expect(shown(1, "money/kg")).toBeCloseTo(0.45359237, 12)
    expect(shown(1, "money/ha")).toBeCloseTo(0.40468564224, 12)
  })

  it.each([
    // Handbook 1, 2 and 10: 4 000 lb/ac; 301 crates of 30 lb an acre, the best year of Brock, D.E. (2012), High density
    // planting of asparagus, Acta Horticulturae 950, 33-35, trial 1; 10 000 crowns an acre of a British farm. Handbook 7: the
    // mean of Washington in 2001, 36 cwt (Ball, T., Folwell, R.J., Holmes, D., Washington State University EB1779).
    [4000, "kg/ha", 4483],
    [3600, "kg/ha", 4035],
    [301 * 30, "kg/ha", 10_121],
    [10_000, "per ha", 24_711],
  ])("take %d an acre as the handbook has it in metric: %s", (value, unit, metric) =>
    expect(Math.round(typed(value, unit))).toBe(metric),
  )

  it("read back as they were typed, to seven digits and more", () => {
    const random = seeded(7)
    const units = ["kg/ha", "ha", "mm", "cm", "m", "kg", "t", "°C", "L", "money/kg", "per ha", "kg/ha/day"]
    for (const unit of units)
      for (let i = 0; i < 500; i++) {
        const value = Number(((random() - 0.3) * 10 ** Math.floor(random() * 7)).toPrecision(7))
        expect(shown(typed(value, unit), unit), `${value} ${unit}`).toBe(value)
      }
  })

  it("are not there where the region says nothing", () => {
    expect(measureOf("kg/ha", PLAIN_REGION)).toEqual({unit: "kg/ha", factor: 1, offset: 0, moreDecimals: 0})
    expect(storedUnit("lb/ac", PLAIN_REGION)).toBe("lb/ac")
  })
})

describe("a number with a unit of its own", () => {
  it.each([
    [12, "lb", "kg", 5.44310844],
    [44, "kg", "kg", 44],
    [1, "t/ha", "kg/ha", 1000],
    [1, "lb/ac", "kg/ha", 0.45359237 / 0.40468564224],
    [16, "mm", "cm", 1.6],
  ])("%d %s is turned into %s", (value, from, to, expected) =>
    expect(turned(value, from, to)).toBeCloseTo(expected, 11),
  )

  it.each([
    ["kg", "ha"],
    ["kg/ha", "kg"],
    ["days", "kg"],
    ["weeks", "days"],
    ["mg/g", "kg/t"],
    ["money/kg", "kg"],
  ])("%s is not turned into %s", (from, to) => expect(turned(1, from, to)).toBeNull())
})

describe("money", () => {
  it("is shown by the workbook's sign, in units", () => {
    expect(measureOf("money/kg", {currency: "€"}).unit).toBe("€/kg")
    expect(measureOf("money/ha/day", {...US, currency: "$"}).unit).toBe("$/ac/day")
    expect(measureOf("money", {currency: "$&"}).unit).toBe("$&")
    expect(storedUnit("$/lb", {...US, currency: "$"})).toBe("money/kg")
  })

  it("is no piece of another word", () =>
    expect(measureOf("moneybags", {currency: "€"}).unit).toBe("moneybags"))
})
