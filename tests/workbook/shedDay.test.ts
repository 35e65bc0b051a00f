import {readFileSync} from "node:fs"
import {expect, it} from "vitest"
import {readFile} from "../../src/workbook/file"
import {namesIn, numberNamed} from "../../src/workbook/names"
import {shedDayOf} from "../../src/workbook/shedDay"
import {Workbook} from "../../src/workbook/workbook"
import {isoOf} from "../../functions/calendar"

const reading = readFile(
  readFileSync(`${import.meta.dirname}/../../workbooks/hollow-brook-farm.json`, "utf8"),
)
if ("refused" in reading) throw new Error(reading.refused)

it("is past before the day on which the plan stands, and not on it", () => {
  const workbook = new Workbook(reading.document)
  const asOf = numberNamed(workbook, "As_of")!
  const {at} = namesIn(workbook.document).find(({name}) => name === "Shed_day")!
  const shedOn = (day: number) => {
    workbook.revise({type: "enter", cells: [{at, content: isoOf(day)}]})
    return shedDayOf(workbook)
  }
  expect(shedOn(asOf - 1)).toMatchObject({day: asOf - 1, isPast: true})
  expect(shedOn(asOf)).toMatchObject({day: asOf, isPast: false})
})

it("knows no sum of what is not known of a planting", () => {
  const workbook = new Workbook(reading.document)
  const {at} = namesIn(workbook.document).find(({name}) => name === "Packout")!
  workbook.revise({type: "enter", cells: [{at, content: null}]})
  const {comesIn, ...others} = shedDayOf(workbook)!
  expect(comesIn).toBeGreaterThan(0)
  expect(others).toMatchObject({packed: null, crates: null, cartons: null})
})
