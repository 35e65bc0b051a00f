import {describe, expect, it} from "vitest"
import {Workbook} from "../../../src/workbook/workbook"
import {cellAt, documentOf, sheet} from "../documents"
import {valuesOf} from "../sessions"

describe("a formula over a column of a sheet without rows", () => {
  const asks = ["=-Losses!A:A", "=SUM(LEN(Losses!A:A))", "=Losses!A:A%", "=ARRAY_CONSTRAIN(Losses!A:A,1,1)"]
  const opened = documentOf(
    sheet("Plan", ["A", "B", "C", "D", "E"], [[...asks, null]]),
    sheet("Losses", ["A"], [["x"]]),
  )

  it("has nothing to work with, and is in nobody's way", () => {
    const workbook = new Workbook(opened)
    workbook.revise({type: "removeRows", sheet: 1, first: 0, count: 1})
    workbook.revise({type: "enter", cells: [{at: cellAt("E1"), content: "=SUM(-Losses!A:A)"}]})
    const none = expect.stringMatching(/^#N\/A/)
    expect(Object.values(valuesOf(workbook))).toEqual([none, 0, none, none, none])
    expect(valuesOf(new Workbook(workbook.document))).toEqual(valuesOf(workbook))
  })
})
