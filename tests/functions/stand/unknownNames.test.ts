import {expect, it} from "vitest"
import {unknownNames} from "../../../functions/stand/unknownNames"
import {cell} from "../cell"

it("counts the rows that name no planting, each of them, whatever the capitals", () => {
  expect(unknownNames(["Long Acre", "long acre", "Long Ace", "Long Ace", ""], ["LONG ACRE"])).toBe(2)
  expect(unknownNames(["Long Acre"], [])).toBe(1)
  expect(unknownNames([], ["Long Acre"])).toBe(0)
})

it("takes blank rows and errors for no name", () =>
  expect(
    cell("=STAND.UNKNOWN_NAMES(T!A1:A4,T!B1:B4)", [["a", "A"], [null, null], ["=1/0", null], ["b"]]),
  ).toBe(1))
