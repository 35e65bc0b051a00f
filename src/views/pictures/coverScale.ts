import {quantiles} from "../../studies/howSure"

/** The lowest and highest value that a year shows. */
export interface Reach {
  readonly least: number
  readonly most: number
}

/** A level scale, and whether some year reaches beyond it. */
export interface CoverScale extends Reach {
  readonly isCut: boolean
}

/** Fewer years than this have no quartiles to speak of. */
const LEAST_YEARS = 5
/** The scale is cut where it would be this many times as tall for years that stand out. Chosen. */
const WORTH_A_CUT = 1.5

/**
 * The scale on which years stay readable when one of them, with little due, reaches far beyond the others: it holds all that
 * lies within 1.5 times the quartiles' distance of the quartiles (Tukey 1977, Exploratory Data Analysis, inner fences), and
 * always what `always` holds. Where nothing stands far out it holds everything.
 */
export function coverScale(years: readonly Reach[], always: Reach): CoverScale {
  const whole = {
    least: Math.min(always.least, ...years.map(({least}) => least)),
    most: Math.max(always.most, ...years.map(({most}) => most)),
  }
  if (years.length < LEAST_YEARS) return {...whole, isCut: false}
  const inside = {
    least: Math.min(always.least, ...within(years.map(({least}) => least))),
    most: Math.max(always.most, ...within(years.map(({most}) => most))),
  }
  const tall = ({least, most}: Reach) => most - least
  return tall(whole) > WORTH_A_CUT * tall(inside) ? {...inside, isCut: true} : {...whole, isCut: false}
}

/** The values inside the inner fences. */
function within(values: readonly number[]): readonly number[] {
  const [, lower, , upper] = quantiles(Float64Array.from(values))
  const fence = 1.5 * (upper - lower)
  return values.filter((value) => value >= lower - fence && value <= upper + fence)
}
