import {defineFunction, type Refusal} from "../define"
import {measured, quantity, words} from "../parameters"
import {notYet, wrongKind} from "../refusal"
import {notRising} from "../rising"
import {atLeast} from "../rounding"

const FLOORS = "Smallest diameters of the sizes"

/**
 * Name of the size a diameter, mm, falls in: the last whose smallest diameter it reaches. Below the first there is none
 * (#N/A). Refuses diameters that do not rise from row to row, and a size without a name.
 */
export function size(
  diameter: number,
  floors: readonly number[],
  names: readonly string[],
): string | Refusal {
  const falls = notRising(FLOORS, floors)
  if (falls) return falls
  const row = floors.findLastIndex((floor) => atLeast(diameter, floor))
  if (row < 0) return notYet(`${diameter} mm is below the smallest size, which begins at ${floors[0]} mm`)
  return names[row] || wrongKind(`The size that begins at ${floors[row]} mm has no name`)
}

export const PACK_SIZE = defineFunction({
  name: "PACK.SIZE",
  summary: "Size class of a spear, by your own table",
  about:
    "Each row holds from its diameter on, until the next begins. The classes of the United States standard, as quoted, begin " +
    "at 5/16 inch (7.94 mm, small), 8/16 (12.70 mm, medium), 11/16 (17.46 mm, large) and 14/16 (22.23 mm, very large). The " +
    "same word means other diameters to other buyers: type what yours says. A row with a blank diameter is left out.",
  parameters: {
    diameter: quantity("Spear diameter", "mm", {above: 0, max: 60}),
    floors: measured(FLOORS, "mm", {min: 0, max: 60}),
    names: words("Names of the sizes"),
  },
  together: ["floors", "names"],
  returns: {label: "Size class", unit: "text"},
  refuses: ["diameters that do not rise from row to row", "a size without a name"],
  sources: ["usGrades", "planning"],
  example: {
    formula:
      '=PACK.SIZE(17.3,{0,7.94,12.7,17.46,22.23},{"very small","small","medium","large","very large"})',
    gives: "medium",
  },
  calculate: ({diameter, floors, names}) => size(diameter, floors, names),
})
