import {expect, it} from "vitest"
import type {BestYear} from "../../src/studies/bestCourse"
import type {PlantingWeeks} from "../../src/studies/bestWeeks"
import {whyWeeks, whyYear} from "../../src/studies/whyWeeks"

const year: BestYear = {
  age: 9,
  weeks: 6,
  why: "reserve",
  crop: 4000,
  margin: 4000,
  sugar: 500,
  reserveLeft: 6000,
  reserveWorth: 0.9,
  nextWeek: {kg: 620, cost: 645.6, stopPrice: 2.7914},
}

it.each<[Partial<BestYear>, string]>([
  [
    {},
    "After 6 weeks a further one takes 646 money/ha from later seasons: it pays from a price of 2.79 money/kg packed.",
  ],
  [
    {why: "last season", weeks: 10},
    "Cleared after this season: what the roots keep is worth nothing, so it is cut to the technical limit, 10 weeks.",
  ],
  [
    {why: "last season, price", weeks: 4},
    "Cleared after this season: what the roots keep is worth nothing, and after 4 weeks a further one no longer pays its picking.",
  ],
  [{why: "most weeks", age: 1, weeks: 0}, "The most weeks of your table at age 1: 0 weeks."],
  [{why: "price", weeks: 1}, "After 1 week a further one does not pay its own picking."],
])("says why: %o", (changed, sentence) => {
  expect(whyWeeks({...year, ...changed})).toBe(sentence)
})

it("writes its sums as it is told to", () => {
  const words = {perHa: (sum: number) => `${sum} an acre`, perKg: (sum: number) => `${sum} a pound`}
  expect(whyWeeks(year, words)).toBe(
    "After 6 weeks a further one takes 645.6 an acre from later seasons: it pays from a price of 2.7914 a pound packed.",
  )
})

it("says why a planting is cleared after the season that it is", () => {
  const two = {age: 14, replaceAge: 16, years: [year, year], keep: [0, 800, 1000, 960], isAtEnd: false}
  const told = (changed: Partial<PlantingWeeks>) =>
    whyYear({...two, ...changed} as unknown as PlantingWeeks, 2026)
  expect(told({})).toBe(
    "Cleared after 2027: a year sooner is worth 200 money/ha less, a year later 40 money/ha less.",
  )
  expect(told({keep: [0, 800, 1000]})).toBe("Cleared after 2027: a year sooner is worth 200 money/ha less.")
  expect(told({isAtEnd: true})).toBe(
    "The oldest age allowed ends it after 2027: with more ages, longer may be better.",
  )
  expect(told({years: [], replaceAge: 14})).toBe("")
})
