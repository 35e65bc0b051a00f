import {expect, it} from "vitest"
import {choose} from "../../src/editor/selection"
import {createStore} from "../../src/editor/store"
import {typedFirst} from "../../src/views/weekShown"
import {documentIn, place, sheetOf} from "../workbooks/shipped"

const on = (sheet: string, blank?: string, file = "hollow-brook-farm.json") => {
  const document = documentIn(file)
  const store = createStore(document)
  if (blank !== undefined) {
    const at = place(document, "Named values", blank, "Value")
    store.run(() => ({type: "enter", cells: [{at, content: null}]}))
  }
  store.turn(choose({sheet: sheetOf(document, sheet), row: 0, col: 0}))
  return typedFirst(store)
}

it.each([
  ["This week", "As_of", "No day is typed on which the plan stands: type As_of on the sheet Named values."],
  ["Packing list", "Shed_day", "No day is typed for the list: type Shed_day on the sheet Named values."],
  ["Season plan", "Season", "No year is typed for the season: type Season on the sheet Named values."],
  ["Crew and cooler", "Season", "No year is typed for the season: type Season on the sheet Named values."],
])("says on %s what has to be typed first while %s is blank", (sheet, name, told) => {
  expect(on(sheet, name)).toBe(told)
})
it("asks for nothing where it is typed, where it is not needed, or before there is a planting", () => {
  expect(on("This week")).toBeNull()
  expect(on("Cold chain", "As_of")).toBeNull()
  expect(on("Season plan", undefined, "blank.json")).toBeNull()
})
