import {defineFunction} from "../define"
import {isRange, optional, quantity, type Parameter} from "../parameters"
import {isRefusal, notYet, wrongKind} from "../refusal"
import {MONTH_DAYS, monthlyToDays} from "./monthlyToDays"

/**
 * Mean soil temperature of a month (1 to 12) at crown depth, °C, from the twelve monthly means of the air. The monthly
 * means become days; the soil of a day is the yearly mean and `swing` of what the air was above it `lag` days before,
 * round the year. `lag` is in whole days.
 */
export function soil(month: number, air: ArrayLike<number>, swing: number, lag: number): number {
  const days = monthlyToDays(air)
  const mean = days.reduce((sum, day) => sum + day, 0) / days.length
  const first = MONTH_DAYS.slice(0, month - 1).reduce((sum, length) => sum + length, 0)
  const length = MONTH_DAYS[month - 1]!
  let sum = 0
  for (let day = first; day < first + length; day++) sum += days.at((day - lag) % days.length)! - mean
  return mean + (swing * sum) / length
}

/** How far the soil follows the air, in all functions that take it from there. */
export const soilSwing = optional(
  quantity("Swing of the soil over the swing of the air", "share", {min: 0, max: 1}),
  0.75,
)

const oneMonth = quantity("Mean air temperature", "°C", {min: -60, max: 60})

/** Twelve numbers, January to December, in a row or a column; each one is needed. */
const monthlyAir: Parameter<readonly number[]> = {
  label: "Mean air temperatures, January to December",
  unit: "°C",
  takes: `12 numbers ${oneMonth.takes}`,
  isRange: true,
  read: (given) => {
    const cells = isRange(given) ? given.flat() : [given]
    if (cells.length !== 12)
      return wrongKind(`Mean air temperatures must be 12, January to December, not ${cells.length}`)
    const months: number[] = []
    for (const held of cells) {
      if (held === null) return notYet(`Mean air temperature of month ${months.length + 1}: not measured yet`)
      const number = oneMonth.read(held)
      if (isRefusal(number)) return number
      months.push(number)
    }
    return months
  },
}

export const CLIMATE_SOIL = defineFunction({
  name: "CLIMATE.SOIL",
  summary: "Mean soil temperature of a month at crown depth, from the air's monthly means",
  about:
    "A stand-in where the soil is not measured: it follows the air with less swing about the yearly mean, and later. The " +
    "monthly means become days, each month's mean kept; the soil of a day takes the air of so many days before, round " +
    "the year. Whole days only. 0.75 and 20 days are assumptions: a black film, a ridge or irrigation change them.",
  parameters: {
    month: quantity("Month", "month", {min: 1, max: 12, whole: true}),
    air: monthlyAir,
    swing: soilSwing,
    lag: optional(quantity("Days the soil comes later", "days", {min: 0, max: 182, whole: true}), 20),
  },
  returns: {label: "Mean soil temperature of the month", unit: "°C"},
  refuses: ["other than 12 air temperatures", "a month that is blank"],
  sources: ["soilFromAir"],
  example: {
    formula: "=CLIMATE.SOIL(7,{0.6,1.5,4.5,9.1,13.9,17.6,19.3,18.5,15.4,10.8,6,2.3})",
    gives: 16.3,
  },
  calculate: ({month, air, swing, lag}) => soil(month, air, swing, lag),
})
