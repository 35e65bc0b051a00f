import {HyperFormula} from "hyperformula"
import {bench, describe} from "vitest"
import {registerCatalogue} from "../../functions/plugin"
import {dateAt} from "../../functions/spear/dateAt"

registerCatalogue()

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
