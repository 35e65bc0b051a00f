import type {BestWeeksInput, ByAge, Successor} from "./bestWeeksAsked"
import {entry, mostWeeks, type Opened} from "./plantingSeason"

/**
 * What the modelled crop of a planting is multiplied by at each age, from the one that it has. Cut for the weeks of the table
 * year after year, with its fern whole, it brings what is foretold for it. The balance by itself knows no age, gaps or disease:
 * it lets the roots of every field grow to what the site can carry, and an old field would come back to a full crop. What other
 * weeks and a fern lost change is for the balance to say. Where nothing is foretold, the factor and ageing alone count.
 */
export function cropShares(
  input: BestWeeksInput,
  {age, crowns, factor, foretold}: Pick<Successor, "age" | "crowns" | "factor" | "foretold">,
  field: Opened,
): ByAge {
  const shares: number[] = Array.from({length: age}, () => 0)
  let standing = crowns
  for (let at = age; at < input.oldest; at++) {
    const days = 7 * mostWeeks(input, field, at)
    const modelled = field.seasons.picked(standing, days)[days]!
    const told = foretold !== null && modelled > 0
    shares.push(told ? entry(foretold, at) / modelled : factor * entry(input.ageFactors, at))
    standing = field.seasons.after(standing, days)
  }
  return shares
}
