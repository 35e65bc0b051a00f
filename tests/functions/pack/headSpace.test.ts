import {expect, it} from "vitest"
import {headSpace} from "../../../functions/pack/headSpace"
import {cell} from "../cell"

it("is what the room to keep leaves, below 0 where the tips would meet the lid", () => {
  expect(headSpace(305, 230, 75)).toBe(0)
  expect(headSpace(305, 250, 75)).toBe(-20)
  expect(headSpace(305, 230, 25)).toBe(50)
})
it("PACK.HEAD_SPACE keeps 75 mm where nothing else is given", () => {
  expect(cell("=PACK.HEAD_SPACE(300,200)")).toBe(25)
  expect(cell("=PACK.HEAD_SPACE(300,200,T!A1)")).toBe(25)
  expect(cell("=PACK.HEAD_SPACE(300,0)")).toMatchObject({code: "#NUM!"})
})
