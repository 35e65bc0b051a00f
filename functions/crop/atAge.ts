import {defineFunction, type Refusal} from "../define"
import {measured, quantity} from "../parameters"
import {notYet} from "../refusal"
import {notRising} from "../rising"

const AGES = "Ages of the table (planting year = 0)"

/** The arguments of a yield table, shared with CROP.BAND. */
export const yieldTable = {
  age: quantity("Age of the planting (planting year = 0)", "years", {max: 100}),
  ages: measured(AGES, "years", {min: 0, max: 100}),
  yields: measured("Yields at those ages", "kg/ha", {min: 0}),
}

/**
 * Yield at an age, kg/ha, on the straight line between the rows of the grower's own table. Outside the table
 * the answer is #N/A: a line drawn on would be a guess. Refuses ages that do not rise from row to row.
 */
export function atAge(age: number, ages: readonly number[], yields: readonly number[]): number | Refusal {
  const falls = notRising(AGES, ages)
  if (falls) return falls
  const above = ages.findIndex((rowAge) => rowAge >= age)
  if (ages[above] === age) return yields[above]!
  if (above <= 0)
    return notYet(`Age ${age} is outside the table, which runs from ${ages[0]} to ${ages.at(-1)} years`)
  const [a0, a1] = [ages[above - 1]!, ages[above]!]
  const [y0, y1] = [yields[above - 1]!, yields[above]!]
  return y0 + ((y1 - y0) * (age - a0)) / (a1 - a0)
}

export const CROP_AT_AGE = defineFunction({
  name: "CROP.AT_AGE",
  summary: "Yield at an age, on the straight line between rows of your table",
  about: "A row with a blank in it is left out, so the line runs on to the next row.",
  parameters: yieldTable,
  together: ["ages", "yields"],
  returns: {label: "Yield at that age", unit: "kg/ha"},
  refuses: ["ages that do not rise from row to row", "an age outside the table"],
  sources: ["planning"],
  example: {formula: "=CROP.AT_AGE(5,{3,4,6},{900,2400,4800})", gives: 3600},
  calculate: ({age, ages, yields}) => atAge(age, ages, yields),
})
