import {describe, expect, it} from "vitest"
import {EXAMPLE_CLIMATE} from "../../../functions/climate/climate"
import type {Given} from "../../../functions/parameters"
import {ROOT_ON} from "../../../functions/root/on"
import {ROOT_RESERVE_FOR} from "../../../functions/root/reserveFor"
import {cell} from "../cell"
import {IN_CELLS, ask, generic, number} from "./generic"

const SEASON: Given[] = [6000, generic, "2026-04-25", "2026-06-19"]
const reserveFor = (sampled: string, sugar: number, ...rest: Given[]) =>
  ask(ROOT_RESERVE_FOR, sampled, sugar, ...SEASON, ...rest)

describe("ROOT.RESERVE_FOR", () => {
  it.each([
    ["2026-01-01", 530],
    ["2026-04-24", 503.8],
    ["2026-04-25", 470],
    ["2026-05-20", 400],
    ["2026-06-19", 422.4],
    ["2026-07-19", 250],
    ["2026-09-15", 480],
    ["2026-12-31", 532.3],
  ])("finds the store whose balance has, on %s, %s mg/g", (sampled, sugar) => {
    const store = reserveFor(sampled, sugar) as number
    const [roots, climate, open, close] = SEASON as [number, Given, Given, Given]
    expect(number(ROOT_ON, "sugar", sampled, roots, store, climate, open, close)).toBeCloseTo(sugar, 5)
  })
  it("takes the worked example back to its start", () => {
    // Physiology 8.4: 313.4 mg/g on 19 July and 288.2 on 8 July come of 6400 kg/ha. A kg of store at the start moves the
    // sugar then by about 0.05 mg/g (300 in place of 313.4 comes of 6126), so that half a printed digit is 1 kg.
    for (const [sampled, sugar] of [
      ["2026-07-19", 313.4],
      ["2026-07-08", 288.2],
    ] as const)
      expect(Math.abs((reserveFor(sampled, sugar) as number) - 6400)).toBeLessThanOrEqual(1.1)
  })
  it("is 6125.84 kg/ha for 300 mg/g on 19 July", () => {
    // An independent calculation: the equations of 8.2 with S 6000, eight weeks from 25 April, halved down to that sugar.
    expect(reserveFor("2026-07-19", 300)).toBeCloseTo(6125.84, 2)
  })
  it("keeps to the healthy share and the crop values that it is given", () => {
    const rest: Given[] = [[["2026-07-01", 0.7]], [["Upkeep_rate", 0.003]]]
    const store = reserveFor("2026-08-15", 380, ...rest) as number
    expect(store).toBeGreaterThan(reserveFor("2026-08-15", 380) as number)
    const [roots, climate, open, close] = SEASON as [number, Given, Given, Given]
    expect(number(ROOT_ON, "sugar", "2026-08-15", roots, store, climate, open, close, ...rest)).toBeCloseTo(
      380,
      5,
    )
  })
  it("is 0 for a sample without sugar: the least store that comes to it", () => {
    expect(reserveFor("2026-07-19", 0)).toBe(0)
  })
  it("refuses a sugar that no store brings, and says how far the balance reaches", () => {
    expect(reserveFor("2026-07-19", 950)).toEqual({
      refused: expect.stringMatching(
        /^No store at the start of the year gives 950 mg\/g on 2026-07-19: the balance reaches 0\.0 to \d+\.\d there$/,
      ),
      code: "#NUM!",
    })
  })
  it.each(["2025-12-31", "2027-01-01"])("refuses a sample of %s, outside the model year", (sampled) => {
    expect(reserveFor(sampled, 400)).toEqual({
      refused: `Day of the sample ${sampled} must be in the model year of the opening, 2026-01-01 to 2026-12-31`,
      code: "#NUM!",
    })
  })
})

describe("ROOT.RESERVE_FOR in a cell", () => {
  const call = (
    sampled: string,
    sugar: string,
    close = '"2026-06-19"',
    rest = "",
    climate = EXAMPLE_CLIMATE,
  ) => `=ROOT.RESERVE_FOR(${sampled},${sugar},6000,${climate},"2026-04-25",${close}${rest})`
  const JULY = '"2026-07-19"'

  it("takes the climate from cells", () => {
    expect(cell(call(JULY, "300", '"2026-06-19"', "", IN_CELLS), generic)).toBeCloseTo(6125.84, 2)
  })
  it("takes defaults for what is blank", () => {
    expect(cell(call(JULY, "300", '"2026-06-19"', ",T!A1:B2,T!A1:B2"))).toBe(cell(call(JULY, "300")))
  })
  it.each([
    [call("T!A1", "300"), "#N/A", "Day of the sample: no date yet"],
    [call(JULY, "T!A1"), "#N/A", "Sugar in the root: not measured yet"],
    [call(JULY, "1000"), "#NUM!", "Sugar in the root must be 0 or more and below 1000 mg/g, not 1000 mg/g"],
    [
      call(JULY, "300", '"2026-04-01"'),
      "#NUM!",
      "Close 2026-04-01 must not be before the opening 2026-04-25; the day before it means not cut",
    ],
  ])("refuses %s", (formula, code, reason) => {
    expect(cell(formula)).toEqual({code, reason})
  })
  it("passes errors on, the leftmost first", () => {
    expect(cell(call("NA()", "1/0"))).toMatchObject({code: "#N/A"})
    expect(cell(call('"19 July"', "1/0"))).toMatchObject({code: "#DIV/0!"})
  })
})
