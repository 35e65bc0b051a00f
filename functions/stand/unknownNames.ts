import {defineFunction} from "../define"
import {everyWord} from "../parameters"

/** Rows that name something which is none of these plantings. Names are the same in capitals or not; blank rows name nothing. */
export function unknownNames(names: readonly string[], plantings: readonly string[]): number {
  const known = new Set(plantings.map((name) => name.toLowerCase()))
  return names.filter((name) => name !== "" && !known.has(name.toLowerCase())).length
}

export const STAND_UNKNOWN_NAMES = defineFunction({
  name: "STAND.UNKNOWN_NAMES",
  summary: "How many rows name a planting that is none of yours",
  about:
    "A picking or a sample under a name that is on no row of the plantings counts for none of them. Capitals do not matter.",
  parameters: {
    names: everyWord("Names in the rows"),
    plantings: everyWord("Names of the plantings"),
  },
  returns: {label: "Rows with an unknown name", unit: "count"},
  sources: ["identity"],
  example: {
    formula: '=STAND.UNKNOWN_NAMES({"Long Acre","Long Ace","sand piece"},{"Long Acre","Sand Piece"})',
    gives: 1,
  },
  calculate: ({names, plantings}) => unknownNames(names, plantings),
})
