import {defineFunction, outcomeOf, type Outcomes, type Refusal} from "../define"
import {measured} from "../parameters"
import {isRefusal, notYet, wrongKind} from "../refusal"
import {trend as straightLine} from "../spear/trend"

const outcomes = {
  slope: {label: "Slope of the line of least squares", unit: "kg/ha/year"},
  "middle slope": {label: "Middle of the slopes between any two years", unit: "kg/ha/year"},
  "next year": {label: "The line of least squares in the year after the last", unit: "kg/ha"},
  spread: {label: "Deviation of the yields about their mean, over it", unit: "share"},
} as const satisfies Outcomes

/**
 * The trend of yields over years by two methods: the straight line of least squares, and the middle of all slopes between
 * two years (Theil 1950, Sen 1968), which one bad year moves little. Spread is the deviation with n - 1 over the mean.
 * Needs two different years (#N/A); a year given twice is refused.
 */
export function cropTrend(
  what: keyof typeof outcomes,
  years: readonly number[],
  yields: readonly number[],
): number | Refusal {
  const twice = years.find((year, row) => years.indexOf(year) !== row)
  if (twice !== undefined) return wrongKind(`Year ${twice} is given twice`)
  const slope = straightLine(years, yields)
  if (isRefusal(slope)) return notYet("Yields of one year only: a trend needs two different years")
  const mean = average(yields)
  switch (what) {
    case "slope":
      return slope
    case "next year":
      return mean + slope * (Math.max(...years) + 1 - average(years))
    case "middle slope":
      return middle(slopes(years, yields))
    case "spread":
      return mean === 0
        ? notYet("All yields are 0: there is no spread about them")
        : Math.sqrt(yields.reduce((sum, kg) => sum + (kg - mean) ** 2, 0) / (yields.length - 1)) / mean
  }
}

const average = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length

const slopes = (years: readonly number[], yields: readonly number[]) =>
  years.flatMap((year, row) =>
    years.slice(0, row).map((before, other) => (yields[row]! - yields[other]!) / (year - before)),
  )

function middle(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b)
  const half = sorted.length / 2
  return (sorted[Math.ceil(half) - 1]! + sorted[Math.floor(half)]!) / 2
}

export const CROP_TREND = defineFunction({
  name: "CROP.TREND",
  summary: "Trend of the yields on record, by two methods, and their spread",
  about:
    "Show both slopes: where they differ, one or two years make the trend. For a stand that ages, put the years to one age first " +
    "(CROP.AS_IF_AGE), or the age curve is taken for a trend. A projection above your own mean of five years needs a reason.",
  parameters: {
    what: outcomeOf(outcomes),
    years: measured("Years on record", "year", {min: 1900, max: 2200, whole: true}),
    yields: measured("Yields of those years", "kg/ha", {min: 0}),
  },
  together: ["years", "yields"],
  returns: {label: "The number named", unit: "as named", named: outcomes},
  refuses: ["fewer than two years", "a year given twice"],
  sources: ["identity", "theilSen"],
  example: {
    formula:
      '=CROP.TREND("middle slope",{2018,2019,2020,2021,2022,2023,2024,2025},{3600,4100,2500,4400,3900,4200,4300,4600})',
    gives: 131.43,
  },
  calculate: ({what, years, yields}) => cropTrend(what, years, yields),
})
