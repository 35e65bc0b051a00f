import {expect, it} from "vitest"
import {checkWords} from "../../../src/editor/checks"
import {findingsIn} from "../../../src/workbook/checks/checks"
import {effectWords, ranked, ranking} from "../../../src/workbook/checks/effects"
import type {Content} from "../../../src/workbook/document"
import {Workbook} from "../../../src/workbook/workbook"
import {column, documentOf, sheet} from "../documents"

/** Closes rest on the weeks of their own planting and on a named value, crops on the close and a yield. */
const farm = (own: Record<string, Content> = {}) =>
  documentOf(
    sheet(
      "Plan",
      [
        column("Planting", {format: "text", part: "planting"}),
        column("Close", {
          formula: '=IF(A1="Top Corner","not cut",Opens+7*INDEX(Ages!B:B,MATCH(A1,Ages!A:A,0)))',
          format: "date",
          part: "close",
        }),
        column("Crop", {formula: "=IF(ISTEXT(B1),0,(B1-Opens)*Ages!$D$1)", part: "crop"}),
      ],
      [
        ["Long Acre", "=", "="],
        ["Well Field", "=", "="],
        ["Top Corner", "=", "="],
      ],
    ),
    sheet(
      "Ages",
      [
        column("Planting", {format: "text"}),
        column("Weeks", {format: 0, rule: {most: 12}}),
        column("Aside", {format: 0, rule: {most: 12}}),
        column("A day", {format: 0, rule: {most: 200}}),
      ],
      [
        ["Long Acre", own["weeks"] ?? 6, own["aside"] ?? 1, own["day"] ?? 90],
        ["Well Field", 5, 1, null],
        ["Top Corner", own["young"] ?? 0, 1, null],
      ],
    ),
    sheet(
      "Named values",
      [column("Name", {format: "text"}), column("Value", {rule: {most: 60_000}})],
      [["Opens", own["opens"] ?? 46_137]],
      {names: true},
    ),
  )

function effects(own: Record<string, Content>) {
  const workbook = new Workbook(farm(own))
  return ranked(workbook, findingsIn(workbook, checkWords(workbook))).map(
    ({sentence, effect}) => `${sentence.split(" is ")[0]}: ${effectWords(effect)}`,
  )
}

it("ranks by the closes that rest on a cell, then the crops, then the formulas", () => {
  expect(effects({aside: 99, weeks: 99, day: 999, opens: 99_999})).toEqual([
    "Opens: The close of Long Acre and Well Field rests on this",
    "Weeks of Long Acre: The close of Long Acre rests on this",
    "A day of Long Acre: The crop of Long Acre and Well Field rests on this",
    "Aside of Long Acre: No formula rests on this",
  ])
})

it("puts what makes a number wrong before a habit, and what the plan does not rest on last", () => {
  expect(effects({aside: 99, weeks: 99, opens: "=46137*1.5"}).map((line) => line.split(":")[0])).toEqual([
    "Weeks of Long Acre",
    "Opens has the numbers 46137, 1.5 typed inside its formula",
    "Aside of Long Acre",
  ])
})

it("does not count a planting that is not cut", () => {
  expect(effects({young: 99})).toEqual([
    "Weeks of Top Corner: 3 formulas use this, no close or crop of the plan",
  ])
})

it("stops at every cell that it follows, so that the page can answer in between", () => {
  const workbook = new Workbook(farm({weeks: 99}))
  const steps = [...ranking(workbook, findingsIn(workbook, checkWords(workbook)))]
  // Two closes, on the weeks and the planting of each and on Opens; two crops, on these as well.
  expect(steps.length).toBeGreaterThan(15)
})

it("follows a ring to its end", () => {
  const ring = farm({weeks: 99, day: "=B1*2"})
  const {sheets} = ring
  const weeks = sheets[1]!.rows.map((row, i) => (i === 0 ? row.with(1, "=D1") : row))
  const workbook = new Workbook({...ring, sheets: sheets.with(1, {...sheets[1]!, rows: weeks})})
  const told = ranked(workbook, findingsIn(workbook, checkWords(workbook)))
  expect(told[0]!.effect.closes).toEqual(["Long Acre"])
})

it("finds nothing on the trial as it stands", () => {
  expect(effects({})).toEqual([])
})
