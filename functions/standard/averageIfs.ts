import {CellFault} from "../parameters"
import {dividesByZero, wrongKind, type Refusal} from "../refusal"
import {defineStandard} from "./define"
import {cells, condition, repeated, type Cells, type Condition} from "./parameters"

/**
 * Mean of the numbers in the places where every range meets its condition. Text and blanks among them are passed over;
 * an error among them is passed on.
 */
export function averageIfs(
  averaged: Cells,
  ranges: readonly Cells[],
  conditions: readonly Condition[],
): number | Refusal | CellFault {
  const [rows, cols] = [averaged.length, averaged[0]!.length]
  const differs = ranges.find((range) => range.length !== rows || range[0]!.length !== cols)
  if (differs)
    return wrongKind(
      `What is averaged has ${rows} × ${cols} cells and a range ${differs.length} × ${differs[0]!.length}: sizes differ`,
    )
  let total = 0
  let count = 0
  for (let row = 0; row < rows; row++)
    for (let col = 0; col < cols; col++) {
      if (!conditions.every((isMet, i) => isMet(ranges[i]![row]![col]!))) continue
      const held = averaged[row]![col]!
      if (held instanceof CellFault) return held
      if (typeof held !== "number") continue
      total += held
      count++
    }
  return count > 0 ? total / count : dividesByZero("No number meets all the conditions")
}

export const AVERAGEIFS = defineStandard({
  name: "AVERAGEIFS",
  section: "6.18.6",
  summary: "Mean of the numbers in rows that meet every condition",
  about: "Conditions are read as by COUNTIFS and SUMIFS.",
  parameters: {
    averaged: cells("What is averaged"),
    range: repeated(cells("Range that a condition is for")),
    condition: repeated(condition("Condition")),
  },
  returns: {label: "Mean", unit: "number"},
  refuses: ["ranges of different size", "no number that meets the conditions"],
  example: {formula: '=AVERAGEIFS({10,20,30,40},{1,2,3,4},">1",{5,5,6,5},5)', gives: 30},
  calculate: ({averaged, range, condition: conditions}) => averageIfs(averaged, range, conditions),
})
