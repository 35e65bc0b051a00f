import {readFileSync} from "node:fs"
import {expect, it} from "vitest"
import {isRefusal} from "../../functions/refusal"
import {lenderRisk} from "../../src/studies/lenderRisk"
import {sharedYears} from "../../src/studies/sharedYears"
import {waysAsked} from "../../src/studies/waysAsked"
import {weeksStudy} from "../../src/studies/weeksStudy"
import {readFile} from "../../src/workbook/file"
import {Workbook} from "../../src/workbook/workbook"

it("draws the years that the study of the farm's risk draws at the same seed", () => {
  const file = readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8")
  const reading = readFile(file)
  if ("refused" in reading) throw new Error(reading.refused)
  const workbook = new Workbook(reading.document)
  const study = weeksStudy(workbook)
  if (study === null || isRefusal(study)) throw new Error(study?.refused)
  const input = waysAsked(study.input, {plantings: []}, study.season, 4, study.asOf)
  // 25 May is day 145 of the year, of which 144 are over.
  expect(input.gone).toBe(144)
  const [own, farm] = [input, lenderRisk(workbook, 4)!].map((one) => sharedYears(one, 3)(17))
  expect(own!.prices).toEqual(farm!.prices)
  expect(own!.yields).toEqual(farm!.yields)
  for (const year of [0, 1, 2]) expect(own!.driversIn(year)).toEqual(farm!.driversIn(year))
})
