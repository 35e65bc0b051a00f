import {isoOf} from "../../../functions/calendar"
import {answer, type FormulaFunction} from "../../../functions/define"
import type {Given} from "../../../functions/parameters"

/**
 * The stand-in climate of the worked example of the daily balance: sine curves round the year (an assumed site), mean air
 * 10 and swing 9.5 °C, soil three quarters of it 20 days later, light 12 and 8.5 MJ/m²/day. One row a day.
 */
export const generic: number[][] = Array.from({length: 365}, (_, i) => {
  const wave = (shift: number) => Math.cos((2 * Math.PI * (i + 1 + shift)) / 365)
  return [10 - 9.5 * wave(-20), 10 - 0.75 * 9.5 * wave(-40), 12 - 8.5 * wave(10)]
})

/** Where `generic` stands when it is given as the cells of sheet T. */
export const IN_CELLS = "T!A1:C365"

/** What a function answers, as its cell would hold it; days are numbers. */
export const ask = (definition: FormulaFunction, ...given: Given[]) => answer(definition, given)

/** The answer as a number; anything else fails the test. */
export function number(definition: FormulaFunction, ...given: Given[]): number {
  const result = answer(definition, given)
  if (typeof result !== "number") throw new Error(`No number: ${JSON.stringify(result)}`)
  return result
}

/** The answer as an ISO day; anything else fails the test. */
export const day = (definition: FormulaFunction, ...given: Given[]) => isoOf(number(definition, ...given))
