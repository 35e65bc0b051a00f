import {expect, it} from "vitest"
import type {Content} from "../../../src/workbook/document"
import {column, documentOf, sheet} from "../documents"
import {inWords} from "./looking"

const values = (...rows: Content[][]) =>
  documentOf(
    sheet(
      "Named values",
      [
        column("Name", {format: "text"}),
        "Value",
        column("Source", {format: "text"}),
        column("Date", {format: "date"}),
      ],
      rows,
      {names: true},
    ),
    sheet("Use", ["Kg"], [["=Packout+Draw"]]),
  )

it("tells an input without a source or a date where the sheet has a column for it", () => {
  expect(
    inWords(values(["Packout", 0.86, null, "2026-02-16"], ["Draw", 2, "farm", null]), "no source"),
  ).toEqual(["C1: Packout has no source", "D2: Draw has no date"])
  expect(inWords(values(["Packout", 0.86, null, null]), "no source")).toEqual([
    "C1: Packout has no source and no date",
  ])
})

it("asks none of what is worked out or not typed in yet", () => {
  expect(
    inWords(values(["Packout", "=1-0.14", null, null], ["Draw", null, null, null]), "no source"),
  ).toEqual([])
})
