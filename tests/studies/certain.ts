import {dayOf} from "../../functions/calendar"
import {balanceDefaults} from "../../functions/root/balanceValues"
import type {RiskInput} from "../../src/studies/drawRisk"
import {sites} from "../functions/root/sites"

/** A farm about which nothing is in doubt: every draw is the plan. */
export const certain: Omit<RiskInput, "plans"> = {
  firstYear: 2026,
  climate: sites.generic,
  modelYear: {first: dayOf("2026-01-01")!, days: 365},
  values: balanceDefaults,
  airSpread: 0,
  sunSpread: 0,
  fernLoss: null,
  yearSpread: 0,
  fieldSpread: 0,
  priceLink: 0,
  priceMemory: 0,
  seed: 7,
}
