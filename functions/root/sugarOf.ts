import {defineFunction, type Refusal} from "../define"
import {dividesByZero} from "../refusal"
import {storedSugar, structuralRoot} from "./quantities"

/** Sugar in the root, mg per g dry root: c = 1000·C/(C + S), both kg/ha. Refuses a root with neither. */
export const sugarOf = (reserve: number, structure: number): number | Refusal =>
  reserve + structure === 0
    ? dividesByZero("There is no root: store and structural root are both 0 kg/ha")
    : (1000 * reserve) / (reserve + structure)

export const ROOT_SUGAR_OF = defineFunction({
  name: "ROOT.SUGAR_OF",
  summary: "Sugar in the root that goes with a store and so much structural root",
  about: "The other way round from ROOT.RESERVE.",
  parameters: {reserve: storedSugar, structure: structuralRoot},
  returns: {label: "Sugar in the root", unit: "mg/g"},
  refuses: ["a store and a structural root that are both 0"],
  sources: ["identity"],
  example: {formula: "=ROOT.SUGAR_OF(3000,6000)", gives: 333.33},
  calculate: ({reserve, structure}) => sugarOf(reserve, structure),
})
