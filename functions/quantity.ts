/** Unit symbols in use, written as printed beside a number. Areas are per hectare; a share runs from 0 to 1. */
export type Unit =
  | "°Brix"
  | "mg/g per °Brix"
  | "mg/g"
  | "share"
  | "share/day"
  | "share/year"
  | "g"
  | "g/plant"
  | "kg"
  | "kg/kg"
  | "kg/ha"
  | "kg/ha/day"
  | "kg/ha/year"
  | "kg/h"
  | "ha"
  | "ha/day"
  | "per ha"
  | "ha/kg"
  | "mm"
  | "mm/day"
  | "cm"
  | "m"
  | "litre"
  | "°C"
  | "°C·day"
  | "per day"
  | "per week"
  | "money/ha/week"
  | "per day and °C"
  | "g/MJ"
  | "MJ/m²/day"
  | "°C, °C, MJ/m²/day"
  | "°"
  | "per √°C"
  | "day of the year"
  | "date"
  | "days"
  | "weeks"
  | "month"
  | "year"
  | "years"
  | "h"
  | "min"
  | "kJ/kg·K"
  | "kWh"
  | "kW"
  | "W"
  | "count"
  | "plants"
  | "people"
  | "money"
  | "money/h"
  | "money/kg"
  | "money/ha"
  | "money/ha/day"
  | "money/ha/year"
  | "money/unit"
  | "units"
  | "text"
  | "names and numbers"
  | "as given"
  | "as named"
  | "number"

/** The numbers a quantity may take. `min` and `max` are allowed themselves, `above` and `below` are not. */
export interface Limits {
  readonly min?: number
  readonly max?: number
  readonly above?: number
  readonly below?: number
  readonly whole?: boolean
}

/** What a reader needs to know of one number: what it is, what it is counted in, what it may be. */
export interface Quantity {
  readonly label: string
  readonly unit: Unit
  readonly limits: Limits
}

export const isWithin = (value: number, {min, max, above, below, whole}: Limits) =>
  !(
    (min !== undefined && value < min) ||
    (max !== undefined && value > max) ||
    (above !== undefined && value <= above) ||
    (below !== undefined && value >= below) ||
    (whole && !Number.isInteger(value))
  )

/** The limits in words with their unit: "from 0 to 50 °Brix", "above 0 and up to 60 mm", "0 kg/ha or more". */
export function limitsInWords({
  unit,
  limits: {min, max, above, below, whole},
}: Omit<Quantity, "label">): string {
  const kind = whole ? "a whole number " : ""
  const upper = max !== undefined ? `up to ${max}` : below !== undefined ? `below ${below}` : ""
  const counted = unitInWords(unit)
  if (min !== undefined && max !== undefined) return `${kind}from ${min} to ${max}${counted}`
  if (min !== undefined)
    return kind + (upper ? `${min} or more and ${upper}${counted}` : `${min}${counted} or more`)
  const bounds = [above !== undefined ? `above ${above}` : "", upper].filter(Boolean).join(" and ")
  return `${bounds ? kind + bounds : kind || "any number"}${counted}`.trim()
}

/** A number with its unit, as printed in a sentence: "80 °C", "0.4". Shares, texts and dates carry no symbol. */
export const withUnit = (value: number, unit: Unit) => `${value}${unitInWords(unit)}`

const unitInWords = (unit: Unit) =>
  ["share", "number", "as given", "as named", "count", "text", "year", "month"].includes(unit)
    ? ""
    : ` ${unit}`
