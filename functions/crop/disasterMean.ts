import {defineFunction, type Refusal} from "../define"
import {measured, optional, quantity, words} from "../parameters"
import {notYet} from "../refusal"

/** Years hit by a disaster from which on the lowest year may be left out, where no other yield stands in. */
const ENOUGH = 2

/**
 * Mean yield, kg/ha, of years of which some, with a word as mark, were hit by a disaster. With a `standIn`, kg/ha, it takes
 * the place of the yield of each marked year. Without one, two marked years or more let the lowest year be left out; with
 * fewer there is no rule (#N/A). Without marks it is the plain mean.
 */
export function disasterMean(
  yields: readonly number[],
  marks: readonly string[],
  standIn: number | null,
): number | Refusal {
  const hit = marks.filter(Boolean).length
  if (hit === 0) return mean(yields)
  if (standIn !== null) return mean(yields.map((kg, row) => (marks[row] ? standIn : kg)))
  if (hit < ENOUGH)
    return notYet(`${hit} year is marked: give the county or state yield that stands in for it`)
  return mean(yields.toSorted((a, b) => b - a).slice(0, -1))
}

const mean = (yields: readonly number[]) => yields.reduce((sum, kg) => sum + kg, 0) / yields.length

export const CROP_DISASTER_MEAN = defineFunction({
  name: "CROP.DISASTER_MEAN",
  summary: "Mean yield of years of which some were hit by a disaster",
  about:
    "The federal rule cited, for farm loan plans on a farm's own last three years: the county's yield, else the state's, may stand " +
    "in for a year hit by a disaster; where two of three were hit, the lowest may be left out instead. Mark a year with any word. " +
    "Which disasters count, and which yields, is for the agency to say: a general guide.",
  parameters: {
    yields: measured("Yields on record", "kg/ha", {min: 0}),
    marks: words("Marks of the years hit by a disaster"),
    stand_in: optional(quantity("County or state yield that stands in", "kg/ha", {min: 0}), null, "none"),
  },
  together: ["yields", "marks"],
  returns: {label: "Mean yield", unit: "kg/ha"},
  refuses: ["one marked year without a yield that stands in"],
  sources: ["cfr761"],
  example: {formula: '=CROP.DISASTER_MEAN({4200,2400,4500},{"","hail",""},3600)', gives: 4100},
  calculate: ({yields, marks, stand_in}) => disasterMean(yields, marks, stand_in),
})
