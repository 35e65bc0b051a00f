import {expect, it} from "vitest"
import {readNamedNumbers} from "../../functions/namedNumbers"

const table = {
  Price: {unit: "money/kg", limits: {min: 0}},
  Rate: {unit: "share", limits: {above: 0, max: 1}},
} as const
const read = (...rows: (string | number | boolean | null)[][]) => readNamedNumbers("Joint value", table, rows)

it("reads numbers by name, leaving out blank rows and blank numbers", () => {
  expect(read(["Rate", 0.06], [null, null], ["Price", null])).toEqual({Rate: 0.06})
  expect(read(["Rate", 0.06], ["Price", ""])).toEqual({Rate: 0.06}) // as a formula leaves it
})
it.each([
  [[["Prize", 1]], "There is no joint value named Prize"],
  [[[null, 1]], "Joint value 1 has no name"],
  [
    [
      ["Rate", 0.1],
      ["Rate", null],
    ],
    "Joint value Rate is given twice",
  ],
  [[["Rate", "high"]], 'Joint value Rate must be a number, not the text "high"'],
  [[["Rate", 6]], "Joint value Rate must be above 0 and up to 1, not 6"],
  [[["Rate", 0.1, 3]], "Joint values must be a range of two columns, name and number"],
])("refuses %j", (rows, refused) => {
  expect(read(...rows)).toMatchObject({refused})
})
