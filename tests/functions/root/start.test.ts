import {describe, expect, it} from "vitest"
import {EXAMPLE_CLIMATE} from "../../../functions/climate/climate"
import type {Given} from "../../../functions/parameters"
import {ROOT_ON} from "../../../functions/root/on"
import {ROOT_SEASON} from "../../../functions/root/season"
import {ROOT_START} from "../../../functions/root/start"
import {upkeep} from "../../../functions/root/upkeep"
import {balanceDefaults} from "../../../functions/root/balanceValues"
import {cell} from "../cell"
import {IN_CELLS, ask, generic, number} from "./generic"

const start = (what: string, sampled: string, sugar: number, structure: number, ...rest: Given[]) =>
  number(ROOT_START, what, sampled, sugar, structure, generic, ...rest)

describe("a sample of late winter", () => {
  it.each([
    ["2026-01-01", 530, 5500],
    ["2026-03-05", 530, 5500],
    ["2026-04-24", 120, 800],
    ["2026-04-24", 0, 6000],
    ["2028-02-29", 612.5, 9000],
  ])("of %s, %s mg/g, is there again when it is carried forward", (sampled, sugar, structure) => {
    const open = `${sampled.slice(0, 4)}-04-25`
    const [roots, store] = [
      start("structure", sampled, sugar, structure, null, open),
      start("reserve", sampled, sugar, structure, null, open),
    ]
    const close = `${sampled.slice(0, 4)}-06-19`
    expect(number(ROOT_ON, "sugar", sampled, roots, store, generic, open, close)).toBeCloseTo(sugar, 7)
    expect(number(ROOT_ON, "structure", sampled, roots, store, generic, open, close)).toBeCloseTo(
      structure,
      7,
    )
  })
  it("of 1 January has one day undone", () => {
    // S before = S/(1 - 0.00028); C before = C + that day's upkeep of it; 500 mg/g is C = S.
    const roots = 6000 / (1 - 0.00028)
    expect(start("structure", "2026-01-01", 500, 6000)).toBeCloseTo(roots, 9)
    expect(start("reserve", "2026-01-01", 500, 6000)).toBeCloseTo(
      6000 + upkeep(roots, generic[0]![1]!, 1, balanceDefaults),
      9,
    )
  })
  it("of 5 March, 530 mg/g and 5500 kg/ha, was 5599.46 and 6447.61 kg/ha", () => {
    // An independent calculation: 64 days of the equations of 8.2 undone. S is 5500/0.99972^64.
    expect(start("structure", "2026-03-05", 530, 5500)).toBeCloseTo(5500 / 0.99972 ** 64, 8)
    expect(start("reserve", "2026-03-05", 530, 5500)).toBeCloseTo(6447.61, 2)
  })
  it("is the same with its opening given", () => {
    expect(start("reserve", "2026-03-05", 530, 5500, null, "2026-04-25")).toBe(
      start("reserve", "2026-03-05", 530, 5500),
    )
  })
})

describe("a sample of autumn", () => {
  it.each(["2026-10-15", "2026-11-20", "2026-12-30"])(
    "of %s goes on to the start of the next year",
    (sampled) => {
      // A year by the balance, sampled that day: its year end is what the sample has to come to.
      const by = (what: string) =>
        number(ROOT_ON, what, sampled, 6000, 6400, generic, "2026-04-25", "2026-06-19")
      const end = (what: string) => number(ROOT_SEASON, what, 6000, 6400, generic, "2026-04-25", "2026-06-19")
      for (const rest of [[], [null, "2027-04-25"]] as Given[][]) {
        expect(start("reserve", sampled, by("sugar"), by("structure"), ...rest)).toBeCloseTo(
          end("reserve"),
          7,
        )
        expect(start("structure", sampled, by("sugar"), by("structure"), ...rest)).toBeCloseTo(
          end("structure"),
          7,
        )
      }
    },
  )
  it("of the year's last day is the start of the next, with nothing to carry", () => {
    expect(start("reserve", "2026-12-31", 500, 6000)).toBe(6000)
    expect(start("structure", "2028-12-31", 500, 6000)).toBe(6000)
  })
  it("does not go below an empty store", () => {
    expect(start("reserve", "2026-11-01", 0, 6000)).toBe(0)
  })
})

describe("a model year from July", () => {
  const south = generic.map((_, i) => generic[(i + 365 - 181) % 365]!)
  it("has its late winter in August and its autumn in May", () => {
    const july: Given = [["Year_start", 7]]
    // The row of 1 July is that of 1 January: 2 September is day 64 from there, 1 May day 305, as 1 November.
    const at = (sampled: string, ...rest: Given[]) =>
      number(ROOT_START, "reserve", sampled, 530, 5500, south, july, ...rest)
    expect(at("2026-09-02")).toBeCloseTo(start("reserve", "2026-03-05", 530, 5500), 9)
    expect(at("2027-05-01")).toBeCloseTo(start("reserve", "2026-11-01", 530, 5500), 9)
    expect(at("2027-05-01", "2027-10-23")).toBe(at("2027-05-01"))
  })
})

describe("a sample taken while growing", () => {
  const at = (sampled: string, ...rest: Given[]) =>
    ask(ROOT_START, "reserve", sampled, 530, 5500, generic, ...rest)
  it.each([
    ["2026-04-25", "2026-04-25", "Sampled while growing: 2026-04-25 is not before the opening, 2026-04-25"],
    ["2026-07-01", "2026-04-25", "Sampled while growing: 2026-07-01 is not before the opening, 2026-04-25"],
    ...["2026-10-14", "2026-03-05"].map((sampled) => [
      sampled,
      "2027-04-25",
      `Sampled on ${sampled}, before that year's fern ended on 2026-10-15: not in the winter before the opening, 2027-04-25`,
    ]),
    [
      "2026-11-01",
      "2026-04-25",
      "Sampled on 2026-11-01, after the season that opened on 2026-04-25: give the opening of the next season",
    ],
    ["2024-11-01", "2026-04-25", "Sampled on 2024-11-01: not in the winter before the opening, 2026-04-25"],
    ["2027-02-01", "2026-04-25", "Sampled on 2027-02-01: not in the winter before the opening, 2026-04-25"],
  ])("of %s, opening %s, is refused", (sampled, open, refused) => {
    expect(at(sampled, null, open)).toEqual({refused, code: "#N/A"})
  })
  it("is told by the soil where there is no opening", () => {
    // 10 - 7.125 cos(2π(d - 40)/365) reaches 10 where d - 40 is a quarter of the year, 91.25: on day 132, 12 May.
    expect(at("2026-05-11")).toBeTypeOf("number")
    expect(at("2026-05-12")).toEqual({
      refused:
        "Sampled while growing: by 2026-05-12 the soil has reached 10 °C; give the opening if it came later",
      code: "#N/A",
    })
    expect(at("2026-05-12", null, "2026-05-20")).toBeTypeOf("number")
    expect(at("2026-10-14")).toMatchObject({code: "#N/A"})
    expect(at("2026-10-15")).toBeTypeOf("number")
  })
  it("follows the fern's end of the crop values", () => {
    expect(at("2026-09-20", [["Fern_end", 260]])).toBeTypeOf("number") // day 263
    expect(at("2026-11-01", [["Fern_end", 320]])).toMatchObject({code: "#N/A"})
  })
})

describe("ROOT.START in a cell", () => {
  const call = (sampled: string, sugar: string, structure: string, climate = EXAMPLE_CLIMATE, rest = "") =>
    `=ROOT.START("reserve",${sampled},${sugar},${structure},${climate}${rest})`
  const MARCH = '"2026-03-05"'

  it("takes climate and day from cells", () => {
    const cells = generic.map((row, i) => [...row, i === 0 ? "2026-03-05" : null])
    expect(cell(call("T!D1", "530", "5500", IN_CELLS), cells)).toBeCloseTo(6447.61, 2)
  })
  it("takes crop values and an opening that are blank as left out", () => {
    expect(cell(call(MARCH, "530", "5500", EXAMPLE_CLIMATE, ",T!A1:B3,T!A1"))).toBe(
      cell(call(MARCH, "530", "5500")),
    )
    expect(cell(call(MARCH, "530", "5500", EXAMPLE_CLIMATE, ",,"))).toBe(cell(call(MARCH, "530", "5500")))
  })
  it.each([
    [call("T!A1", "530", "5500"), "#N/A", "Day of the sample: no date yet"],
    [
      call("TRUE()", "530", "5500"),
      "#VALUE!",
      "Day of the sample must be a date such as 2026-04-25, not TRUE",
    ],
    [
      call(MARCH, "1000", "5500"),
      "#NUM!",
      "Sugar in the root must be 0 or more and below 1000 mg/g, not 1000 mg/g",
    ],
    [call(MARCH, "T!A1", "5500"), "#N/A", "Sugar in the root: not measured yet"],
    [
      call(MARCH, "530", "0"),
      "#NUM!",
      "Structural root (dry root without its sugar) must be above 0 kg/ha, not 0 kg/ha",
    ],
    [
      call(MARCH, "530", "5500").replace('"reserve"', '"sugar"'),
      "#VALUE!",
      'What is asked for must be one of "structure", "reserve", not the text "sugar"',
    ],
    [
      call(MARCH, "530", "5500", EXAMPLE_CLIMATE, ',{"Year_start",3}'),
      "#NUM!",
      "Crop value Year_start must be 1 (January) or 7 (July), not 3",
    ],
  ])("refuses %s", (formula, code, reason) => {
    expect(cell(formula)).toEqual({code, reason})
  })
  it("passes errors on, the leftmost first", () => {
    expect(cell(call("1/0", "NA()", "-1"))).toMatchObject({code: "#DIV/0!"})
    expect(cell(call(MARCH, "NA()", "1/0"))).toMatchObject({code: "#N/A"})
  })
})
