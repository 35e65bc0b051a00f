import {optional, quantity, yearly} from "../parameters"

/** Net cash of a new planting, one number a year of its life; the planting year is the first. */
export const flowsOfAPlanting = yearly(
  "Net cash of a new planting, year by year from the planting year",
  "money/ha",
)

/** Net cash of the crop that stands, from the coming season on. */
export const flowsOfTheStand = yearly("Net cash of the standing crop, from the coming season on", "money/ha")

/** For sums that have no end, a rate of 0 would make every worth endless. */
export const rateAboveNought = quantity("Rate a year", "share", {above: 0, max: 1})
export const rateFromNought = quantity("Rate a year", "share", {min: 0, max: 1})
export const rateOfAnySign = quantity("Rate a year", "share", {above: -1, max: 1})

export const groundWorth = quantity("Worth of the cleared ground", "money/ha")
export const clearing = optional(quantity("Clearing an old planting", "money/ha", {min: 0}), 0)

/** What an endless chain of plantings has between two of them, shared by the functions on it. */
export const betweenPlantings = {
  clear: clearing,
  rest: optional(quantity("Years of rest after clearing", "years", {min: 0, max: 30, whole: true}), 0),
  rest_income: optional(quantity("Net cash of a year of rest", "money/ha"), 0),
}

/** By how much the net cash of every planting to come is larger with each year that it is planted later. */
export const growthOfReturns = optional(
  quantity("Growth of all net cash a year", "share", {above: -1, max: 1}),
  0,
)

/** Everything a chain of like plantings is worked out from; without interest it can be compared all the same. */
export const chainParameters = {flows: flowsOfAPlanting, rate: rateFromNought, ...betweenPlantings}

/** A number of years that ends a list, such as a life within the years of net cash. */
export const wholeYears = (label: string, min: number) => quantity(label, "years", {min, whole: true})
