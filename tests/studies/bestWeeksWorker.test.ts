import {expect, it, vi} from "vitest"
import {bestWeeks, type BestWeeks, type WeeksPart} from "../../src/studies/bestWeeks"
import type {BestWeeksInput} from "../../src/studies/bestWeeksAsked"
import type {Asked, Told} from "../../src/studies/shareOut"
import {sixPlantings} from "./sixPlantings"

it("answers a page that shares the plantings out, telling how far it is", async () => {
  const told: Told<WeeksPart, BestWeeks>[] = []
  const worker = Object.assign(new EventTarget(), {
    postMessage: (one: Told<WeeksPart, BestWeeks>) => told.push(structuredClone(one)),
  })
  vi.stubGlobal("self", worker)
  await import("../../src/studies/bestWeeksWorker")
  const ask = (asked: Asked<BestWeeksInput, WeeksPart>) =>
    worker.dispatchEvent(new MessageEvent("message", {data: structuredClone(asked)}))
  const input = {...sixPlantings, nodes: {sugar: 9, structure: 4}}
  ask({ask: "draw", input, from: 2, to: 6})
  ask({ask: "draw", input, from: 0, to: 2})
  const parts = told.flatMap((one) => (one.tell === "part" ? [one.part] : []))
  expect(parts).toHaveLength(2)
  ask({ask: "gather", input, parts})
  vi.unstubAllGlobals()
  expect(told.at(-1)).toEqual({tell: "result", result: bestWeeks(input)})
  const shares = told.flatMap((one) => (one.tell === "share" ? [one.share] : []))
  expect(shares.length).toBeGreaterThan(4)
  expect(Math.max(...shares)).toBe(1)
})
