import {afterEach, beforeEach, expect, it, vi} from "vitest"
import {answerAs} from "../../src/studies/anyWorker"
import type {StudyName} from "../../src/studies/startWorker"
import {sixPlantings} from "./sixPlantings"

beforeEach(() => vi.resetModules()) // a worker's code listens once, when it is loaded
afterEach(() => vi.unstubAllGlobals())

function workerHere() {
  const told: unknown[] = []
  const worker = Object.assign(new EventTarget(), {postMessage: (one: unknown) => told.push(one)})
  vi.stubGlobal("self", worker)
  const ask = (data: unknown) => worker.dispatchEvent(new MessageEvent("message", {data}))
  return {told, ask}
}

it("answers what was asked before the study's code was there", async () => {
  const {told, ask} = workerHere()
  const ready = answerAs("best weeks")
  ask({ask: "draw", input: {...sixPlantings, nodes: {sugar: 9, structure: 4}}, from: 0, to: 1})
  expect(told).toEqual([])
  await ready
  expect(told).toContainEqual(expect.objectContaining({tell: "part"}))
})

it("tells the page of a study that cannot be loaded", async () => {
  workerHere()
  const reported: unknown[] = []
  vi.stubGlobal("reportError", (fault: unknown) => reported.push(fault))
  await answerAs("none of them" as StudyName)
  expect(reported).toHaveLength(1)
})
