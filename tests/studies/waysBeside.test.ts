import {expect, it} from "vitest"
import {waysBeside} from "../../src/studies/waysBeside"
import {smallCase} from "./everyWay"

// At most 5 weeks of a season and 7 of a last one, in a model year with room for 20.
const ways = (weeks: number[], kept: number[][] = [], room = 20) =>
  waysBeside(smallCase, 8, {room}, {years: weeks.map((weeks) => ({weeks}))}, kept)

it("sets every season a week shorter or longer, within the weeks allowed", () => {
  expect(ways([5, 3, 0, 6])).toEqual([
    {name: "as found", weeks: [5, 3, 0, 6]},
    {name: "a week less", weeks: [4, 2, 0, 5]},
    {name: "a week more", weeks: [5, 4, 1, 7]},
  ])
  expect(ways([3, 4], [], 4)[2]).toEqual({name: "a week more", weeks: [4, 4]})
  // At most 3 weeks at age 8 and 6 at age 9: each season has the most of its own age.
  const caps = [...Array.from({length: 8}, () => 0), 3, 6]
  const found = {years: [{weeks: 3}, {weeks: 4}, {weeks: 7}]}
  expect(waysBeside({...smallCase, caps}, 8, {room: 20}, found, [])[2]!.weeks).toEqual([3, 5, 7])
})

it("clears a year sooner or later with the weeks that are best for it", () => {
  expect(ways([4, 7], [[], [6], [4, 7], [4, 3, 7]]).slice(3)).toEqual([
    {name: "cleared sooner", weeks: [6]},
    {name: "cleared later", weeks: [4, 3, 7]},
  ])
})

it("leaves out a way that is the one found", () => {
  expect(ways([5, 7]).map(({name}) => name)).toEqual(["as found", "a week less"])
  expect(ways([0]).map(({name}) => name)).toEqual(["as found", "a week more"])
})

it("of a planting that is cleared now has only a season more", () => {
  expect(ways([], [[], [7]])).toEqual([
    {name: "as found", weeks: []},
    {name: "cleared later", weeks: [7]},
  ])
})
