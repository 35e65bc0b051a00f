import type {Workbook} from "../workbook/workbook"
import {drawRisk} from "./drawRisk"
import {lenderRisk} from "./lenderRisk"

/** The study with nothing left to chance. */
const CERTAIN = {
  yearSpread: 0,
  fieldSpread: 0,
  doubt: 0,
  priceVariation: 0,
  priceLink: 0,
  priceMemory: 0,
  airSpread: 0,
  sunSpread: 0,
} as const

/**
 * Cover of this season's year if the rest of it comes at the pace so far: what is picked counts as it came in, at the prices of
 * its weeks. The sheet Cash and debt has the cover of the plan. Null before the first picking, and where nothing is due or the
 * study of risk cannot be run.
 */
export function coverAtPace(workbook: Workbook): number | null {
  const input = lenderRisk(workbook, 0, CERTAIN)
  const first = input?.plans[0]!.years[0]
  if (!input || !first?.sold || first.due <= 0) return null
  const {kg, sales} = drawRisk({...input, plans: input.plans.slice(0, 1)}, 0, 1)
  return (sales[0]! - first.perKg * kg[0]! - first.costs) / first.due
}
