import {valuesOf} from "../cropValues"
import {defineFunction, type Refusal} from "../define"
import {outOfRange} from "../refusal"
import {atLeast} from "../rounding"
import {draw, type SpearCost} from "./draw"
import {daysOfUpkeep, soilTemperature, spearsSold, storedSugar, structuralRoot} from "./quantities"
import {sugarOf} from "./sugarOf"
import {upkeep, type Upkeep} from "./upkeep"

/**
 * Sugar in the root after cutting, mg per g dry root: the store less what the spears draw and the root breathes. Mass in
 * kg/ha, soil in °C. The structural root is taken as it was at the start. Refuses a season that takes more than there is.
 */
export function after(
  structure: number,
  reserve: number,
  spears: number,
  days: number,
  soil: number,
  values: SpearCost & Upkeep,
): number | Refusal {
  const drawn = draw(spears, values)
  const breathed = upkeep(structure, soil, days, values)
  if (!atLeast(reserve, drawn + breathed))
    return outOfRange(
      `The store empties: spears draw ${drawn.toFixed(1)} kg/ha and the root breathes ${breathed.toFixed(1)} kg/ha, ` +
        `more than the ${reserve} kg/ha in it`,
    )
  return sugarOf(Math.max(0, reserve - drawn - breathed), structure)
}

/** The crop values of a season of cutting. */
export const cuttingValues = valuesOf(
  "Spear_dry",
  "Stub_share",
  "Unsold_share",
  "Spear_cost",
  "Upkeep_rate",
  "Upkeep_q10",
)

export const ROOT_AFTER = defineFunction({
  name: "ROOT.AFTER",
  summary: "Sugar in the root that a cutting season leaves",
  about:
    "A sum over the whole season: what the spears draw and what the root breathes at a mean soil temperature. The lowest " +
    "sugar of the year comes weeks later, when the store has built the fern as well. No published figure of sugar at the " +
    "close was found to check it.",
  parameters: {
    structure: structuralRoot,
    reserve: storedSugar,
    spears: spearsSold,
    days: daysOfUpkeep,
    soil: soilTemperature,
    values: cuttingValues,
  },
  returns: {label: "Sugar in the root", unit: "mg/g"},
  refuses: ["a season that takes more than the store holds", "no root at all"],
  sources: ["balance", "penningDeVries1974", "pressman1993"],
  example: {formula: "=ROOT.AFTER(6000,6000,6000,56,11)", gives: 420.5},
  calculate: ({structure, reserve, spears, days, soil, values}) =>
    after(structure, reserve, spears, days, soil, values),
})
