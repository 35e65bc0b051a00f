import {afterEach, expect, it} from "vitest"
import {choose} from "../../src/editor/selection"
import {createStore} from "../../src/editor/store"
import {typedFirst, uncountedShown} from "../../src/views/weekShown"
import {documentIn, place, sheetOf} from "../workbooks/shipped"

const farm = documentIn("hollow-brook-farm.json")
const store = createStore(farm)
const open = (sheet: string) => store.turn(choose({sheet: sheetOf(farm, sheet), row: 0, col: 0}))
const emptied = (sheet: string, key: string, heading: string) => {
  const cells = [{at: place(farm, sheet, key, heading), content: null}]
  store.run(() => ({type: "enter", cells}))
}
afterEach(() => store.undo())

it.each([
  ["This week", "As_of", "No day is typed on which the plan stands: type As_of on the sheet Named values."],
  ["Packing list", "Shed_day", "No day is typed for the list: type Shed_day on the sheet Named values."],
  ["Season plan", "Season", "No year is typed for the season: type Season on the sheet Named values."],
  ["Crew and cooler", "Season", "No year is typed for the season: type Season on the sheet Named values."],
])("says on %s what has to be typed first while %s is blank", (sheet, name, told) => {
  emptied("Named values", name, "Value")
  open(sheet)
  expect(typedFirst(store)).toBe(told)
})
it("asks for nothing where it is typed, where it is not needed, or before there is a planting", () => {
  open("This week")
  expect(typedFirst(store)).toBeNull()
  emptied("Named values", "As_of", "Value")
  open("Cold chain")
  expect(typedFirst(store)).toBeNull()
  expect(typedFirst(createStore(documentIn("blank.json")))).toBeNull() // on Season plan
})
it("counts no planting in the needs whose crop is not known, and says which", () => {
  open("Crew and cooler")
  expect(uncountedShown(store)).toEqual([])
  emptied("Plantings", "Long Acre", "Area")
  open("Crew and cooler")
  expect(uncountedShown(store)).toEqual(["Long Acre"])
  const valueOf = (sheet: string, row: number, heading: string) =>
    store.workbook.valueAt({
      ...place(farm, sheet, farm.sheets[sheetOf(farm, sheet)]!.rows[0]![0]!, heading),
      row,
    })
  expect(valueOf("Packing list", 1, "In")).toMatchObject({code: "#N/A"})
  expect(valueOf("Sales by week", 12, "Crop")).toMatchObject({code: "#N/A"}) // twelve rows for each
})
