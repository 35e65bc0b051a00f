import {valuesOf, type CropValueName} from "../cropValues"
import {readOnce} from "../memo"
import {isRefusal, outOfRange, type Refusal} from "../refusal"

/** The crop values of the daily reserve balance. */
export const balanceNames = [
  "Spear_potential",
  "Potential_zero",
  "Potential_full",
  "Potential_cap",
  "Cut_rate",
  "Growth_base",
  "Growth_reference",
  "Growth_cap",
  "Scarce_low",
  "Scarce_high",
  "Spear_dry",
  "Stub_share",
  "Unsold_share",
  "Spear_cost",
  "Upkeep_rate",
  "Upkeep_q10",
  "Fern_build",
  "Fern_cost",
  "Fern_low",
  "Fern_high",
  "Fern_per_root",
  "Fern_most",
  "Light_gain",
  "Light_spread",
  "Leaf_area",
  "To_fern",
  "To_root",
  "Root_cost",
  "Root_most",
  "Root_turnover",
  "Sugar_most",
  "Leaf_cold",
  "Leaf_warm",
  "Leaf_hot",
  "Leaf_stop",
  "Fern_end",
  "Ridge_gain",
  "Year_start",
] as const satisfies readonly CropValueName[]

/** Pairs of which the first must lie below the second: the balance divides by the distance. */
const RISING = [
  ["Potential_zero", "Potential_full"],
  ["Growth_base", "Growth_reference"],
  ["Scarce_low", "Scarce_high"],
  ["Fern_low", "Fern_high"],
  ["Leaf_cold", "Leaf_warm"],
  ["Leaf_warm", "Leaf_hot"],
  ["Leaf_hot", "Leaf_stop"],
] as const

/** The optional argument `[values]` of functions on the daily balance that use more; those that contradict each other are refused. */
export function balanceValuesAnd<const N extends CropValueName = never>(...more: readonly N[]) {
  const all = valuesOf<(typeof balanceNames)[number] | N>(...balanceNames, ...more)
  const read = (given: Parameters<typeof all.read>[0]) => {
    const values = all.read(given)
    const refused = isRefusal(values) ? values : checkedBalance(values)
    return isRefusal(refused) ? refused : values
  }
  return {...all, read}
}

/** The same of the functions that use the values of the balance alone. */
export const balanceValues = balanceValuesAnd()

/** The values, or why they contradict each other. */
export const checkedBalance = readOnce((values: BalanceValues) => contradiction(values) ?? values)

export type BalanceValues = Readonly<Record<(typeof balanceNames)[number], number>>

function contradiction(values: BalanceValues): Refusal | null {
  for (const [lower, higher] of RISING)
    if (values[lower] >= values[higher])
      return outOfRange(`Crop value ${lower} (${values[lower]}) must be below ${higher} (${values[higher]})`)
  const {Year_start, To_fern, To_root} = values
  if (Year_start !== 1 && Year_start !== 7)
    return outOfRange(`Crop value Year_start must be 1 (January) or 7 (July), not ${Year_start}`)
  if (To_fern + To_root > 1)
    return outOfRange(
      `Crop values To_fern (${To_fern}) and To_root (${To_root}) share the day's sugar: together at most 1`,
    )
  return null
}

/** The defaults, for those who call the model itself. */
export const balanceDefaults: BalanceValues = balanceValues.absent!.value
