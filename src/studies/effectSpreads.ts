/** How far yearly and field effects move the yields of a farm, as deviations in the unit of the table. */
export interface EffectSpreads {
  /** Of years, shared by all fields. */
  readonly year: number
  /** Of fields, the same in all years. */
  readonly field: number
  /** Of what is left: one field in one year. */
  readonly rest: number
}

/**
 * Splits a table of deviations, one row a field and one column a year, into what years, fields and the rest bring: two-way
 * analysis of variance without repeats, variance of years = (MS year - MS rest)/fields and of fields alike; what comes out
 * below 0 counts as 0. Give logarithms of recorded over expected yield. Null with fewer than two fields or two years.
 */
export function effectSpreads(table: readonly (readonly number[])[]): EffectSpreads | null {
  const [fields, years] = [table.length, table[0]?.length ?? 0]
  if (table.some((row) => row.length !== years))
    throw new RangeError("The rows of the table differ in length")
  if (fields < 2 || years < 2) return null
  const ofFields = table.map(mean)
  const ofYears = table[0]!.map((_, year) => mean(table.map((row) => row[year]!)))
  const all = mean(ofFields)
  const rest = table.flatMap((row, field) =>
    row.map((value, year) => value - ofFields[field]! - ofYears[year]! + all),
  )
  const restSquare = squares(rest, 0) / ((fields - 1) * (years - 1))
  const fieldSquare = (years * squares(ofFields, all)) / (fields - 1)
  const yearSquare = (fields * squares(ofYears, all)) / (years - 1)
  return {
    year: Math.sqrt(Math.max(0, yearSquare - restSquare) / fields),
    field: Math.sqrt(Math.max(0, fieldSquare - restSquare) / years),
    rest: Math.sqrt(restSquare),
  }
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length

const squares = (values: readonly number[], middle: number) =>
  values.reduce((sum, value) => sum + (value - middle) ** 2, 0)
