import {expect, it} from "vitest"
import {documentOf, sheet} from "../documents"
import {inWords, mended} from "./looking"

const trial = (...cells: (string | number | null)[]) =>
  documentOf(
    sheet(
      "Costs",
      ["Kg", "Money"],
      cells.map((cell, i) => [100 + i, cell]),
    ),
  )

it("tells a formula or a number that differs from the one formula above and below it", () => {
  expect(inWords(trial("=A1*2", "=A2*3", "=A3*2"), "odd formula")).toEqual([
    "B2: Money of 101 holds another formula than the cells above and below it: theirs would read =A2*2",
  ])
  expect(inWords(trial("=A1*2", 207, "=A3*2"), "odd formula")).toEqual([
    "B2: Money of 101 holds no formula, unlike the cells above and below it: theirs would read =A2*2",
  ])
})

it("tells none where the neighbours differ too, at the ends, in a gap, and where all agree", () => {
  expect(inWords(trial("=A1*2", "=A2*3", "=A3*4"), "odd formula")).toEqual([])
  expect(inWords(trial("=A1*2", "=A2*2", "=SUM(B1:B2)"), "odd formula")).toEqual([])
  expect(inWords(trial("=A1*2", null, "=A3*2"), "odd formula")).toEqual([])
  expect(inWords(trial("=A$1*2", "=A$1*2", "=A$1*2"), "odd formula")).toEqual([])
})

it("puts their formula in", () => {
  expect(mended(trial("=A1*2", 207, "=A3*2"), "odd formula").sheets[0]!.rows[1]![1]).toBe("=A2*2")
})
