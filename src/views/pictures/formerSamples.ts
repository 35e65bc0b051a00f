import {monthsLater, yearOf, type ModelYear} from "../../../functions/calendar"
import {dateText, numberText} from "../../editor/display"
import type {MeasuredSugar} from "../../workbook/crowns"
import {isSameName} from "../../workbook/plantingName"
import type {Sampling} from "../../workbook/sampleSpread"

/** A sampling of a season that is over, on the same date of the model year that is shown. */
export interface FormerSample {
  /** The day on which it was dug. */
  readonly dug: number
  /** The same date of the year shown, counted from its start. */
  readonly day: number
  /** mg/g */
  readonly sugar: number
}

/** Chosen: samplings that lie no further apart than this in the year are set beside each other, days. */
const SAME_TIME = 30

/** The samplings of a planting from before a model year, the earliest first. */
export function formerSamples(
  samplings: readonly Sampling[],
  planting: string,
  {first, days}: ModelYear,
): FormerSample[] {
  return samplings
    .flatMap(({planting: name, day: dug, isFormer, mean: sugar}) => {
      if (!isSameName(name, planting) || dug === null || !isFormer || dug >= first) return []
      const years = yearOf(first) - yearOf(dug)
      const [same, next] = [years, years + 1].map((later) => monthsLater(dug, 12 * later) - first)
      return [{dug, day: Math.min(same! >= 0 ? same! : next!, days - 1), sugar}]
    })
    .toSorted((a, b) => a.dug - b.dug)
}

/**
 * "Measured 409 mg/g on 5 Mar 2026; at that time of former years: 455 on 2 Mar 2025, 470 on 9 Mar 2024.", of each year the
 * sampling nearest to it; "" where there is none.
 */
export function formerSentence(measured: readonly MeasuredSugar[], former: readonly FormerSample[]): string {
  const latest = measured.toSorted((a, b) => a.day - b.day).at(-1)
  if (!latest) return ""
  const off = ({dug}: FormerSample) =>
    Math.abs(monthsLater(dug, 12 * Math.round((latest.day - dug) / 365.25)) - latest.day)
  const nearest = new Map<number, FormerSample>()
  for (const one of former.filter((one) => off(one) <= SAME_TIME)) {
    const there = nearest.get(yearOf(one.dug))
    if (!there || off(one) < off(there)) nearest.set(yearOf(one.dug), one)
  }
  const told = [...nearest.values()]
    .toReversed()
    .map(({dug, sugar}) => `${numberText(sugar, 0)} on ${dateText(dug)}`)
  return told.length === 0
    ? ""
    : `Measured ${numberText(latest.sugar, 0)} mg/g on ${dateText(latest.day)}; at that time of former years: ${told.join(", ")}.`
}

/** "409 mg/g on 14 Oct 2025" */
export const formerWords = ({dug, sugar}: FormerSample) => `${numberText(sugar, 0)} mg/g on ${dateText(dug)}`
