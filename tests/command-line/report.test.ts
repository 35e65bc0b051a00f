import {describe, expect, it} from "vitest"
import {main} from "../../src/command-line/report"
import {run} from "./shell"

describe("report", () => {
  it.each([
    [[], "One workbook is needed. See --help."],
    [["workbooks/blank.json"], "--out FILE.pdf is needed. See --help."],
    [["workbooks/blank.json", "--out", "a.pdf", "--paper", "A5"], "--paper is A4 or Letter, not A5."],
    [["none.json", "--out", "a.pdf"], "none.json cannot be read: there is no such file."],
  ])("refuses %j", async (args, sentence) => {
    expect(await run(main, args)).toMatchObject({status: 2, err: [sentence]})
  })
})
