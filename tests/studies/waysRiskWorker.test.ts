import {expect, it, vi} from "vitest"
import {bestWeeks} from "../../src/studies/bestWeeks"
import {drawWays, type WaysInput, type WaysPart} from "../../src/studies/drawWays"
import type {Asked, Told} from "../../src/studies/shareOut"
import {waysAsked} from "../../src/studies/waysAsked"
import {waysRisk, type WaysRisk} from "../../src/studies/waysRisk"
import {smallCase} from "./everyWay"
import {sixPlantings} from "./sixPlantings"

it("answers a page that shares the draws out, telling how far it is", async () => {
  const asked = {
    ...smallCase,
    plantings: [{...sixPlantings.plantings[2]!, age: 8}],
    nodes: {sugar: 9, structure: 4},
  }
  const input = waysAsked(asked, bestWeeks(asked), 2026, 1, null)
  const told: Told<WaysPart, WaysRisk>[] = []
  const worker = Object.assign(new EventTarget(), {
    postMessage: (one: Told<WaysPart, WaysRisk>) => told.push(structuredClone(one)),
  })
  vi.stubGlobal("self", worker)
  await import("../../src/studies/waysRiskWorker")
  const ask = (one: Asked<WaysInput, WaysPart>) =>
    worker.dispatchEvent(new MessageEvent("message", {data: structuredClone(one)}))
  ask({ask: "draw", input, from: 20, to: 40})
  ask({ask: "draw", input, from: 0, to: 20})
  ask({ask: "gather", input, parts: told.flatMap((one) => (one.tell === "part" ? [one.part] : []))})
  vi.unstubAllGlobals()
  expect(told.at(-1)).toEqual({tell: "result", result: waysRisk(input, [drawWays(input, 0, 40)])})
  expect(told.flatMap((one) => (one.tell === "share" ? [one.share] : []))).toEqual([0.5, 1, 0.5, 1])
})
