import {readFileSync} from "node:fs"
import {bench, describe} from "vitest"
import {createStore} from "../../src/editor/store"
import {enterContent} from "../../src/editor/commands/cells"
import {readFile} from "../../src/workbook/file"
import {Workbook} from "../../src/workbook/workbook"

const reading = readFile(
  readFileSync(`${import.meta.dirname}/../../workbooks/hollow-brook-farm.json`, "utf8"),
)
if ("refused" in reading) throw new Error(reading.refused)
const {document} = reading
const sheet = document.sheets.findIndex(({name}) => name === "Root samples")
const col = document.sheets[sheet]!.columns.findIndex(({heading}) => heading === "Sugar")

describe("typing a root sample, from the key to the plan's new values", () => {
  const store = createStore(document)
  let sample = 400
  bench("one edit through the store", () => {
    store.run(enterContent({sheet, row: 12, col}, (sample = sample === 400 ? 410 : 400)))
  })
  bench("the same by opening the whole workbook anew", () => {
    if (new Workbook(document).document !== document) throw new Error("Another workbook was opened")
  })
})
