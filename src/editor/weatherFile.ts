import Papa from "papaparse"
import {dayOf, isoOf} from "../../functions/calendar"
import {columnWith, sheetWith, type Content, type Document, type Part} from "../workbook/document"
import type {Edit, Entry} from "../workbook/edit"
import {PLAIN_REGION} from "../workbook/region"
import {dateText, dayText, numberText} from "./display"
import {readEntry} from "./entry"

/** What a file of weather brings: the edit that puts it in, and the question that tells of it first. */
export type Weather = {readonly edit: Edit; readonly asks: string} | {readonly refused: string}

/** Soil and sun come first: "soil max" is no high of the air. */
const PARTS = [
  ["record soil", /soil|ground temp/i],
  ["record sun", /sun|solar|radiation|\brad\b|srad|global/i],
  ["record high", /max|high/i],
  ["record low", /min|low/i],
  ["record day", /date|day/i],
] as const satisfies readonly (readonly [Part, RegExp])[]

/** In the order of the columns where a file has no headings. */
const ORDER = ["record day", "record high", "record low", "record sun", "record soil"] as const

interface Unit {
  readonly name: string
  readonly parts: readonly Part[]
  readonly heading: RegExp
  turn(value: number): number
}
const AIR: readonly Part[] = ["record high", "record low", "record soil"]

/** Units other than those of the sheet, known by the words of a heading. */
const UNITS: readonly Unit[] = [
  {name: "°F", parts: AIR, heading: /°\s?F|\(F\)|fahrenheit|_f$/i, turn: (f) => ((f - 32) * 5) / 9},
  {name: "W/m²", parts: ["record sun"], heading: /W\s?\/?\s?m/i, turn: (watt) => watt * 0.0864},
  {name: "kWh/m²", parts: ["record sun"], heading: /kWh/i, turn: (kwh) => kwh * 3.6},
  {name: "J/cm²", parts: ["record sun"], heading: /J\s?\/\s?cm/i, turn: (joule) => joule / 100},
]

interface Day {
  readonly day: number
  readonly contents: ReadonlyMap<Part, Content>
}

/**
 * Reads a table in text (RFC 4180, or parted by ";" or tabs): a line for each day, with headings or in the order day,
 * high, low, sun, soil. Nothing is guessed: a line that cannot be read is left out and told of. A decimal comma is taken
 * where commas do not part the cells.
 */
export function readWeather(text: string, document: Document, season: number): Weather {
  const {data, meta} = Papa.parse<string[]>(text.replace(/^\ufeff/, "").trim(), {skipEmptyLines: "greedy"})
  if (!data.length || text.trim() === "") return {refused: "It is empty"}
  const sheet = sheetWith(document, "record day")
  const dates = document.region?.dates
  const columns = new Map(
    document.sheets[sheet]!.columns.flatMap((one) => (one.part ? [[one.part, one] as const] : [])),
  )
  const named = headingsOf(data[0]!)
  const places = named ?? new Map(ORDER.map((part, i) => [part as Part, i] as const))
  for (const [part, words] of [
    ["record day", "the day"],
    ["record high", "the highest temperature"],
    ["record low", "the lowest temperature"],
  ] as const)
    if (!places.has(part))
      return {refused: `It has no column for ${words}; its headings are ${data[0]!.join(", ")}`}

  const units = named ? unitsOf(data[0]!, places) : new Map<Part, Unit>()
  const lines = data.slice(named ? 1 : 0)
  const order = dayOrder(lines.map((line) => line[places.get("record day")!] ?? ""))
  const days = new Map<number, Day>()
  const left: string[] = []
  for (const [i, line] of lines.entries()) {
    const read = readLine(line)
    const number = i + (named ? 2 : 1)
    if (typeof read === "string") left.push(`line ${number}: ${read}`)
    else if (days.has(read.day)) left.push(`line ${number}: ${dateText(read.day)} is there twice`)
    else days.set(read.day, read)
  }
  if (!days.size) return {refused: `No line of it could be read. ${left[0]!.replace(/^l/, "L")}`}
  return bringing(
    document,
    sheet,
    [...days.values()].sort((a, b) => a.day - b.day),
    left,
    units,
  )

  function readLine(line: readonly string[]): Day | string {
    const contents = new Map<Part, Content>()
    for (const part of ORDER) {
      const written = (line[places.get(part) ?? -1] ?? "").trim()
      const column = columns.get(part)
      if (!column) continue
      if (part === "record day" && written === "") return "it has no day"
      const unit = units.get(part)
      const entry = isMissing(written)
        ? {content: null}
        : readEntry(
            part === "record day" ? inOrder(written, order) : plainNumber(written, meta.delimiter, unit),
            column,
            season,
            () => null,
            {region: dates ? {dates} : PLAIN_REGION}, // numbers of a file do not follow the workbook
          )
      if ("refused" in entry) return entry.refused
      contents.set(part, entry.content)
    }
    const [high, low] = [contents.get("record high"), contents.get("record low")]
    if (typeof high === "number" && typeof low === "number" && high < low)
      return `the high ${numberText(high)} is below the low ${numberText(low)}`
    return {day: dayOf(String(contents.get("record day")))!, contents}
  }
}

function headingsOf(first: readonly string[]): Map<Part, number> | null {
  const isHeading = first.every((cell) => !/^[-+]?\d/.test(cell.trim()))
  if (!isHeading) return null
  const places = new Map<Part, number>()
  for (const [i, heading] of first.entries()) {
    const part = PARTS.find(([, words]) => words.test(heading))?.[0]
    if (part && !places.has(part)) places.set(part, i)
  }
  return places
}

function unitsOf(headings: readonly string[], places: ReadonlyMap<Part, number>): Map<Part, Unit> {
  const units = new Map<Part, Unit>()
  for (const [part, place] of places) {
    const unit = UNITS.find(({parts, heading}) => parts.includes(part) && heading.test(headings[place]!))
    if (unit) units.set(part, unit)
  }
  return units
}

/** Blank, or one of the codes that stations write for a value that is not there. */
const isMissing = (written: string) => /^(|-|na|n\/a|nan|null|none|-999+(\.0+)?|-99\.9)$/i.test(written)

/** A number as it is typed here: with a point, in the unit of the sheet. */
function plainNumber(written: string, delimiter: string, unit: Unit | undefined): string {
  const point = delimiter !== "," && /^[-+]?\d+,\d+$/.test(written) ? written.replace(",", ".") : written
  if (!unit || !/^[-+]?[\d.]+$/.test(point)) return point
  return String(Number(unit.turn(Number(point)).toFixed(2)))
}

const SLASHED = /^(\d{1,2})([/-])(\d{1,2})\2(\d{4})/

/** Whether day or month comes first in dates such as 3/4/2026, by those that can be read one way alone. */
export function dayOrder(written: readonly string[]): "day" | "month" | null {
  const parts = written.flatMap((one) => {
    const found = SLASHED.exec(one.trim())
    return found ? [[Number(found[1]), Number(found[3])] as const] : []
  })
  const [dayFirst, monthFirst] = [parts.some(([a]) => a > 12), parts.some(([, b]) => b > 12)]
  return dayFirst === monthFirst ? null : dayFirst ? "day" : "month"
}

/** A date as it can be typed: without the time of day, and in ISO form where the file shows what its numbers mean. */
export function inOrder(written: string, order: "day" | "month" | null): string {
  const day = written.replace(/[T ]\d{1,2}:\d{2}.*$/, "").replace(/^(\d{4})(\d{2})(\d{2})$/, "$1-$2-$3")
  const found = SLASHED.exec(day)
  if (!found || !order) return day
  const [a, b] = [found[1]!.padStart(2, "0"), found[3]!.padStart(2, "0")]
  return `${found[4]}-${order === "day" ? `${b}-${a}` : `${a}-${b}`}`
}

function bringing(
  document: Document,
  sheet: number,
  days: readonly Day[],
  left: readonly string[],
  units: ReadonlyMap<Part, Unit>,
): Weather {
  const {columns, rows} = document.sheets[sheet]!
  const dayAt = columnWith(document, sheet, "record day")
  const rowOf = new Map(rows.map((row, i) => [row[dayAt], i]))
  let next = rows.length
  let replaced = 0
  const cells = days.flatMap(({day, contents}): Entry[] => {
    const found = rowOf.get(isoOf(day))
    const row = found ?? next++
    const changed = columns.flatMap(({part}, col): Entry[] => {
      const content = part && contents.get(part)
      return content === undefined || content === (rows[row]?.[col] ?? null)
        ? []
        : [{at: {sheet, row, col}, content}]
    })
    if (found !== undefined && changed.length) replaced++
    return changed
  })
  if (!cells.length) return {refused: `All ${days.length} days of it are on the sheet already`}
  const [first, last] = [days[0]!.day, days.at(-1)!.day]
  const sentences = [
    `${days.length} ${days.length === 1 ? "day" : "days"} of weather, ${dateText(first)} to ${dateText(last)}.`,
    replaced ? `${replaced} of them change a day that is on the sheet.` : "",
    gapWords(days),
    ...[...new Set(units.values())].map(
      ({name}) => `What stands in ${name} is turned into the sheet's unit.`,
    ),
    document.region?.measures === "US" && !units.has("record high")
      ? "Its temperatures are taken as °C, since no heading says °F."
      : "",
    left.length
      ? `${left.length} ${left.length === 1 ? "line is" : "lines are"} left out: ${left.slice(0, MOST_TOLD).join("; ")}${left.length > MOST_TOLD ? "; …" : "."}`
      : "",
  ]
  const name = `${days.length} ${days.length === 1 ? "day" : "days"} of weather brought in`
  return {edit: {type: "enter", cells, name}, asks: sentences.filter(Boolean).join(" ")}
}

const MOST_TOLD = 4

/** "Days missing between: 12 Mar, 4 Apr to 6 Apr." */
function gapWords(days: readonly Day[]): string {
  const gaps = days.slice(1).flatMap(({day}, i) => {
    const before = days[i]!.day
    return day === before + 1 ? [] : [[before + 1, day - 1] as const]
  })
  if (!gaps.length) return "No day between is missing."
  const missing = gaps.reduce((sum, [from, to]) => sum + to - from + 1, 0)
  const told = gaps
    .slice(0, MOST_TOLD)
    .map(([from, to]) => (from === to ? dayText(from) : `${dayText(from)} to ${dayText(to)}`))
  return `${missing} ${missing === 1 ? "day" : "days"} between ${missing === 1 ? "is" : "are"} missing: ${told.join(", ")}${gaps.length > MOST_TOLD ? ", …" : "."}`
}
