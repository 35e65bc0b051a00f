import {climateRange, type Climate} from "../../functions/climate/climate"
import type {HealthStep} from "../../functions/fern/healthy"
import {isRefusal, notYet, type Refusal} from "../../functions/refusal"
import {balanceValues, type BalanceValues} from "../../functions/root/balanceValues"
import type {Held} from "../../functions/parameters"
import {columnWith, sheetWith, type CellAddress, type Document, type Part} from "./document"
import {isFault, type Value} from "./value"
import {namesIn, numberNamed} from "./names"
import {sampleSpreadOf, type Sampling} from "./sampleSpread"
import {type Workbook} from "./workbook"

/** Sugar measured in roots on a day: the mean, mg/g, and the interval that goes with it where there is one. */
export interface MeasuredSugar {
  readonly day: number
  readonly sugar: number
  readonly lower: number | null
  readonly upper: number | null
  /** Plants that the mean rests on; null where that is not known. */
  readonly plants: number | null
}

/** One planting as the daily balance is run for it, read from the sheets. Mass in kg/ha. */
export interface PlantingCrowns {
  readonly planting: string
  readonly structure: number
  readonly reserve: number
  readonly open: number
  /** The last day of cutting; the day before the opening when it is not cut. */
  readonly close: number
  readonly floor: number | null
  readonly healthy: readonly HealthStep[]
  /** The planting's own factor and its ageing together: what the modelled crop is multiplied by. */
  readonly factor: number
  /** Years of its own record that the factor rests on. */
  readonly recordYears: number
  readonly measured: readonly MeasuredSugar[]
  /** Plants in the dormant sample. */
  readonly samplesUsed: number
}

/** What the daily balance of this workbook runs on. */
export interface CrownYears {
  readonly plantings: readonly PlantingCrowns[]
  readonly climate: Climate
  readonly values: BalanceValues
  /** The ranges that values are likely to lie in, of those that have one. */
  readonly likely: Readonly<Record<string, readonly [number, number]>>
  /** The planting that the sheets of the crown's year show, and the cell that names it. */
  readonly shown: {readonly planting: string; readonly at: CellAddress} | null
  readonly asOf: number | null
}

/** Reads the crowns of a workbook: null when it has no sheet of them, a refusal when the climate or the crop values are not whole. */
export function crownsOf(workbook: Workbook): CrownYears | Refusal | null {
  const {document} = workbook
  const sheet = sheetWith(document, "store at start")
  if (sheet < 0) return null
  const climate = rangeOf(workbook, ["air", "soil", "sun"])
  const values = rangeOf(workbook, ["value name", "value"])
  if (!climate || !values) return notYet("The workbook has no sheet of weather or of crop values")
  const read = climateRange.read(climate)
  if (isRefusal(read)) return read.code === "#N/A" ? notYet(noWholeYear(document)) : read
  const constants = balanceValues.read(values)
  if (isRefusal(constants)) return constants
  const closes = closesIn(workbook)
  const lookedUp = lookup(workbook)
  let spread: readonly Sampling[] | undefined
  const samplings = () => (spread ??= sampleSpreadOf(workbook)?.samplings ?? [])
  const shownAt = namesIn(document).find(({name}) => name.toLowerCase() === "shown_planting")?.at
  return {
    plantings: document.sheets[sheet]!.rows.flatMap(
      (_, row) => plantingIn(workbook, sheet, row, {closes, samplings, lookedUp}) ?? [],
    ),
    climate: read,
    values: constants,
    likely: likelyRanges(workbook),
    shown: shownAt ? {planting: String(workbook.valueAt(shownAt) ?? ""), at: shownAt} : null,
    asOf: numberNamed(workbook, "As_of"),
  }
}

const noWholeYear = (document: Document) =>
  `${document.sheets[sheetWith(document, "air")]!.name} does not know its whole year yet: Where from of one of its days leads to what is missing`

/** The last day of cutting of each planting, by the plan. */
function closesIn(workbook: Workbook): ReadonlyMap<string, number | null> {
  const sheet = sheetWith(workbook.document, "close")
  const rows = sheet < 0 ? [] : workbook.document.sheets[sheet]!.rows
  return new Map(
    rows.map((_, row) => {
      const [planting, close] = (["planting", "close"] as const).map((part) =>
        valueIn(workbook, sheet, row, part),
      )
      return [String(planting ?? ""), numberOf(close ?? null)]
    }),
  )
}

function plantingIn(
  workbook: Workbook,
  sheet: number,
  row: number,
  {
    closes,
    samplings,
    lookedUp,
  }: {
    readonly closes: ReadonlyMap<string, number | null>
    readonly samplings: () => readonly Sampling[]
    readonly lookedUp: ReturnType<typeof lookup>
  },
): PlantingCrowns | null {
  const value = (part: Part) => valueIn(workbook, sheet, row, part)
  const number = (part: Part) => numberOf(value(part))
  const planting = String(value("planting") ?? "")
  const [structure, reserve, open] = [number("structure at start"), number("store at start"), number("opens")]
  if (structure === null || structure <= 0 || reserve === null || open === null) return null
  const [lossFrom, left] = [number("fern loss from"), number("fern left")]
  const factor = lookedUp("factor", planting) ?? 1
  const ageing = lookedUp("ageing", planting) ?? 1
  const measured: MeasuredSugar[] = []
  const [on, sugar] = [number("sampled on"), number("sampled sugar")]
  if (on !== null && sugar !== null)
    measured.push({
      day: on,
      sugar,
      lower: number("sampled lower"),
      upper: number("sampled upper"),
      plants: number("samples used"),
    })
  const plantsOf = (day: number) =>
    samplings().find((one) => one.planting === planting && one.day === day)?.plants.length ?? null
  const [later, laterSugar, error] = [number("later sample"), number("later sugar"), number("later error")]
  if (later !== null && laterSugar !== null) {
    const half = error === null ? null : NORMAL_80 * error
    measured.push({
      day: later,
      sugar: laterSugar,
      lower: half === null ? null : laterSugar - half,
      upper: half === null ? null : laterSugar + half,
      plants: plantsOf(later),
    })
  }
  return {
    planting,
    structure,
    reserve,
    open,
    close: closes.get(planting) ?? open - 1,
    floor: number("floor"),
    healthy: lossFrom !== null && left !== null ? [{from: lossFrom, share: left}] : [],
    factor: factor * ageing,
    recordYears: lookedUp("record years", planting) ?? 0,
    measured,
    samplesUsed: number("samples used") ?? 0,
  }
}

/** Standard errors on either side of a mean that hold 80 % of a normal distribution. */
const NORMAL_80 = 1.2816

function valueIn(workbook: Workbook, sheet: number, row: number, part: Part): Value {
  const col = columnWith(workbook.document, sheet, part)
  return col < 0 ? null : workbook.valueAt({sheet, row, col})
}

/** Finds the number of a part in the row that another sheet has for a planting. */
function lookup(workbook: Workbook): (part: Part, planting: string) => number | null {
  const rows = new Map<number, ReadonlyMap<Value, number>>()
  const rowsOf = (sheet: number) => {
    const known = rows.get(sheet)
    if (known) return known
    const names = workbook.document.sheets[sheet]!.rows.map((_, row) =>
      valueIn(workbook, sheet, row, "planting"),
    )
    // Of rows with the same name the first: it is set last.
    const found = new Map(names.map((name, row) => [name, row] as const).toReversed())
    rows.set(sheet, found)
    return found
  }
  return (part, planting) => {
    const sheet = sheetWith(workbook.document, part)
    const row = sheet < 0 ? undefined : rowsOf(sheet).get(planting)
    return row === undefined ? null : numberOf(valueIn(workbook, sheet, row, part))
  }
}

/** The columns of these parts on the sheet that has the first of them, row by row, as our functions are given a range. */
export function rangeOf(workbook: Workbook, parts: readonly Part[]): Held[][] | null {
  const sheet = sheetWith(workbook.document, parts[0]!)
  if (sheet < 0) return null
  return workbook.document.sheets[sheet]!.rows.map((_, row) =>
    parts.map((part) => {
      const value = valueIn(workbook, sheet, row, part)
      return isFault(value) ? null : value
    }),
  )
}

function likelyRanges(workbook: Workbook): Record<string, readonly [number, number]> {
  const ranges: Record<string, readonly [number, number]> = {}
  for (const [name, low, high] of rangeOf(workbook, [
    "value name",
    "value likely low",
    "value likely high",
  ]) ?? [])
    if (typeof name === "string" && typeof low === "number" && typeof high === "number" && low <= high)
      ranges[name] = [low, high]
  return ranges
}

const numberOf = (value: Value) => (typeof value === "number" ? value : null)
