import {defineFunction, type Refusal} from "../define"
import {measured, quantity} from "../parameters"
import {dividesByZero, isRefusal} from "../refusal"
import {atAge, yieldTable} from "./atAge"

/**
 * A yield recorded at one age, kg/ha, as the same stand would have given it at another: times the share of full crop at
 * `wanted` over that at `age`, on straight lines between the rows of the age curve. Refuses a record from an age whose
 * share is 0, and ages outside the curve (#N/A).
 */
export function asIfAge(
  kg: number,
  age: number,
  wanted: number,
  ages: readonly number[],
  shares: readonly number[],
): number | Refusal {
  const from = atAge(age, ages, shares)
  const to = atAge(wanted, ages, shares)
  if (isRefusal(from)) return from
  if (isRefusal(to)) return to
  if (from === 0)
    return dividesByZero(
      `The age curve has no crop at age ${age}: its yield says nothing about age ${wanted}`,
    )
  return (kg * to) / from
}

export const CROP_AS_IF_AGE = defineFunction({
  name: "CROP.AS_IF_AGE",
  summary: "A yield recorded at one age put to another by the age curve",
  about:
    "A plain mean of young years falls short of a full stand and flatters a failing one. Put each recorded year to the age you " +
    "plan for, then take the mean. It says what the curve says: a curve from elsewhere is an assumption, and the younger the " +
    "record, the more rests on it.",
  parameters: {
    yield: quantity("Yield on record", "kg/ha", {min: 0}),
    age: quantity("Age at the record (planting year = 0)", "years", {max: 100}),
    wanted: quantity("Age wanted (planting year = 0)", "years", {max: 100}),
    ages: yieldTable.ages,
    shares: measured("Shares of the full crop at those ages", "share", {min: 0}),
  },
  together: ["ages", "shares"],
  returns: {label: "Yield at the age wanted", unit: "kg/ha"},
  refuses: [
    "a record from an age without crop",
    "ages that do not rise from row to row",
    "an age outside the curve",
  ],
  sources: ["planning"],
  example: {formula: "=CROP.AS_IF_AGE(2400,4,7,{3,4,5,6,8},{0.5,0.8,0.95,1,1})", gives: 3000},
  calculate: ({yield: kg, age, wanted, ages, shares}) => asIfAge(kg, age, wanted, ages, shares),
})
