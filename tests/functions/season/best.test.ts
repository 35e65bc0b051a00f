import {describe, expect, it} from "vitest"
import {SEASON_BEST} from "../../../functions/season/best"
import {jointPlan} from "../../../functions/season/jointPlan"
import {ask} from "../root/generic"
import {cell} from "../cell"
import {values, years} from "./testJ"

const named = Object.entries(values).filter(
  ([name]) => !["Nodes", "Rest_income", "Other_use", "Loss_chance"].includes(name),
)
const rows = years.ages.map((age, row) => [
  age,
  years.caps[row]!,
  years.factors[row]!,
  named[row]?.[0] ?? null,
  named[row]?.[1] ?? null,
])
const call = (what: string, age: number, cells = rows) =>
  cell(`=SEASON.BEST("${what}",${age},T!A1:A23,T!B1:B23,T!C1:C23,T!D1:E23)`, cells)

describe("SEASON.BEST in a cell", () => {
  it("gives what the plan gives", () => {
    const plan = jointPlan(years, values)
    const year = plan.years.find(({age}) => age === 6)!
    expect(call("weeks", 6)).toBe(7)
    expect(call("replace age", 6)).toBe(18)
    for (const [what, expected] of [
      ["ground worth", plan.ground],
      ["yield", year.yield],
      ["margin", year.margin],
      ["reserve", year.reserve],
      ["worth of reserve", year.reserveWorth],
      ["cost of a week", year.weekCost],
    ] as const)
      expect(call(what, 6)).toBeCloseTo(expected, 6)
  })
  it("says when an age has no season", () => {
    expect(call("weeks", 18)).toEqual({
      code: "#N/A",
      reason: "The field is cleared at the start of age 18, before age 18",
    })
    expect(call("weeks", 1)).toEqual({code: "#N/A", reason: "Age 1 is before the first row, age 2"})
  })
  it("refuses ages with a gap, a missing value and an unknown one", () => {
    const gap = rows.map((row, i) => (i === 4 ? [60, ...row.slice(1)] : row))
    expect(call("weeks", 6, gap)).toEqual({
      code: "#VALUE!",
      reason: "Ages must rise by 1: 60 comes after 5",
    })
    const without = rows.map((row) => (row[3] === "Price" ? [...row.slice(0, 4), null] : row))
    expect(call("weeks", 6, without)).toEqual({
      code: "#N/A",
      reason: "Joint value Price (price) is not given yet",
    })
    const unknown = rows.map((row) => (row[3] === "Price" ? [...row.slice(0, 3), "Prize", 1] : row))
    expect(call("weeks", 6, unknown)).toMatchObject({reason: "There is no joint value named Prize"})
    const free = rows.map((row) => (row[3] === "Rate" ? [...row.slice(0, 4), 0] : row))
    expect(call("weeks", 6, free)).toMatchObject({
      code: "#NUM!",
      reason: "Joint value Rate must be above 0 and up to 1, not 0",
    })
  })
  it("shares one run among the cells of a table", () => {
    const columns = [0, 1, 2].map((col) => rows.map((row) => [row[col]!]))
    const given = [...columns, [...Object.entries(values), ["Nodes", 2001]].map((pair) => [...pair])]
    given[3] = given[3]!.filter(
      ([name, number]) => name !== "Other_use" && (name !== "Nodes" || number === 2001),
    )
    const timed = (run: () => void) => {
      const from = performance.now()
      run()
      return performance.now() - from
    }
    const first = timed(() => ask(SEASON_BEST, "weeks", 3, ...given))
    // 150 runs of their own would take 150 times as long.
    const others = timed(() => {
      for (let age = 3; age < 18; age++) for (let i = 0; i < 10; i++) ask(SEASON_BEST, "yield", age, ...given)
    })
    expect(others).toBeLessThan(20 * first)
  })
})
