import {numberText, shownIn} from "../../editor/display"
import type {Region} from "../../workbook/document"
import type {ReplantField} from "../../workbook/replant"
import {crossingOf, type OldAgainstNew} from "./replantLayout"
import {inARow} from "./weekWords"

const money = (value: number) => numberText(Math.round(value), 0)

/** "replant after the 2028 harvest", for a number of seasons that the field is kept. */
const afterHarvest = ({first}: ReplantField, kept: number) =>
  kept === 0 ? `before the ${first} season` : `after the ${first + kept - 1} harvest`

/**
 * What was found for a field: the best year, the years that come as near to it as does not matter, what going now costs, and
 * what its first season alone would say where that differs. A field whose ground goes back to its owner is told what its lease
 * says.
 */
export function replantFinding(field: ReplantField, little: number, region?: Region): string {
  const {unit, text} = shownIn("money/ha", region)
  const {seasons, keepYears, keepLeast, keepMost, first, earlyCost, waitGain} = field
  if (seasons.length === 0) return `${field.field}: no net cash of its seasons is known yet.`
  if (field.lease !== null && field.leaseAct !== "")
    return `${field.field}: ${leaseWords(field.lease, field)}.`
  const alone =
    keepYears > 0 && waitGain < 0
      ? ` Its first season alone would lose ${text(Math.round(-waitGain), 0)} ${unit}, which later ones make up for.`
      : ""
  if (keepYears === seasons.length)
    return `${field.field}: keep it through ${first + keepYears - 1}, the last season weighed; longer may be better.${alone}`
  const near = Array.from({length: keepMost - keepLeast + 1}, (_, i) => keepLeast + i)
    .filter((kept) => kept !== keepYears)
    .map((kept) => (kept === 0 ? "now" : String(first + kept - 1)))
  const nearby = near.length
    ? `; ${inARow(near)} ${near.length === 1 ? "comes" : "come"} within ${text(little, 0)} ${unit} of it`
    : ""
  const costs =
    keepYears > 0 && earlyCost >= little
      ? ` Clearing now would cost ${text(Math.round(earlyCost), 0)} ${unit}.`
      : ""
  return `${field.field}: replant ${afterHarvest(field, keepYears)}${nearby}.${costs}${alone}`
}

/** What to do with a field whose ground is given up after so many seasons. */
function leaseWords(lease: number, {first, leaseAct, leaseYears}: ReplantField): string {
  const kept = leaseYears ?? 0
  const until = `through the ${first + kept - 1} harvest`
  const seasons = lease === 1 ? "1 season" : `${lease} seasons`
  if (kept === lease)
    return `keep it to the end of its lease, ${until}: nothing planted in the ${lease === 1 ? "season" : seasons} left would bring more`
  const left = `${seasons} of the lease ${lease === 1 ? "is" : "are"} left`
  const act =
    LEASE_ACTS[leaseAct] ?? (leaseAct.includes("replant") ? "replant" : "clear it and plant no more")
  return kept > 0 ? `keep it ${until}, then ${act}; ${left}` : `${act}; ${left}`
}

/** What the lease's acts are in a sentence. */
const LEASE_ACTS: Readonly<Record<string, string>> = {
  replant: "replant it now",
  stop: "clear it now and plant no more",
  wait: "clear it now and plant later",
}

/** "This field beats a new planting until 2028; from 2029 the new one is better." */
export function crossingWords(picture: OldAgainstNew, lease: number | null = null): string {
  if (lease !== null)
    return `If the lease had no end: ${crossingWords(picture).replace(/^./, (letter) => letter.toLowerCase())}`
  const crossing = crossingOf(picture)
  const {seasons, level} = picture
  if (crossing.kind === "below from the start") return "A new planting is better from the first season on"
  if (crossing.kind === "above to the end")
    return `This field still beats a new planting in ${seasons.at(-1)!.year}`
  const start = seasons[0]!.cash < level ? "After a poor start, this" : "This"
  return `${start} field beats a new planting until ${crossing.before}; the new one is better from ${crossing.after}`
}

/** "2027: this field brings 1 985 money/ha (1 104 to 2 866), a year must bring 2 137." */
export function seasonSentence(
  {year, cash, low, high}: OldAgainstNew["seasons"][number],
  {level, unit}: Pick<OldAgainstNew, "level" | "unit">,
) {
  const range = high > low ? ` (${money(low)} to ${money(high)})` : ""
  return `${year}: this field brings ${money(cash)} ${unit}${range}, a year must bring ${money(level)}.`
}

/** Why the best year is best: the first season, the last one kept and the next, beside the level, and where they cross. */
export function replantSentence(picture: OldAgainstNew): string {
  const {seasons, level, field, unit, kept} = picture
  const crossing = crossingOf(picture)
  const where =
    crossing.kind === "between"
      ? ` The lines cross between ${crossing.before} and ${crossing.after}.`
      : crossing.kind === "below from the start" && seasons.some(({cash}) => cash > level)
        ? " The seasons above that do not make up for those below."
        : ""
  const isTold = (i: number) => (kept === 0 ? i < 3 : i === 0 || i === kept - 1 || i === kept)
  const told = seasons.filter((_, i) => isTold(i)).map(({year, cash}) => `${money(cash)} in ${year}`)
  return `${field} brings ${inARow(told)} (${unit}); a year must bring ${money(level)} to be kept.${where}`
}
