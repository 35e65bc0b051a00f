import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {pickedWeeks} from "../../../src/views/pictures/pickedWeeks"
import {readFile} from "../../../src/workbook/file"
import {weekOf} from "../../../src/workbook/season"
import {Workbook} from "../../../src/workbook/workbook"

const asOf = dayOf("2026-05-25")!
const sums = (...days: readonly [string, number][]) => days.map(([day, kg]) => ({day: dayOf(day)!, kg}))

describe("the weeks of a season", () => {
  it("end with the day before the as-of day, and go on from it", () => {
    const weeks = pickedWeeks(
      {
        plannedSoFar: sums(
          ["2026-05-15", 100],
          ["2026-05-20", 300],
          ["2026-05-25", 600],
          ["2026-06-01", 700],
        ),
        pickedSoFar: sums(["2026-05-17", 80], ["2026-05-18", 130], ["2026-05-24", 250]),
      },
      asOf,
    )
    expect(weeks).toEqual([
      {from: dayOf("2026-05-11"), picked: 80, planned: 100},
      {from: dayOf("2026-05-18"), picked: 170, planned: 200},
      {from: dayOf("2026-05-25"), picked: null, planned: 300},
      {from: dayOf("2026-06-01"), picked: null, planned: 100},
    ])
  })

  it("are none without a plan and a picking", () => {
    expect(pickedWeeks({plannedSoFar: [], pickedSoFar: []}, asOf)).toEqual([])
  })

  it("end, on the demonstration farm, with the week as its sheet has it, and add up to the season", () => {
    const reading = readFile(readFileSync("workbooks/hollow-brook-farm.json", "utf8"))
    if ("refused" in reading) throw new Error(reading.refused)
    const week = weekOf(new Workbook(reading.document))!
    for (const one of week.plantings.filter(({plannedSoFar}) => plannedSoFar.length > 0)) {
      const weeks = pickedWeeks(one, week.asOf)
      const last = weeks.find(({from}) => from === week.asOf - 7)
      expect(last?.picked ?? 0, one.planting).toBeCloseTo(one.picked!, 6)
      expect(last?.planned ?? 0, one.planting).toBeCloseTo(one.planned!, 6)
      const sum = (of: "picked" | "planned") => weeks.reduce((all, each) => all + (each[of] ?? 0), 0)
      expect(sum("picked")).toBeCloseTo(one.pickedSoFar.at(-1)?.kg ?? 0, 6)
      expect(sum("planned")).toBeCloseTo(one.plannedSoFar.at(-1)!.kg, 6)
    }
  })
})
