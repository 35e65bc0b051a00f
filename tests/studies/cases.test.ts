import {expect, it} from "vitest"
import {addCase, compareBy, putInCase} from "../../src/editor/commands/cases"
import {createStore} from "../../src/editor/store"
import {caseCells, compareCases, comparedCells} from "../../src/studies/cases"
import {farmStore, inPlan, PLAN} from "../editor/farm"
import {dayOf} from "../../functions/calendar"
import {cellAt, documentOf, sheet} from "../workbook/documents"

it("compares the closes of the plan where nothing else was chosen", () => {
  const store = farmStore()
  store.run(addCase("Shorter"))
  store.run(putInCase("Shorter", inPlan("C1"), 4))
  const {document} = store.getState()
  expect(comparedCells(document)).toEqual([inPlan("D1"), inPlan("D2")])
  // Long Acre opens on 18 Apr: six weeks on is 30 May, four weeks on 16 May. Well Field stays at 25 May.
  const told = compareCases(document).map(({now, inCases}) => [now, ...inCases])
  expect(told).toEqual([
    [dayOf("2026-05-30"), dayOf("2026-05-16")],
    [dayOf("2026-05-25"), dayOf("2026-05-25")],
  ])
  expect(compareCases(document).every(({isDate}) => isDate)).toBe(true)
})

it("begins every case from the workbook as it stands, not from the case before", () => {
  const store = createStore(documentOf(sheet("Trial", ["A", "B", "Sum"], [[1, 10, "=A1+B1"]])))
  store.run(addCase("One"))
  store.run(addCase("Two"))
  store.run(putInCase("One", cellAt("A1"), 5))
  store.run(putInCase("Two", cellAt("B1"), 20))
  store.run(compareBy(cellAt("C1")))
  const {document} = store.getState()
  expect(compareCases(document)[0]).toMatchObject({at: cellAt("C1"), now: 11, inCases: [15, 21]})
  expect(caseCells(document, "Two")).toEqual([{at: cellAt("B1"), content: 20}])
})

it("follows the rows that its cells move with", () => {
  const store = farmStore()
  store.run(addCase("Shorter"))
  store.run(putInCase("Shorter", inPlan("C1"), 4))
  store.run(() => ({type: "insertRows", sheet: PLAN, before: 0, count: 2}))
  expect(caseCells(store.getState().document, "Shorter")).toEqual([{at: inPlan("C3"), content: 4}])
})
