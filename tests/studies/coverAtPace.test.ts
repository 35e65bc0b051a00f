import {readFileSync} from "node:fs"
import {beforeAll, describe, expect, it} from "vitest"
import {coverAtPace} from "../../src/studies/coverAtPace"
import {seasonUnderWay} from "../../src/studies/seasonUnderWay"
import type {Part} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"
import {rowsOf} from "../../src/workbook/season"
import {Workbook} from "../../src/workbook/workbook"

describe("the cover at the pace so far", () => {
  const reading = readFile(
    readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
  )
  if ("refused" in reading) throw new Error(reading.refused)
  const farm = new Workbook(reading.document)
  const [year] = rowsOf(farm, "cash year")
  const number = (part: Part) => year!.number(part)!
  let atPace: number
  beforeAll(() => {
    atPace = coverAtPace(farm)!
  }, 60_000)

  it("counts what is picked as it came in, and the rest at the pace so far", () => {
    const [sales, picking, capacity] = [number("cash sales"), number("cash picking"), number("capacity")]
    const {sold, toCome, price} = seasonUnderWay(farm, sales / (1000 * number("cash crop")))!
    const rest = [...toCome.values()].reduce((sum, kg) => sum + kg, 0)
    // By hand: sales less 1.367 a kg (0.95 + 0.03 + 0.86 x 0.45) less all that does not follow the crop. The one planting
    // without a picking is not cut.
    const able = sold.sales + rest * price - 1.367 * (sold.kg + rest) - (sales - picking - capacity)
    expect(atPace).toBeCloseTo(able / number("due"), 9)
    expect(atPace).toBeLessThan(capacity / number("due"))
  })

  it("is not known before the first picking", () => {
    const unpicked = new Workbook(farm.document)
    const weights = rowsOf(farm, "picking planting").map(({cells}) => cells["picking weight"]!)
    unpicked.revise({type: "enter", cells: weights.map((at) => ({at, content: null}))})
    expect(coverAtPace(unpicked)).toBeNull()
  })
})
