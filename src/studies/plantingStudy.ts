import {modelYearOf} from "../../functions/calendar"
import type {CrownYears, PlantingCrowns} from "../workbook/crowns"
import {ASSUMED, type HowSureInput} from "./howSure"

/** Standard errors from the middle of an 80 % interval of the normal distribution to its end. */
const NORMAL_80 = 1.2816

/** Relative error of one plant's reading, √(0.20² + 0.06²): between plants and between roots (Feller & Fink 2007). */
const ONE_PLANT = Math.hypot(0.2, 0.06)

/** Relative standard error of the sampled sugar, from its 80 % interval; without one, that of a single plant. */
export function sugarErrorOf({measured: [sample]}: Pick<PlantingCrowns, "measured">): number {
  if (!sample || sample.lower === null || sample.upper === null || sample.sugar <= 0) return ONE_PLANT
  return (sample.upper - sample.lower) / 2 / NORMAL_80 / sample.sugar
}

/** Relative error of the planting's own factor: chosen as 30 % without a record, halved by three years of it. */
export const factorErrorOf = ({recordYears}: Pick<PlantingCrowns, "recordYears">): number =>
  0.3 / Math.sqrt(recordYears + 1)

/** What the study of how sure runs on for one planting of a workbook. */
export function plantingStudy(
  planting: PlantingCrowns,
  {climate, values, likely}: CrownYears,
  seed: number,
): HowSureInput {
  const year = modelYearOf(planting.open, values.Year_start)
  const {structure, reserve, healthy, factor, floor} = planting
  return {
    crowns: {structure, reserve},
    climate,
    year,
    open: planting.open - year.first,
    close: planting.close - year.first,
    healthy,
    values,
    likely,
    factor,
    floor,
    sugarError: sugarErrorOf(planting),
    factorError: factorErrorOf(planting),
    ...ASSUMED,
    seed,
  }
}
