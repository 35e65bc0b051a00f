import {decimalOf, regionOf, type Decimal} from "../workbook/region"
import {isFault} from "../workbook/value"
import {chosenBlock, chosenCells, isOneCell} from "./block"
import {cellColumn} from "./cellColumn"
import {dateText, numberText, percentText} from "./display"
import {measureOf, shownNumber} from "./measures"
import type {Store} from "./store"

/** What the chosen cells hold together: "5 of 6 filled; 5 numbers: sum 20 150 kg/ha, mean 4 030 kg/ha". Nothing for one cell. */
export function summaryOf({getState, workbook, valueAt}: Store): string {
  const state = getState()
  const block = chosenBlock(state)
  if (isOneCell(block)) return ""
  const {rows} = state.document.sheets[block.sheet]!
  const region = regionOf(state.document)
  const chosen = [...chosenCells(state)]
  const numbers: number[] = []
  const days: number[] = []
  const units = new Set<string>()
  const decimals = new Set<unknown>()
  let filled = 0
  for (const at of chosen) {
    if (at.row >= rows.length) continue
    const value = valueAt(at)
    const {format, unit} = cellColumn(state.document, at)!
    const measure = measureOf(unit, region)
    if (value !== null && value !== "") filled++
    if (typeof value !== "number" || isFault(value) || format === "text") continue
    if (format === "date" || format === "day" || workbook.isDateAt(at)) days.push(value)
    else {
      numbers.push(shownNumber(value, measure)) // a sum of °F is none of °C
      units.add(format === "share" ? "share" : measure.unit)
      decimals.add(typeof format === "number" ? format + measure.moreDecimals : format)
    }
  }
  const parts = [`${filled} of ${chosen.length} filled`]
  if (numbers.length && units.size > 1) parts.push(`${numbers.length} numbers in different units`)
  else if (numbers.length)
    parts.push(numbersInWords(numbers, [...units][0]!, decimals, decimalOf(state.document)))
  if (days.length)
    parts.push(
      `${days.length} ${days.length === 1 ? "date" : "dates"}: ${dateText(least(days))} to ${dateText(most(days))}`,
    )
  return parts.join("; ")
}

function numbersInWords(
  numbers: readonly number[],
  unit: string,
  decimals: ReadonlySet<unknown>,
  decimal: Decimal,
): string {
  const [only] = decimals
  const digits = decimals.size === 1 && typeof only === "number" ? only : undefined
  const shown = (value: number, more = 0) =>
    unit === "share"
      ? percentText(value, 1, decimal)
      : `${numberText(Number(value.toPrecision(12)), digits === undefined ? undefined : digits + more, decimal)}${unit ? `\u00a0${unit}` : ""}`
  const sum = numbers.reduce((total, number) => total + number, 0)
  const mean = sum / numbers.length
  const count = `${numbers.length} ${numbers.length === 1 ? "number" : "numbers"}`
  return `${count}: sum ${shown(sum)}, mean ${shown(mean, 1)}, ${shown(least(numbers))} to ${shown(most(numbers))}`
}

const least = (numbers: readonly number[]) => numbers.reduce((a, b) => Math.min(a, b))
const most = (numbers: readonly number[]) => numbers.reduce((a, b) => Math.max(a, b))
