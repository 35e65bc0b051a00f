import {HyperFormula} from "hyperformula"
import {bench, describe} from "vitest"
import {registerCatalogue} from "../../functions/plugin"
import {registerStandardFunctions} from "../../functions/standardPlugin"
import {dateAt} from "../../functions/spear/dateAt"

registerCatalogue()
registerStandardFunctions()

const PLANTINGS = 1000
const WEEKS = [0, 7, 14, 21]
const rows = Array.from({length: PLANTINGS}, (_, i) =>
  WEEKS.map((_, week) => 13 - week * 0.7 + (i % 10) / 100),
)
const days = WEEKS.map((week) => 46146 + week)

describe("the day 1000 plantings reach their spear limit", () => {
  const cells = rows.map((diameters, i) => [
    ...days,
    ...diameters,
    `=SPEAR.DATE_AT(A${i + 1}:D${i + 1},E${i + 1}:H${i + 1},$J$1)`,
  ])
  const engine = HyperFormula.buildFromArray(cells, {licenseKey: "gpl-v3"})
  let limit = 9
  bench("in cells, when the limit changes", () => {
    engine.setCellContents({sheet: 0, row: 0, col: 9}, (limit = limit === 9 ? 9.5 : 9))
  })
  bench("a plain loop over the same numbers", () => {
    for (const diameters of rows) dateAt(days, diameters, limit)
  })
})

describe("the mean of 10 000 rows that meet two conditions, when one of them changes", () => {
  const ROWS = 10_000
  const weights = Array.from({length: ROWS}, (_, i) => 10 + (i % 97) / 10)
  const fields = Array.from({length: ROWS}, (_, i) => `field ${i % 7}`)
  const days = Array.from({length: ROWS}, (_, i) => i % 50)
  const rows = weights.map((weight, i) => [weight, fields[i]!, days[i]!])
  const engineFor = (formula: string) =>
    HyperFormula.buildFromSheets(
      {F: [["field 3", ">10", formula]], T: rows},
      {licenseKey: "gpl-v3", maxRows: ROWS + 1},
    )
  const ranges = `T!A1:A${ROWS},T!B1:B${ROWS},A1,T!C1:C${ROWS},B1`
  const counted = ranges.slice(ranges.indexOf(",") + 1)
  let limit = 10
  const changed = (engine: HyperFormula) => () => {
    limit = (limit + 1) % 40
    engine.setCellContents({sheet: 0, row: 0, col: 1}, `>${limit}`)
  }
  bench("AVERAGEIFS", changed(engineFor(`=AVERAGEIFS(${ranges})`)))
  bench("the engine's SUMIFS", changed(engineFor(`=SUMIFS(${ranges})`)))
  bench("the engine's SUMIFS over COUNTIFS", changed(engineFor(`=SUMIFS(${ranges})/COUNTIFS(${counted})`)))
  bench("a plain loop over the same rows", () => {
    limit = (limit + 1) % 40
    let [total, count] = [0, 0]
    for (let i = 0; i < ROWS; i++)
      if (fields[i]!.toLowerCase() === "field 3" && days[i]! > limit) {
        total += weights[i]!
        count++
      }
    if (!(total / count > 0)) throw new Error("no mean")
  })
})

describe("the mean of 10 000 rows that meet a condition, when a row changes", () => {
  const ROWS = 10_000
  const rows = Array.from({length: ROWS}, (_, i) => [10 + (i % 97) / 10, i % 50])
  const engineFor = (name: string) =>
    HyperFormula.buildFromSheets(
      {F: [[`=${name}(T!A1:A${ROWS},T!B1:B${ROWS},">10")`]], T: rows},
      {licenseKey: "gpl-v3", maxRows: ROWS + 1},
    )
  let weight = 10
  const changed = (engine: HyperFormula) => () => {
    engine.setCellContents({sheet: 1, row: 5000, col: 0}, (weight = weight === 10 ? 11 : 10))
  }
  bench("AVERAGEIFS", changed(engineFor("AVERAGEIFS")))
  bench("the engine's SUMIFS", changed(engineFor("SUMIFS")))
})
