import {afterEach, expect, it, vi} from "vitest"
import {SEASON_CLOSE} from "../../functions/season/close"
import {SEASON_PICKINGS} from "../../functions/season/pickings"
import type {Document} from "../../src/workbook/document"
import {Workbook} from "../../src/workbook/workbook"

afterEach(() => vi.restoreAllMocks())

/** One sheet holds two limits, the other a close, the pickings up to it, and an error with what rests on it. */
const season = (): Document => ({
  name: "Field",
  sheets: [
    {
      name: "Limits",
      group: "",
      columns: [
        {heading: "One", kind: "typed", format: "date"},
        {heading: "Other", kind: "typed", format: "date"},
      ],
      rows: [["2026-06-09", "2026-06-20"]],
    },
    {
      name: "Season",
      group: "",
      columns: [
        {
          heading: "Close",
          kind: "worked out",
          formula: '=SEASON.CLOSE({"a","b"},Limits!A1:B1)',
          format: "date",
        },
        {heading: "Pickings", kind: "worked out", formula: '=SEASON.PICKINGS("2026-04-20",A1,2)'},
        {heading: "Fault", kind: "worked out", formula: "=IF(Limits!B1>0,NA(),1)"},
        {
          heading: "After it",
          kind: "worked out",
          formula: '=IFERROR(C1,SEASON.PICKINGS("2026-04-20","2026-04-20",1))',
        },
      ],
      rows: [["=", "=", "=", "="]],
    },
  ],
})

const enter = (workbook: Workbook, col: number, content: string) =>
  workbook.revise({type: "enter", cells: [{at: {sheet: 0, row: 0, col}, content}]})

it("leaves alone what rests on a date or an error that came out as before", () => {
  const workbook = new Workbook(season())
  const closes = vi.spyOn(SEASON_CLOSE, "calculate")
  const pickings = vi.spyOn(SEASON_PICKINGS, "calculate")
  enter(workbook, 1, "2026-06-22")
  expect(closes).toHaveBeenCalledTimes(1)
  expect(pickings).not.toHaveBeenCalled()
})

it("goes on where the date has changed", () => {
  const workbook = new Workbook(season())
  const at = {sheet: 1, row: 0, col: 1}
  const before = workbook.valueAt(at)
  enter(workbook, 1, "2026-06-01")
  // 20 April to 9 June holds 26 pickings two days apart, to 1 June 22.
  expect([before, workbook.valueAt(at)]).toEqual([26, 22])
})
