import {readFileSync} from "node:fs"
import {expect, it} from "vitest"
import type {Content, Document} from "../../../src/workbook/document"
import {readFile} from "../../../src/workbook/file"
import {revised} from "../../../src/workbook/revised"
import {inWords} from "./looking"

const {document: farm} = readFile(
  readFileSync(new URL("../../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
) as {document: Document}

/** What is found where a stand's last season in the years to come is another. */
function withLast(stand: string, last: Content) {
  const sheet = farm.sheets.findIndex(({name}) => name === "Stands ahead")
  const row = farm.sheets[sheet]!.rows.findIndex(([name]) => name === stand)
  const at = {sheet, row, col: 3}
  return inWords(revised(farm, {type: "enter", cells: [{at, content: last}]}), "replanting").filter((words) =>
    words.includes(` ${stand} `),
  )
}

// By Replant the farm's North Bench, on old ground, is best cut last in 2027 to 2029, Well Field in 2036 or later.
it.each([
  ["North Bench", 2027],
  ["North Bench", 2029],
  ["Well Field", null],
  ["Well Field", 2036],
])("finds nothing where %s ends after %s, as Replant has it", (stand, last) =>
  expect(withLast(stand, last)).toEqual([]),
)

it.each([
  ["North Bench", 2030, "end after 2030; by Replant its last season is best 2027 to 2029"],
  ["North Bench", 2026, "end after 2026; by Replant its last season is best 2027 to 2029"],
  ["North Bench", null, "go on through 2035; by Replant its last season is best 2027 to 2029"],
  ["Well Field", 2028, "end after 2028; by Replant its last season is best 2036 or later"],
])("tells where %s ends after %s", (stand, last, words) =>
  expect(withLast(stand, last)).toEqual([
    expect.stringContaining(`The cash of the years to come lets ${stand} ${words}`) as string,
  ]),
)
