import {numberText, percentText, quantityText, shownIn} from "../../editor/display"
import type {Risk} from "../../studies/risk"
import type {Region} from "../../workbook/document"
import type {CashYear, LenderPage, YieldEvidence} from "../../workbook/lender"
import {PLAIN_REGION} from "../../workbook/region"
import {firstInARow, inARow} from "./weekWords"

const money = (value: number) => numberText(value, 0)

/** "1.14" */
export const coverText = (cover: number, {decimal}: Region) => numberText(cover, 2, decimal)

/**
 * The year with the lowest cover, the earliest of equals; null while nothing is due. A cover that is typed over makes no year
 * better: it is taken from what there is and what is due.
 */
export function tightYear(years: readonly CashYear[]): CashYear | null {
  const owing = years.filter(({due}) => due > 0)
  return owing.length ? owing.reduce((least, one) => (coverOf(one) < coverOf(least) ? one : least)) : null
}
/** What there is for each 1 due, whatever is typed over it. */
export const coverOf = ({capacity, due}: CashYear) => capacity / due

/** "typed over as 1.30" where another cover stands in the cell; "" where none does. */
export function typedOverWords(one: CashYear, region: Region): string {
  if (one.cover === null || one.due <= 0) return ""
  const typed = coverText(one.cover, region)
  return typed === coverText(coverOf(one), region) ? "" : `typed over as ${typed}`
}

/**
 * What the lender's page found: how the plan pays, what its first year covers at the pace so far where that is another cover
 * than planned, and what chance does to it. Before that was worked out the sentence says that chance is not in it.
 */
export function lenderFinding(
  {years, region, unknown = []}: Pick<LenderPage, "years" | "region"> & Partial<Pick<LenderPage, "unknown">>,
  atPace: number | null = null,
  risk: Risk | null = null,
): string {
  const tight = tightYear(years)
  if (unknown.length) {
    const others = tight
      ? ` Of the others ${tight.year} has the lowest cover, ${coverText(coverOf(tight), region)}.`
      : ""
    return `The tight year is not known: ${yearsWords(unknown)} cannot be worked out.${others}`
  }
  if (!tight) return "No loan falls due in these years."
  const owing = years.filter(({due}) => due > 0)
  const short = owing.filter((one) => one.short >= 0.5)
  const because = tight.cause ? `, with ${tight.cause}` : ""
  const byChance = risk && riskWords(risk)
  const planned = byChance ? "As planned" : "As planned, nothing left to chance,"
  const paying = owing.length - short.length
  const some =
    paying === 0 ? "no year pays" : `${paying} of ${owing.length} years ${paying === 1 ? "pays" : "pay"}`
  const pays =
    short.length === 0
      ? `${planned} every year pays what is due; ${tight.year} is the tightest with cover ${coverText(coverOf(tight), region)}`
      : `${planned} ${some} what is due; ${tight.year} is short by ${money(tight.short)}`
  const pace = atPace === null ? null : paceWords(years[0]!, atPace, tight, region)
  const chance = byChance && `by chance ${byChance.replace(/^In/, "in")}`
  const besides = [pace, chance].filter((words) => words !== null).join("; ")
  return `${pays}${because}.${besides && ` ${besides[0]!.toUpperCase()}${besides.slice(1)}.`}`
}

/** "at the pace so far 2026 covers 1.07, not the 1.51 planned"; null where that comes to the same. */
function paceWords(first: CashYear, atPace: number, tight: CashYear, region: Region): string | null {
  const [comes, planned] = [coverText(atPace, region), coverText(coverOf(first), region)]
  if (comes === planned) return null
  const nowTight = first !== tight && atPace < coverOf(tight) ? ", which makes it the tightest" : ""
  return `at the pace so far ${first.year} covers ${comes}, not the ${planned} planned${nowTight}`
}

/**
 * "In 52 runs of 100 the cover is below 1 in 2027, the most of all years"; null where nothing is due. Not of all years where
 * some were left out, nor where there is one alone.
 */
export function riskWords({plans: [plan]}: Risk, someLeftOut = false): string | null {
  const years = plan!.years.flatMap(({year, below1}) => (below1 ? [{year, below1}] : []))
  if (years.length === 0) return null
  const worst = years.reduce((most, one) => (one.below1.share > most.below1.share ? one : most))
  const most =
    years.length === 1
      ? ""
      : someLeftOut
        ? ", the most of the years that are known"
        : ", the most of all years"
  return `In ${runsText(worst.below1.share)} runs of 100 the cover is below 1 in ${worst.year}${most}`
}

/** How many of 100 runs: "52"; at the ends "over 99" and "under 1", since draws prove no certainty. */
export const runsText = (share: number): string =>
  share < 0.005 ? "under 1" : share > 0.995 ? "over 99" : numberText(share * 100, 0)

/** "2026", "2027 and 2029", "2028 and 2032 to 2035" */
export function yearsWords(years: readonly number[]): string {
  const runs: {first: number; last: number}[] = []
  for (const year of years.toSorted((a, b) => a - b)) {
    const run = runs.at(-1)
    if (run?.last === year - 1) run.last = year
    else runs.push({first: year, last: year})
  }
  return inARow(
    runs.flatMap(({first, last}) =>
      last - first > 1 ? [`${first} to ${last}`] : first === last ? [`${first}`] : [`${first}`, `${last}`],
    ),
  )
}

/**
 * The title of the picture of cash and debt, with the cover that the farm wants to keep where the lowest lies below it, and
 * the years that cannot be worked out.
 */
export function cashTitle(
  years: readonly CashYear[],
  region: Region = PLAIN_REGION,
  wanted: number | null = null,
  unknown: readonly number[] = [],
): string {
  const tight = tightYear(years)
  if (unknown.length) {
    const known = tight
      ? `Cover ${coverText(coverOf(tight), region)} in ${tight.year}, the lowest known`
      : "No cover is known"
    return `${known}; ${yearsWords(unknown)} cannot be worked out`
  }
  if (!tight) return "Nothing falls due"
  const short = years.filter((one) => one.due > 0 && one.short >= 0.5)
  const lowest = `Lowest cover ${coverText(coverOf(tight), region)} in ${tight.year}`
  const isUnder = wanted !== null && coverOf(tight) < wanted
  const under = isUnder ? `, under the ${numberText(wanted, undefined, region.decimal)} wanted` : ""
  if (short.length === 0) return `${lowest}${under}; as planned every year pays`
  if (short.length === 1) return `${lowest}, ${money(tight.short)} short; as planned every other year pays`
  return `${lowest}, ${money(tight.short)} short; as planned short in ${yearsWords(short.map(({year}) => year))}`
}

/** Which years the picture of cash and debt leaves out; "" for none, or where it has none to draw. */
export function leftOutWords(years: readonly CashYear[]): string {
  const out = years.filter(({due}) => due <= 0).map(({year}) => year)
  if (out.length === 0 || out.length === years.length) return ""
  return `Nothing is due in ${yearsWords(out)}: not drawn.`
}

/** The picture of cash and debt in words, year by year. */
export function cashSentence(years: readonly CashYear[], region: Region = PLAIN_REGION): string {
  const currency = shownIn("money", region).unit
  const told = years.map((one) => {
    const {year, capacity, due, cover, short, stressed} = one
    if (due <= 0) return `${year}: nothing due.`
    const stress = stressed === null ? "" : `, under the stress ${coverText(stressed, region)}`
    const typed = typedOverWords(one, region)
    const covered =
      cover === null ? "no cover known" : `cover ${coverText(coverOf(one), region)}${typed && `, ${typed}`}`
    const lacks = short >= 0.5 ? `, short by ${money(short)}` : ""
    return `${year}: ${money(capacity)} ${currency} for ${money(due)} due, ${covered}${lacks}${stress}.`
  })
  return told.join(" ")
}

/** "Long Acre: projection for age 9 is 3 777, 30 % under the three-year record of 5 360." */
export function yieldSentence(
  {planting, age, projection, mean, gap, record}: YieldEvidence,
  region: Region = PLAIN_REGION,
): string {
  if (!projection || age === null) return `${planting}: no crop is projected this season.`
  const projected = `${planting}: projection for age ${age} is ${quantityText(projection, 0, "kg/ha", region)}`
  if (mean === null || gap === null)
    return `${projected}; ${record.length === 0 ? "no year" : record.length === 1 ? "1 year" : `${record.length} years`} on record.`
  return `${projected}, ${percentText(Math.abs(gap))} ${gap < 0 ? "under" : "above"} the three-year record of ${shownIn("kg/ha", region).text(mean, 0)}.`
}

/**
 * What the yields found: of the plantings above their record the one furthest, with its reason, since a lender asks for it;
 * where none is, of all that have a record.
 */
export function yieldFinding(yields: readonly YieldEvidence[], region: Region = PLAIN_REGION): string {
  const above = yields.filter(({gap}) => gap !== null && gap > 0)
  if (above.length === 0) return `${yieldTitle(yields)}.`
  const most = above.reduce((one, other) => (other.gap! > one.gap! ? other : one))
  const why = /^(no reason given)?$/.test(most.reason)
    ? "No reason is given"
    : `Reason given: ${most.reason.replace(/\.$/, "")}`
  const others = above.length > 1 ? ` ${above.length} plantings stand above their own record.` : ""
  return `${yieldSentence(most, region)} ${why}.${others}`
}

/** The title of the picture of yields. */
export function yieldTitle(yields: readonly YieldEvidence[]): string {
  const known = yields.filter(({gap}) => gap !== null)
  if (known.length === 0) return "No planting has three years on record"
  const above = known.filter(({gap}) => gap! > 0).map(({planting}) => planting)
  if (above.length === 0) return "No projection stands above its own record"
  return `${firstInARow(above)} ${above.length === 1 ? "stands above its" : "stand above their"} own record`
}
