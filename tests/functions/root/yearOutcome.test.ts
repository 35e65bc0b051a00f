import {describe, expect, it} from "vitest"
import {dayOf, isoOf} from "../../../functions/calendar"
import type {YearPlan} from "../../../functions/root/modelledYear"
import {
  lowestDay,
  refillDay,
  sugarBefore,
  sugarOn,
  yearOutcome,
  yearOutcomes,
} from "../../../functions/root/yearOutcome"

// A year of six days with S = 1000 throughout, so that the sugar at the end of a day is 1000 C/(C + 1000):
// C 1000, 800, 250, 250, 600, 990 is c 500, 444.4, 200, 200, 375, 497.5.
const crowns = {structure: 1000, reserve: 1500}
const course = {
  structure: Float64Array.of(1000, 1000, 1000, 1000, 1000, 1000),
  reserve: Float64Array.of(1000, 800, 250, 250, 600, 990),
  fern: Float64Array.of(0, 0, 10, 20, 30, 30),
  picked: Float64Array.of(0, 40, 40, 40, 40, 40),
  potential: 160,
  potentialLeft: 120,
  fullFern: 4,
}
const plan: YearPlan = {
  year: {first: dayOf("2026-01-01")!, days: 6},
  cutting: {open: 1, stop: 2, fernEnd: 5},
}
const outcome = (what: keyof typeof yearOutcomes, of = course) => yearOutcome(what, of, crowns, plan)

describe("sugarOn and sugarBefore", () => {
  it("are those at the end and at the start of a day", () => {
    expect(sugarOn(course, 0)).toBe(500)
    expect(sugarOn(course, 2)).toBe(200)
    expect(sugarBefore(course, crowns, 1)).toBe(500)
    expect(sugarBefore(course, crowns, 0)).toBe(600) // 1000·1500/2500
  })
})

describe("lowestDay", () => {
  it("is the first of the lowest", () => expect(lowestDay(course)).toBe(2))
})

describe("refillDay", () => {
  it("is the first day after the lowest that ends with 95 % of the sugar at opening", () => {
    expect(refillDay(course, crowns, 1)).toBe(5) // 0.95·500 = 475
    expect(refillDay(course, crowns, 2)).toBe(5) // 0.95·444.4 = 422.2
    expect(refillDay(course, crowns, 4)).toBe(3) // 0.95·200 = 190
  })
  it("is -1 where none comes, and where there was nothing to come back to", () => {
    expect(refillDay(course, crowns, 0)).toBe(-1) // 0.95·600 = 570
    expect(refillDay({...course, reserve: new Float64Array(6)}, {structure: 1000, reserve: 0}, 1)).toBe(-1)
  })
})

describe("yearOutcome", () => {
  it.each([
    ["picked", 40],
    ["sugar at opening", 500],
    ["sugar at close", 444.444],
    ["lowest sugar", 200],
    ["lowest reserve", 250],
    ["sugar at year end", 497.487],
    ["structure", 1000],
    ["reserve", 990],
    ["fern", 30],
    ["potential left", 0.75],
  ] as const)("reads %s", (what, value) => {
    expect(outcome(what)).toBeCloseTo(value, 3)
  })
  it.each([
    ["lowest date", "2026-01-03"],
    ["refill date", "2026-01-06"],
    ["full fern date", "2026-01-05"],
  ] as const)("reads the %s as a day of the calendar", (what, day) => {
    expect(isoOf(outcome(what) as number)).toBe(day)
    expect(yearOutcomes[what].unit).toBe("date")
  })
  it("refuses what did not come", () => {
    expect(outcome("full fern date", {...course, fullFern: -1})).toEqual({
      refused: "The fern does not fill its room that year",
      code: "#N/A",
    })
    const falling = {...course, reserve: Float64Array.of(1000, 800, 600, 400, 300, 200)}
    expect(outcome("refill date", falling)).toEqual({
      refused: "The store does not refill before the model year ends on 2026-01-06",
      code: "#N/A",
    })
    expect(outcome("potential left", {...course, potential: 0, potentialLeft: 0})).toEqual({
      refused: "No spears can come at 500.0 mg/g: there is no share of them",
      code: "#DIV/0!",
    })
  })
})
