import {logEffect, type YearsByChance} from "./sharedYears"
import {keyOf, normalOf} from "./streams"

/** What the chances of one field are drawn from. */
interface FieldChances extends Pick<YearsByChance, "seed" | "firstYear"> {
  /** Of each field's yields by itself, a deviation of logarithms. */
  readonly fieldSpread: number
}

/**
 * What the yields of a field are multiplied by in the years of a draw: exp of the effects of the year on all fields, of the
 * field in it, and of the doubt about the field in all years alike. The draws belong to the name of the field: they are the same
 * in every plan and study of one seed.
 */
export function yieldFactors(
  {seed, firstYear, fieldSpread}: FieldChances,
  name: string,
  doubt: number,
  years: number,
): (draw: number, yields: readonly number[]) => readonly number[] {
  const always = keyOf("field", name)
  const yearly = Array.from({length: years}, (_, year) => keyOf("field", name, firstYear + year))
  return (draw, yields) => {
    const off = logEffect(doubt, normalOf(seed, draw, always))
    return yearly.map((key, year) =>
      Math.exp(yields[year]! + logEffect(fieldSpread, normalOf(seed, draw, key)) + off),
    )
  }
}
