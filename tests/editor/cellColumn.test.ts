import {expect, it} from "vitest"
import {cellColumn} from "../../src/editor/cellColumn"
import {textOf} from "../../src/editor/display"
import {keepEditing, startTyping, yearOf} from "../../src/editor/editing"
import {choose} from "../../src/editor/selection"
import {createStore} from "../../src/editor/store"
import {contentAt, type Content} from "../../src/workbook/document"
import {column, documentOf, sheet} from "../workbook/documents"

const text = (heading: string) => column(heading, {format: "text"})
const values = (...rows: Content[][]) => ({
  ...documentOf(sheet("Named values", [text("Name"), column("Value"), text("Unit")], rows, {names: true})),
  season: "",
})

it("takes a date where a blank value of the unit date is typed, and refuses what is none", () => {
  const store = createStore(values(["Season", 2027, "year"], ["Last_date", null, "date"]))
  const at = {sheet: 0, row: 1, col: 1}
  store.turn(choose(at))
  store.turn(startTyping("26 Jun"))
  keepEditing(store, 0, 0)
  expect(contentAt(store.getState().document, at)).toBe("2027-06-26")
  store.turn(choose(at))
  store.turn(startTyping("midsummer"))
  expect(keepEditing(store, 0, 0)).toBe(false)
})

it("takes a year as a number, and refuses what is none", () => {
  const store = createStore(values(["Season", null, "year"]))
  const at = {sheet: 0, row: 0, col: 1}
  const type = (text: string) => {
    store.turn(choose(at))
    store.turn(startTyping(text))
    return keepEditing(store, 0, 0)
  }
  expect(type("2028")).toBe(true)
  expect(contentAt(store.getState().document, at)).toBe(2028)
  expect(type("28")).toBe(false)
  expect(type("next")).toBe(false)
  expect(contentAt(store.getState().document, at)).toBe(2028)
})

it("shows a year without groups", () => {
  const document = values(["Season", 2027, "year"])
  expect(textOf(2027, cellColumn(document, {sheet: 0, row: 0, col: 1}))).toBe("2027")
})

it("completes a date by the season that is named, else by the one written beside the workbook's name", () => {
  const document = values(["Season", 2027, "year"])
  expect(yearOf(document)).toBe(2027)
  expect(yearOf({...document, season: "season 2026"})).toBe(2027)
  expect(yearOf({...values(["Season", null, "year"]), season: "season 2026"})).toBe(2026)
})
