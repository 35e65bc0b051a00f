import {expect, it} from "vitest"
import {column, documentOf, sheet} from "../documents"
import {inWords} from "./looking"

const trial = (first: string, second = 4) =>
  documentOf(
    sheet("Plan", [column("Kg"), "Share", "Money"], [[first, "=A1/2", "=B1*3"]]),
    sheet("Prices", ["Price"], [[second]]),
  )

it("tells an error once, where it began, with how many cells show it", () => {
  expect(inWords(trial("=5/(Prices!A1-4)"), "error")).toEqual([
    "A1: Kg, #DIV/0!: Divides by zero; 3 cells show it",
  ])
  expect(inWords(trial("=5/(Prices!A1-4)", 5), "error")).toEqual([])
})

it("takes what is not measured yet for no error, but a name looked up and not found for one", () => {
  expect(inWords(trial("=NA()"), "error")).toEqual([])
  expect(inWords(trial('=MATCH("Long Acer",Prices!A:A,0)'), "error")).toEqual([
    "A1: Kg, #N/A: The value looked for is not there; 3 cells show it",
  ])
})

it("says that a name points nowhere", () => {
  expect(inWords(trial("=Spear_limit+1"), "error")).toEqual([
    "A1: Kg, #NAME?: There is no named value Spear_limit; 3 cells show it",
  ])
})

it("tells an error that a formula fills a blank cell with, and none of words that look like one", () => {
  const rows = [
    ["=-TRANSPOSE(C1:C2)", null, 3, "#DIV/0!"],
    [null, null, "word"],
  ]
  expect(inWords(documentOf(sheet("Plan", ["Kg", "Share", "Read", "Word"], rows)), "error")).toEqual([
    "B1: Share of row 1, #VALUE!: A number is needed here, not text",
  ])
})
