import {expect, it} from "vitest"
import {createStore} from "../../src/editor/store"
import {editionWords} from "../../src/views/edition"
import type {Content} from "../../src/workbook/document"
import {documentOf, sheet} from "../workbook/documents"

const wordsOf = (...named: Content[][]) =>
  editionWords(
    createStore({
      ...documentOf(
        sheet("Spear size", ["Planting"], [["A"]]),
        sheet("Names", ["Name", "Value"], named, {names: true}),
      ),
      name: "Some Farm",
      season: "season 2026",
    }),
  )

it("names the sheet, the version and the day", () => {
  expect(wordsOf(["Plan_version", "7, after the frost"], ["As_of", "2026-05-25"])).toBe(
    "Some Farm, season 2026. Spear size, version 7, after the frost, as of 25 May 2026",
  )
  expect(wordsOf(["Plan_version", 3], ["As_of", "2026-05-25"])).toContain("Spear size, version 3, as of")
})

it.each([[], [["Plan_version", 0]], [["Plan_version", "  "]]])("says what of it is not typed", (...named) =>
  expect(wordsOf(...named)).toBe(
    "Some Farm, season 2026. Spear size, no version named, no day typed on which it stands",
  ),
)
