import {defineFunction, type Refusal} from "../define"
import {everyNumber, quantity} from "../parameters"
import {dividesByZero, isRefusal, notYet, outOfRange, wrongKind} from "../refusal"
import {notRising} from "../rising"
import {sizeShare} from "./sizeShare"

const FLOORS = "Smallest diameters of the sizes"

/** No spear is thicker, mm. */
const THICKEST = 1000

/**
 * Mean price of a kg of a crop whose logarithms of diameters are normal about that of the median: each size class counts by its
 * share of the weight. What is thinner than the first class, and classes without a price, are left out.
 */
export function mixPrice(
  median: number,
  spread: number,
  floors: readonly (number | null)[],
  prices: readonly (number | null)[],
): number | Refusal {
  if (floors.length !== prices.length)
    return wrongKind(`The ranges have ${floors.length} and ${prices.length} cells: sizes differ`)
  const classes = floors.flatMap((from, row) => (from === null ? [] : [{from, price: prices[row]!}]))
  const falls = notRising(
    FLOORS,
    classes.map(({from}) => from),
  )
  if (falls) return falls
  const below = classes.find(({price}) => price !== null && price < 0)
  if (below) return outOfRange(`Prices of the sizes must be 0 or more, not ${below.price}`)
  if (classes.every(({price}) => price === null)) return notYet("No size has a price yet")
  let [weight, worth] = [0, 0]
  for (const [i, {from, price}] of classes.entries()) {
    if (price === null) continue
    const share = sizeShare(median, spread, from, classes[i + 1]?.from ?? THICKEST, "weight")
    if (isRefusal(share)) return share
    weight += share
    worth += share * price
  }
  return weight > 0 ? worth / weight : dividesByZero("No spear falls into a size with a price")
}

export const PACK_MIX_PRICE = defineFunction({
  name: "PACK.MIX_PRICE",
  summary: "Mean price of a kg over size classes, by the sizes of the crop",
  about:
    "Each class holds from its diameter on, until the next begins, and counts by its share of the weight (PACK.SIZE_SHARE, by " +
    "weight). A class without a price is left out, as is what is thinner than the first. As spears thin the price falls, " +
    "even where every class sells as before.",
  parameters: {
    median: quantity("Median diameter", "mm", {above: 0, max: 60}),
    spread: quantity("Deviation of the logarithms of the diameters", "number", {above: 0, max: 2}),
    floors: everyNumber(FLOORS, "mm"),
    prices: everyNumber("Prices of the sizes", "money/kg"),
  },
  returns: {label: "Mean price", unit: "money/kg"},
  refuses: [
    "ranges of different sizes",
    "diameters that do not rise from row to row",
    "no size with a price",
    "a price below 0",
  ],
  sources: ["identity", "planning"],
  example: {formula: "=PACK.MIX_PRICE(12,0.30,{0,9.525},{1,2})", gives: 1.915},
  calculate: ({median, spread, floors, prices}) => mixPrice(median, spread, floors, prices),
})
