import {describe, expect, it} from "vitest"
import {DetailedCellError, HyperFormula} from "hyperformula"
import {EXAMPLE_CLIMATE} from "../../../functions/climate/climate"
import {dayOf} from "../../../functions/calendar"
import type {Given} from "../../../functions/parameters"
import {ROOT_SEASON} from "../../../functions/root/season"
import {upkeep} from "../../../functions/root/upkeep"
import {balanceDefaults} from "../../../functions/root/balanceValues"
import {cell} from "../cell"
import {IN_CELLS, ask, day, generic, number} from "./generic"

const OPEN = "2026-04-25"
const CLOSE = "2026-06-19"
const season = (what: string, ...rest: Given[]) =>
  number(ROOT_SEASON, what, 6000, 6400, generic, OPEN, CLOSE, ...rest)
const seasonDay = (what: string, ...rest: Given[]) =>
  day(ROOT_SEASON, what, 6000, 6400, generic, OPEN, CLOSE, ...rest)

// Worked example of the balance (physiology 8.4): S 6000, C 6400 kg/ha on 1 January, eight weeks from 25 April. Printed to
// whole kg and to 0.1 mg/g.
describe("the worked example", () => {
  it.each([
    ["picked", 6363, 0.5],
    ["sugar at opening", 503.8, 0.05],
    ["sugar at close", 422.4, 0.05],
    ["lowest sugar", 288.2, 0.05],
    ["lowest reserve", 2340, 0.5],
    ["sugar at year end", 532.3, 0.05],
    ["structure", 6036, 0.5],
    ["reserve", 6869, 0.5],
    ["fern", 4881, 0.5],
  ])("has %s %s", (what, printed, half) => {
    expect(Math.abs(season(what) - printed)).toBeLessThanOrEqual(half)
  })
  it("has its lowest on 8 July and refills on 29 August", () => {
    expect(seasonDay("lowest date")).toBe("2026-07-08")
    expect(seasonDay("refill date")).toBe("2026-08-29")
  })
  it("has full fern on 17 August", () => {
    // An independent calculation of the equations of 8.2 from these inputs: first day that begins with room below 0.1.
    expect(seasonDay("full fern date")).toBe("2026-08-17")
  })
  it("leaves of the spears what was not picked", () => {
    // Potential at opening, 8.2: 2.2 S (c - 80)/420 with S and c of that morning, printed as 5811 and 503.8: 12 900.2;
    // (12 900.2 - 6363)/12 900.2 = 0.5067. S to half a kg and c to 0.05 leave 0.0002.
    expect(Math.abs(season("potential left") - 0.5067)).toBeLessThan(0.0003)
  })
})

// Physiology 8.4, line K: from the steady state S 6117, C 7195; this year's crop, sugar at close, day of refill.
describe("seasons of different length", () => {
  const printed = [
    [0, 0, 530, 179],
    [2, 1462, 516, 190],
    [4, 3241, 498, 205],
    [5, 4179, 488, 214],
    [6, 5114, 477, 223],
    [7, 6024, 466, 233],
    [8, 6890, 454, 245],
    [9, 7700, 442, 257],
    [10, 8443, 431, 274],
  ] as const
  const after = (what: string, weeks: number) =>
    number(ROOT_SEASON, what, 6117, 7195, generic, OPEN, dayOf(OPEN)! - 1 + 7 * weeks)

  it.each(printed)(
    "of %s weeks bring %s kg/ha, close at %s mg/g, refill on day %s",
    (weeks, kg, c, refill) => {
      expect(Math.abs(after("picked", weeks) - kg)).toBeLessThanOrEqual(1) // S and C are printed to whole kg
      expect(Math.abs(after("sugar at close", weeks) - c)).toBeLessThanOrEqual(0.5)
      expect(after("refill date", weeks)).toBe(dayOf("2025-12-31")! + refill)
    },
  )
  it("of eight weeks leave half of the spears (0.51)", () => {
    expect(Math.abs(after("potential left", 8) - 0.51)).toBeLessThanOrEqual(0.005)
  })
  it("that pick more end lower, refill later and leave the next year less", () => {
    expect(printed).toHaveLength(9)
    for (const [i, [weeks]] of printed.entries()) {
      const shorter = printed[i - 1]?.[0]
      if (shorter === undefined) continue
      expect(after("picked", weeks)).toBeGreaterThan(after("picked", shorter))
      expect(after("lowest sugar", weeks)).toBeLessThan(after("lowest sugar", shorter))
      expect(after("refill date", weeks)).toBeGreaterThan(after("refill date", shorter))
      expect(after("reserve", weeks)).toBeLessThan(after("reserve", shorter))
    }
  })
})

describe("a year", () => {
  it("that is not cut gives nothing and keeps all its spears", () => {
    const uncut = (what: string) => number(ROOT_SEASON, what, 6000, 6400, generic, OPEN, "2026-04-24")
    expect(uncut("picked")).toBe(0)
    expect(uncut("potential left")).toBe(1)
    expect(uncut("sugar at close")).toBe(uncut("sugar at opening"))
  })
  it.each([
    // Physiology 8.4, last line, printed to whole kg and day of the year 239 and 243; air and soil both moved.
    [-2, 5283, "2026-08-27"],
    [2, 7262, "2026-08-31"],
  ])("that is %s °C warmer brings %s kg/ha and refills on %s", (more, kg, refill) => {
    const climate = generic.map(([air, soil, sun]) => [air! + more, soil! + more, sun!])
    expect(
      Math.abs(number(ROOT_SEASON, "picked", 6000, 6400, climate, OPEN, CLOSE) - kg),
    ).toBeLessThanOrEqual(0.5)
    expect(day(ROOT_SEASON, "refill date", 6000, 6400, climate, OPEN, CLOSE)).toBe(refill)
  })
  it.each([
    [1.1, 233],
    [0.9, 251],
  ])("with light times %s refills on day %s", (times, refill) => {
    const climate = generic.map(([air, soil, sun]) => [air!, soil!, sun! * times])
    expect(number(ROOT_SEASON, "refill date", 6000, 6400, climate, OPEN, CLOSE)).toBe(
      dayOf("2025-12-31")! + refill,
    )
  })
  it("may be cut from its first day to its last", () => {
    const all = (what: string) => number(ROOT_SEASON, what, 6000, 6400, generic, "2026-01-01", "2026-12-31")
    expect(all("sugar at opening")).toBeCloseTo((1000 * 6400) / 12400, 9)
    expect(all("sugar at close")).toBe(all("sugar at year end"))
    expect(all("fern")).toBe(0)
    expect(ask(ROOT_SEASON, "full fern date", 6000, 6400, generic, "2026-01-01", "2026-12-31")).toEqual({
      refused: "The fern does not fill its room that year",
      code: "#N/A",
    })
    expect(ask(ROOT_SEASON, "refill date", 6000, 6400, generic, "2026-01-01", "2026-12-31")).toEqual({
      refused: "The store does not refill before the model year ends on 2026-12-31",
      code: "#N/A",
    })
  })
  it("that begins with an empty store brings no spears, and does not count as filled again", () => {
    const empty = (what: string) => ask(ROOT_SEASON, what, 6000, 0, generic, OPEN, CLOSE)
    expect(empty("picked")).toBe(0)
    expect(empty("lowest reserve")).toBe(0)
    expect(empty("reserve")).toBe(0)
    expect(empty("refill date")).toMatchObject({code: "#N/A"})
    expect(empty("potential left")).toEqual({
      refused: "No spears can come at 0.0 mg/g: there is no share of them",
      code: "#DIV/0!",
    })
  })
  it("of 366 days has one more day of upkeep at its end", () => {
    // 18 June 2028 is day 170, as 19 June 2026: the same year day by day, and then the row of day 365 once more.
    const leap = (what: string) => number(ROOT_SEASON, what, 6000, 6400, generic, "2028-04-24", "2028-06-18")
    expect(leap("picked")).toBeCloseTo(season("picked"), 9)
    expect(leap("lowest date") - dayOf("2028-01-01")!).toBe(season("lowest date") - dayOf("2026-01-01")!)
    const last = upkeep(season("structure"), generic[364]![1]!, 1, balanceDefaults)
    expect(leap("reserve")).toBeCloseTo(season("reserve") - last, 9)
    expect(leap("structure")).toBeCloseTo(season("structure") * (1 - 0.00028), 9)
  })
  it("takes no notice of a 366th row unless it has that many days", () => {
    const spare = [...generic, [-50, -30, 0]]
    const end = (open: string, close: string, climate: number[][]) =>
      number(ROOT_SEASON, "reserve", 6000, 6400, climate, open, close)
    expect(end(OPEN, CLOSE, spare)).toBe(season("reserve"))
    expect(end("2028-04-24", "2028-06-18", spare)).toBeGreaterThan(end("2028-04-24", "2028-06-18", generic))
  })
})

describe("a model year from July", () => {
  const july: Given = [["Year_start", 7]]
  // The same weather half a year on: the row of 1 July (day 182) is that of 1 January.
  const south = generic.map((_, i) => generic[(i + 365 - 181) % 365]!)
  const at = (what: string) =>
    number(ROOT_SEASON, what, 6000, 6400, south, "2026-10-23", "2026-12-17", null, july)

  it("is the year from January moved by half a year, over the new year", () => {
    // 23 October and 17 December are days 115 and 170 from 1 July.
    const moved = dayOf("2026-07-01")! - dayOf("2026-01-01")!
    for (const what of ["picked", "lowest sugar", "potential left", "structure", "reserve", "fern"])
      expect(at(what)).toBeCloseTo(season(what), 9)
    for (const what of ["lowest date", "refill date", "full fern date"])
      expect(at(what)).toBe(season(what) + moved)
  })
  it("allows a close in the next calendar year and none after 30 June", () => {
    const closing = (close: string, ...rest: Given[]) =>
      ask(ROOT_SEASON, "picked", 6000, 6400, south, "2026-10-23", close, null, ...rest)
    expect(closing("2027-01-15", july)).toBeGreaterThan(at("picked"))
    expect(closing("2027-07-01", july)).toEqual({
      refused: "Close 2027-07-01 must be in the model year of the opening, which ends on 2027-06-30",
      code: "#NUM!",
    })
    expect(closing("2027-01-15")).toMatchObject({code: "#NUM!"}) // from January the year ends with 2026
  })
})

describe("crop values", () => {
  it("of a white crop bring more from the same store", () => {
    // An independent calculation of the equations of 8.2 with spears of 6.5 % dry matter, a stub share of 0.25 and 3 °C
    // more under the ridge while cutting, the other inputs those of the worked example: 7740.99 kg/ha, 437.63 mg/g at the
    // close, lowest 302.87, refill on 26 August.
    const white: Given = [
      ["Spear_dry", 0.065],
      ["Stub_share", 0.25],
      ["Ridge_gain", 3],
    ]
    expect(season("picked", null, white)).toBeCloseTo(7740.99, 2)
    expect(season("sugar at close", null, white)).toBeCloseTo(437.63, 2)
    expect(season("lowest sugar", null, white)).toBeCloseTo(302.87, 2)
    expect(seasonDay("refill date", null, white)).toBe("2026-08-26")
  })
  it("that cut nothing leave the store as an uncut year until the stop", () => {
    const none: Given = [["Cut_rate", 0]]
    expect(season("picked", null, none)).toBe(0)
    expect(season("sugar at opening", null, none)).toBe(season("sugar at opening"))
    expect(season("sugar at close", null, none)).toBeGreaterThan(season("sugar at close"))
    expect(season("potential left", null, none)).toBe(1)
  })
})

// Physiology 9, checks 30 and 31 and 8.5: from the steady state, 8 weeks in both years; next year's crop over 6890.
describe("fern lost early", () => {
  it.each([
    ["2026-09-30", 0, 0.963, 0.0005],
    ["2026-09-15", 0, 0.894, 0.0005],
    ["2026-09-01", 0, 0.788, 0.0005],
    ["2026-08-08", 0, 0.39, 0.005],
    ["2026-08-01", 0.5, 0.91, 0.005],
    ["2026-08-01", 0.25, 0.77, 0.005],
  ])("from %s, %s of it left, brings the next crop to %s", (from, share, printed, half) => {
    const end = (what: string) => number(ROOT_SEASON, what, 6117, 7195, generic, OPEN, CLOSE, [[from, share]])
    const next = number(
      ROOT_SEASON,
      "picked",
      end("structure"),
      end("reserve"),
      generic,
      "2027-04-25",
      "2027-06-19",
    )
    expect(Math.abs(next / 6890 - printed)).toBeLessThanOrEqual(half)
  })
})

describe("ROOT.SEASON in a cell", () => {
  const call = (what: string, rest = "") =>
    `=ROOT.SEASON("${what}",6000,6400,${IN_CELLS},"2026-04-25","2026-06-19"${rest})`

  it("takes the climate from cells, and dates from cells or in quotes", () => {
    expect(Math.abs((cell(call("picked"), generic) as number) - 6363)).toBeLessThanOrEqual(0.5)
    const dated = generic.map((row, i) => [...row, i === 0 ? OPEN : i === 1 ? CLOSE : null])
    expect(cell(`=ROOT.SEASON("picked",6000,6400,${IN_CELLS},T!D1,T!D2)`, dated)).toBe(
      cell(call("picked"), generic),
    )
  })
  it("gives a named date as a date, and every other outcome as a number", () => {
    for (const what of ["lowest date", "refill date", "full fern date"])
      expect(kindOf(call(what))).toBe("NUMBER_DATE")
    for (const what of ["picked", "lowest sugar", "potential left"])
      expect(kindOf(call(what))).not.toBe("NUMBER_DATE")
    expect(cell(`=TEXT(${call("lowest date").slice(1)},"YYYY-MM-DD")`, generic)).toBe("2026-07-08")
  })
  it("works out anew when a cell of its ranges changes, a blank one too", () => {
    const engine = engineWith(
      generic.map((row) => [...row, null, null]),
      call("picked", ",,T!D1:E2"),
    )
    const value = () => engine.getCellValue({sheet: 0, row: 0, col: 0})
    const before = value()
    engine.setCellContents({sheet: 1, row: 0, col: 3}, [["Cut_rate", 0]])
    expect(value()).toBe(0)
    engine.setCellContents({sheet: 1, row: 0, col: 4}, null)
    expect(value()).toBe(before)
    engine.setCellContents({sheet: 1, row: 129, col: 0}, -5) // too cold a day for spears
    expect(value()).toBeLessThan(before as number)
    engine.setCellContents({sheet: 1, row: 129, col: 0}, null)
    expect(value()).toBeInstanceOf(DetailedCellError)
    engine.setCellContents({sheet: 1, row: 129, col: 0}, generic[129]![0]!)
    expect(value()).toBe(before)
    engine.destroy()
  })
  it("refuses an unknown outcome with the list", () => {
    expect(cell(call("yield"), generic)).toEqual({
      code: "#VALUE!",
      reason:
        'What is asked for must be one of "picked", "sugar at opening", "sugar at close", "lowest sugar", "lowest reserve", ' +
        '"lowest date", "refill date", "full fern date", "sugar at year end", "structure", "reserve", "fern", ' +
        '"potential left", not the text "yield"',
    })
    expect(cell(call("Picked"), generic)).toMatchObject({code: "#VALUE!"})
    expect(cell(call("toString"), generic)).toMatchObject({code: "#VALUE!"})
  })

  const monthly = (
    what: string,
    structure: string,
    reserve: string,
    open: string,
    close: string,
    rest = "",
  ) => `=ROOT.SEASON(${what},${structure},${reserve},${EXAMPLE_CLIMATE},${open},${close}${rest})`
  const [P, S, C, O, E] = ['"picked"', "6000", "6400", '"2026-04-25"', '"2026-06-19"'] as const
  const ROOTS = "Structural root (dry root without its sugar)"
  it.each([
    ["T!E1", S, C, O, E, "#N/A", "What is asked for is blank"],
    ["7", S, C, O, E, "#VALUE!", /^What is asked for must be one of .*, not 7$/],
    [P, "0", C, O, E, "#NUM!", `${ROOTS} must be above 0 kg/ha, not 0 kg/ha`],
    [P, "-1", C, O, E, "#NUM!", `${ROOTS} must be above 0 kg/ha, not -1 kg/ha`],
    [P, '"6000"', C, O, E, "#VALUE!", `${ROOTS} must be a number, not the text "6000"`],
    [P, "T!E1", C, O, E, "#N/A", `${ROOTS}: not measured yet`],
    [P, "T!A1:A2", C, O, E, "#VALUE!", `${ROOTS} takes one value, not a range`],
    [P, S, "-1", O, E, "#NUM!", "Sugar in the store must be 0 kg/ha or more, not -1 kg/ha"],
    [P, S, "TRUE()", O, E, "#VALUE!", "Sugar in the store must be a number, not TRUE"],
    [P, S, "T!E1", O, E, "#N/A", "Sugar in the store: not measured yet"],
    [P, S, C, "T!E1", E, "#N/A", "Opening: no date yet"],
    [
      P,
      S,
      C,
      '"25 April"',
      E,
      "#VALUE!",
      'Opening must be a date such as 2026-04-25, not the text "25 April"',
    ],
    [P, S, C, O, "T!E1", "#N/A", "Close: no date yet"],
    [
      P,
      S,
      C,
      O,
      '"2026-06-31"',
      "#VALUE!",
      'Close must be a date such as 2026-04-25, not the text "2026-06-31"',
    ],
    [
      P,
      S,
      C,
      O,
      '"2026-04-23"',
      "#NUM!",
      "Close 2026-04-23 must not be before the opening 2026-04-25; the day before it means not cut",
    ],
    [
      P,
      S,
      C,
      O,
      '"2027-01-01"',
      "#NUM!",
      "Close 2027-01-01 must be in the model year of the opening, which ends on 2026-12-31",
    ],
  ])("refuses (%s, %s, %s, climate, %s, %s) with %s", (what, s, c, open, close, code, reason) => {
    const given = cell(monthly(what, s, c, open, close), [[1], [2]])
    expect(given).toEqual({code, reason: typeof reason === "string" ? reason : expect.stringMatching(reason)})
  })
  it.each([
    ["7", "Climate must be a range of three columns: mean air and soil temperature, solar radiation"],
    ["T!A1:B365", "Climate must be a range of three columns: mean air and soil temperature, solar radiation"],
    ["T!A1:C364", "Climate must have 12 monthly rows or 365 daily ones, not 364"],
    ["T!A1:C1", "Climate must have 12 monthly rows or 365 daily ones, not 1"],
  ])("refuses the climate %s", (climate, reason) => {
    expect(cell(`=ROOT.SEASON("picked",6000,6400,${climate},"2026-04-25","2026-06-19")`, generic)).toEqual({
      code: "#VALUE!",
      reason,
    })
  })
  it("passes errors on, the leftmost first", () => {
    expect(cell(monthly("1/0", "NA()", "6400", '"25 April"', E))).toMatchObject({code: "#DIV/0!"})
    expect(cell(monthly(P, S, "NA()", O, "1/0"))).toMatchObject({code: "#N/A"})
    expect(cell(monthly(P, "-1", C, O, E, ",1/0"))).toMatchObject({code: "#DIV/0!"})
    const broken = generic.map((row, i) => (i === 200 ? [row[0]!, "=1/0", row[2]!] : row))
    expect(cell(call("picked"), broken)).toMatchObject({code: "#DIV/0!"})
  })
  it("takes between six and eight arguments", () => {
    expect(cell('=ROOT.SEASON("picked",6000)')).toEqual({
      code: "#VALUE!",
      reason: "ROOT.SEASON takes 6 to 8 arguments, not 2",
    })
  })
})

function engineWith(cells: (number | null)[][], formula: string) {
  return HyperFormula.buildFromSheets(
    {Formula: [[formula]], T: cells},
    {licenseKey: "gpl-v3", useArrayArithmetic: true, dateFormats: ["YYYY-MM-DD"]},
  )
}

function kindOf(formula: string) {
  const engine = engineWith(generic, formula)
  const kind = engine.getCellValueDetailedType({sheet: 0, row: 0, col: 0})
  engine.destroy()
  return kind
}
