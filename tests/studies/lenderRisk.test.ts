import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {drawRisk} from "../../src/studies/drawRisk"
import {ASSUMED_RISK, lenderRisk} from "../../src/studies/lenderRisk"
import {risk} from "../../src/studies/risk"
import {readFile} from "../../src/workbook/file"
import {lenderOf} from "../../src/workbook/lender"
import {Workbook} from "../../src/workbook/workbook"

function open(file: string) {
  const reading = readFile(readFileSync(new URL(`../../workbooks/${file}`, import.meta.url), "utf8"))
  if ("refused" in reading) throw new Error(reading.refused)
  return new Workbook(reading.document)
}

describe("a lender's study of risk", () => {
  const workbook = open("hollow-brook-farm.json")

  it("gives the plan and the stress of the sheets where nothing is left to chance", () => {
    const certain = {...ASSUMED_RISK, yearSpread: 0, fieldSpread: 0, doubt: 0, priceVariation: 0}
    const input = lenderRisk(workbook, 1, certain)!
    const {plans} = risk(input, [drawRisk(input, 0, 20)])
    const {years} = lenderOf(workbook)!
    expect(plans.map(({name}) => name)).toEqual(["plan", "stress"])
    for (const [i, {capacity, cover, stressed}] of years.entries()) {
      expect(plans[0]!.years[i]!.capacity.mean).toBeCloseTo(capacity, 4)
      if (cover === null) continue
      expect(plans[0]!.years[i]!.cover!.mean).toBeCloseTo(cover, 9)
      expect(plans[1]!.years[i]!.cover!.mean).toBeCloseTo(stressed!, 9)
    }
  })

  it("finds the stress below the plan in every draw, since both are on the same draws", () => {
    const input = lenderRisk(workbook, 7)!
    const {plans} = risk(input, [drawRisk(input, 0, 400)])
    expect(plans[1]!.against!.better.share).toBe(0)
    for (const {below1} of plans[0]!.years) if (below1) expect(below1.share).toBeGreaterThan(0)
  })

  it("has nothing to run on in a blank workbook", () => {
    expect(lenderRisk(open("blank.json"), 1)).toBeNull()
  })
})
