import {isRefusal} from "../../functions/refusal"
import {edge} from "../../functions/root/edge"
import {mean} from "../../functions/root/mean"
import {sugar as sugarFrom} from "../../functions/root/sugar"
import {sheetWith, type CellAddress} from "./document"
import {edgeConfidence} from "./edgeConfidence"
import {numberNamed} from "./names"
import {isQuestioned} from "./questioned"
import {rowsOf} from "./season"
import type {Workbook} from "./workbook"

/** One plant of a sampling, in sugar of the dry root. */
export interface SampledPlant {
  readonly plant: number | null
  /** mg/g */
  readonly sugar: number
  /** Far from the others of its sampling, or outside of what is usual. */
  readonly isOdd: boolean
  /** The cell of the sugar, or of the reading that it is worked out from. */
  readonly at: CellAddress
}

/** The plants of one planting that were dug together, as Crowns takes them: all the dormant ones, or those of one other day. */
export interface Sampling {
  readonly planting: string
  /** The latest day on which they were dug; null where none is given. */
  readonly day: number | null
  /** Dug before the last dormant time began: of a season that is over. */
  readonly isFormer: boolean
  readonly plants: readonly SampledPlant[]
  readonly taken: number
  /** As ROOT.MEAN has it, mg/g. */
  readonly mean: number
  /** The ends of the interval of the mean as ROOT.EDGE has them; null with fewer than two plants. */
  readonly interval: readonly [number, number] | null
  /** The cell of Crowns that takes the mean; left out for a sampling that none takes. */
  readonly at?: CellAddress | undefined
}

export interface SampleSpread {
  readonly samplings: readonly Sampling[]
  /** Of the intervals: 0.8. */
  readonly confidence: number
}

interface Dug {
  readonly day: number | null
  readonly plant: number | null
  readonly sugar: number | null
  readonly reading: number | null
  readonly sugarAt: CellAddress | undefined
  readonly readingAt: CellAddress | undefined
}

/** Chosen: so many samplings of a planting stand beside each other. */
const SHOWN = 3

/** The last samplings of each planting of a workbook, in the order of their rows and days; null without a sheet of them. */
export function sampleSpreadOf(workbook: Workbook, last = SHOWN): SampleSpread | null {
  if (sheetWith(workbook.document, "sample sugar") < 0) return null
  const confidence = edgeConfidence(workbook)
  const dormancy = new Map(
    rowsOf(workbook, "structure at start").map((row) => [
      row.word("planting"),
      {
        from: row.number("dormant from"),
        opens: row.number("opens"),
        at: row.cells["sampled sugar"],
        later: {day: row.number("later sample"), at: row.cells["later sugar"]},
      },
    ]),
  )
  const byPlanting = new Map<string, Dug[]>()
  for (const row of rowsOf(workbook, "sample sugar")) {
    const planting = row.word("sample planting")
    if (planting === "") continue
    const dug = {
      day: row.number("sample day"),
      plant: row.number("sample plant"),
      sugar: row.number("sample sugar"),
      reading: row.number("sample reading"),
      sugarAt: row.cells["sample sugar"],
      readingAt: row.cells["sample reading"],
    }
    byPlanting.set(planting, [...(byPlanting.get(planting) ?? []), dug])
  }
  const line = [numberNamed(workbook, "Sugar_slope"), numberNamed(workbook, "Sugar_offset")] as const
  const samplings = [...byPlanting].flatMap(([planting, rows]) => {
    const {from = null, opens = null, at, later} = dormancy.get(planting) ?? {}
    const takenAt = (key: number | "") => (key === "" ? at : key === later?.day ? later.at : undefined)
    const isDormant = (day: number) => (from === null || day >= from) && (opens === null || day < opens)
    // "" stands for the dormant ones: those dug in the last dormant time before the opening, on whichever day, and those
    // without a day. Without an opening all since that time began count, as on Crowns.
    const groups = new Map<number | "", Dug[]>()
    for (const one of rows) {
      const key = one.day === null || isDormant(one.day) ? "" : one.day
      groups.set(key, [...(groups.get(key) ?? []), one])
    }
    return [...groups]
      .flatMap(([key, dug]) => {
        const sampling = samplingOf(workbook, planting, dug, from, line, confidence)
        return sampling ? [{...sampling, at: takenAt(key)}] : []
      })
      .toSorted((a, b) => (a.day ?? 0) - (b.day ?? 0))
      .slice(-last)
  })
  return {samplings, confidence}
}

/** As Root samples and Crowns do it: a plant's laboratory sugar or, without it, its reading by the own calibration. */
function samplingOf(
  workbook: Workbook,
  planting: string,
  dug: readonly Dug[],
  dormantFrom: number | null,
  [slope, offset]: readonly [number | null, number | null],
  confidence: number,
): Sampling | null {
  const plants: SampledPlant[] = []
  for (const {plant, sugar, reading, sugarAt, readingAt} of dug) {
    const read =
      reading === null || slope === null || offset === null ? null : sugarFrom(reading, slope, offset)
    const used = sugar ?? read
    const at = sugar === null ? readingAt : sugarAt
    if (used === null || isRefusal(used) || !at) continue
    plants.push({plant, sugar: used, isOdd: isQuestioned(workbook.document, at), at})
  }
  const values = plants.map(({sugar}) => sugar)
  const middle = values.length ? mean(values, null) : null
  if (middle === null || isRefusal(middle)) return null
  const ends = ([-1, 1] as const).map((side) => {
    const end = edge(values, side, confidence)
    return isRefusal(end) ? null : end
  })
  const [lower, upper] = [ends[0] ?? null, ends[1] ?? null]
  const days = dug.flatMap(({day}) => (day === null ? [] : [day]))
  const day = days.length ? Math.max(...days) : null
  return {
    planting,
    day,
    isFormer: day !== null && dormantFrom !== null && day < dormantFrom,
    plants,
    taken: dug.length,
    mean: middle,
    interval: lower === null || upper === null ? null : [lower, upper],
  }
}
