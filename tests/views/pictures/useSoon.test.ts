import {expect, it} from "vitest"
import {soonest} from "../../../src/views/pictures/useSoon"

const aMomentLater = () => new Promise((done) => setTimeout(done))

it("does of several acts the last alone, and not before the next step", async () => {
  const {soon} = soonest()
  const done: number[] = []
  for (const act of [1, 2, 3]) soon(() => done.push(act))
  expect(done).toEqual([])
  await aMomentLater()
  expect(done).toEqual([3])
  soon(() => done.push(4))
  await aMomentLater()
  expect(done).toEqual([3, 4])
})

it("does at once what waits where it is let go, and not again", async () => {
  const {soon, now} = soonest()
  const done: number[] = []
  soon(() => done.push(1))
  now()
  now()
  expect(done).toEqual([1])
  await aMomentLater()
  expect(done).toEqual([1])
})
