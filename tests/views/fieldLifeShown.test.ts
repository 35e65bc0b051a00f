import {readFileSync} from "node:fs"
import {expect, it} from "vitest"
import {columnWith, sheetWith, type Part} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"
import {Workbook} from "../../src/workbook/workbook"
import {fieldLifeFinding} from "../../src/views/fieldLifeShown"

it.each([
  ["2036 or later", "2034 to 2036", "clear after 2036 or later (2034 to 2036 come near)"],
  ["2036 or later", "2034 or later", "clear after 2036 or later (2034 and later come near)"],
  ["2036 or later", "2036 or later", "clear after 2036 or later"],
  ["2036 or later", "2036", "clear after 2036 or later"],
  ["2027", "2027", "clear after 2027"],
])("tells of a last season %s with %s near", (last, near, words) => {
  const url = new URL("../../workbooks/hollow-brook-farm.json", import.meta.url)
  const reading = readFile(readFileSync(url, "utf8"))
  if ("refused" in reading) throw new Error(reading.refused)
  const workbook = new Workbook(reading.document)
  const sheet = sheetWith(reading.document, "life planting")
  const kept: readonly (readonly [Part, string | number])[] = [
    ["life weeks", 7],
    ["life last season", last],
    ["life near", near],
  ]
  const cells = kept.map(([part, content]) => ({
    at: {sheet, row: 0, col: columnWith(reading.document, sheet, part)},
    content,
  }))
  workbook.revise({type: "enter", cells})
  expect(fieldLifeFinding({workbook}, {refused: "not asked here", code: "#N/A"})).toBe(
    `As last run: North Bench 7 weeks, ${words}.`,
  )
})
