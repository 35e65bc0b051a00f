import {expect, it} from "vitest"
import type {Content} from "../../../src/workbook/document"
import {column, documentOf, sheet} from "../documents"
import {inWords} from "./looking"

const named = (formula: string, ...rows: Content[][]) =>
  documentOf(
    sheet("Use", [column("Kg"), column("Later", {formula: "=Coast*2"})], [[formula]]),
    sheet("Named values", [column("Name", {format: "text"}), "Value"], rows, {names: true}),
  )

it("tells a name that nothing uses; a column without rows uses its names, and so does a formula by the cell", () => {
  const rows = [
    ["As_of", "2026-05-25"],
    ["Rate", 0.9],
    ["Coast", 0.16],
    ["Floor", 1600],
    ["Unused", 3],
  ]
  expect(inWords(named("=RATE*'Named values'!B4", ...rows), "named value")).toEqual([
    "'Named values'!A5: Unused is used nowhere",
  ])
})

it("tells a blank one that formulas use, a twin, and a name that reads as a cell", () => {
  const rows = [
    ["Rate", null],
    ["Coast", 0.16],
    ["coast", 0.19],
    ["Q10", 2],
  ]
  expect(inWords(named("=Rate*2", ...rows), "named value")).toEqual([
    "'Named values'!B1: Rate is blank, and formulas use it",
    "'Named values'!A3: coast is named twice: formulas mean the value in row 2",
    "'Named values'!A4: No formula can call Q10: a name has letters, digits and _ only, and does not read as a cell",
  ])
})

it("says nothing of a blank one where each formula that uses it asks whether it is blank", () => {
  const rows = [
    ["Rate", null],
    ["Coast", 0.16],
  ]
  expect(inWords(named('=IF(rate = "",0,Rate*2)', ...rows), "named value")).toEqual([])
  // Another formula needs it, and so does one that asks of something else.
  expect(inWords(named('=IF(Coast="",0,Rate*2)', ...rows), "named value")).toEqual([
    "'Named values'!B1: Rate is blank, and formulas use it",
  ])
})
