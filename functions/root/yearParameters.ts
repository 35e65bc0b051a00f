import {climateRange} from "../climate/climate"
import {healthyFern} from "../fern/healthy"
import {balanceValues} from "./balanceValues"
import {closeOfCutting, openingOfCutting, rootsOfAField, storedSugar} from "./quantities"

/** The arguments of a formula function that asks for something of one year by the daily balance. */
export const yearParameters = {
  structure: rootsOfAField,
  reserve: storedSugar,
  climate: climateRange,
  open: openingOfCutting,
  close: closeOfCutting,
  healthy: healthyFern,
  values: balanceValues,
}
