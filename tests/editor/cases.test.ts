import {expect, it} from "vitest"
import {
  addCase,
  caseNameRefused,
  compareBy,
  putCaseIn,
  putInCase,
  removeCase,
  takeFromCase,
} from "../../src/editor/commands/cases"
import {caseCells} from "../../src/studies/cases"
import {extraAt} from "../../src/workbook/extras"
import {farm, farmStore, inPlan, planContent} from "./farm"

const withCase = () => {
  const store = farmStore()
  store.run(addCase("Shorter"))
  store.run(putInCase("Shorter", inPlan("C1"), 4))
  return store
}

it("changes nothing in the workbook until it is put in, then all of it in one step", () => {
  const store = withCase()
  store.run(putInCase("Shorter", inPlan("C2"), 3))
  expect([planContent(store, "C1"), planContent(store, "C2")]).toEqual([6, 5])
  store.run(putCaseIn("Shorter"))
  expect([planContent(store, "C1"), planContent(store, "C2")]).toEqual([4, 3])
  expect(store.getState().undoable.at(-1)!.name).toBe("case Shorter put in")
})

it("is undone step by step to the very document it began with", () => {
  const store = withCase()
  while (store.undo());
  expect(store.getState().document).toBe(farm)
})

it("needs a name that no other case has", () => {
  const {document} = withCase().getState()
  expect(caseNameRefused(document, "")).toBe("A case needs a name: type a word or two")
  expect(caseNameRefused(document, "shorter")).toBe("Another case is called “Shorter”: choose another name")
  expect(caseNameRefused(document, "Longer")).toBeNull()
})

it("leaves nothing on a cell that is taken out of it, and nothing at all when it is dropped", () => {
  const store = withCase()
  store.run(addCase("Longer"))
  store.run(putInCase("Longer", inPlan("C1"), 8))
  store.run(takeFromCase("Shorter", inPlan("C1")))
  expect(extraAt(store.getState().document, inPlan("C1"))?.cases).toEqual({Longer: 8})
  store.run(removeCase("Longer"))
  expect(extraAt(store.getState().document, inPlan("C1"))).toBeUndefined()
  expect(store.getState().document.cases).toEqual(["Shorter"])
  expect(caseCells(store.getState().document, "Shorter")).toEqual([])
})

it("is compared by a cell that is chosen for it, and no more when chosen again", () => {
  const store = withCase()
  store.run(compareBy(inPlan("E1")))
  expect(extraAt(store.getState().document, inPlan("E1"))?.compared).toBe(true)
  store.run(compareBy(inPlan("E1")))
  expect(extraAt(store.getState().document, inPlan("E1"))).toBeUndefined()
})
