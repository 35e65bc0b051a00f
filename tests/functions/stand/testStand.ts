/**
 * An invented planting for tests: yields in cwt/acre at life years 1 to 18, price 100 and harvest cost 55 a cwt, yearly cost 700
 * from year 3 on; 3 000 in the planting year and 600 in the next. Units cancel as long as they agree.
 */
const YIELDS = [0, 0, 10, 25, 40, 50, 55, 55, 55, 52, 48, 44, 40, 36, 32, 28, 24, 20]
const [PRICE, HARVEST, YEARLY] = [100, 55, 700]

/** Cash that does not go with the yield. */
export const other = YIELDS.map((_, i) => [-3000, -600][i] ?? -YEARLY)
export const yields: readonly number[] = YIELDS
/** Cash that goes with the yield. */
export const crop = YIELDS.map((y) => y * (PRICE - HARVEST))
export const costs = YIELDS.map((y, i) => y * HARVEST - other[i]!)

/** Net cash with the price and the yield multiplied. */
export const stand = (price = 1, yieldFactor = 1) =>
  YIELDS.map((y, i) => yieldFactor * y * (price * PRICE - HARVEST) + other[i]!)

/** -3000 -600 -250 425 1100 1550 1775 1775 1775 1640 1460 1280 1100 920 740 560 380 200 */
export const flows = stand()

/** A range for a formula. */
export const inBraces = (list: readonly number[]) => `{${list.join(",")}}`

/** An invented planting of 12 years. */
export const twelveYears = [-9800, -1500, 900, 3600, 5200, 5600, 5600, 5500, 5300, 5000, 4600, 4200]
