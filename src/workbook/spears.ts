import {isRefusal} from "../../functions/refusal"
import {roundDown} from "../../functions/rounding"
import {dateAt} from "../../functions/spear/dateAt"
import {expectedDate, thinningValues, type CutSeason} from "../../functions/spear/expectedDate"
import {limitRange} from "../../functions/spear/limitRange"
import {lineSpread, type LineSpread} from "../../functions/spear/lineSpread"
import {shareDate} from "../../functions/spear/shareDate"
import {shareUnder} from "../../functions/spear/shareUnder"
import {readTally, type Tally} from "../../functions/spear/tally"
import {average, trend} from "../../functions/spear/trend"
import {sheetWith, type CellAddress, type Region} from "./document"
import {crownsOf, rangeOf} from "./crowns"
import {edgeConfidence} from "./edgeConfidence"
import {numberNamed} from "./names"
import {isSameName} from "./plantingName"
import {regionOf} from "./region"
import {rowsOf, type Row} from "./season"
import type {Workbook} from "./workbook"

/** The spears of a planting as measured on a day. */
export interface SpearDay {
  readonly day: number
  /** Mean diameter, mm. */
  readonly mean: number
  readonly counted: number | null
  /** The spears by diameter; null where they were not counted so. */
  readonly tally: Tally | null
  /** Share of them that is thinner than the limit. */
  readonly under: number | null
  /** The cell in which the mean was typed, or the spears that it is of. */
  readonly at: CellAddress
}

/** The spears of one planting, and the straight line through their means as SPEAR.TREND has it. */
export interface PlantingSpears {
  readonly planting: string
  /** In the order of the days. */
  readonly days: readonly SpearDay[]
  /** The line: a point of it, mm on a day, and its change, mm a day; null without two different days. */
  readonly line: {readonly day: number; readonly mean: number; readonly slope: number} | null
  /**
   * Last day at or above the limit: by the line, as SPEAR.DATE_AT has it; before the third mean as SPEAR.EXPECTED_DATE does,
   * where the crowns are known. Null where there is none.
   */
  readonly lastDay: number | null
  /** Whether that day is by the balance, and not by the line. */
  readonly isExpected: boolean
  /** How sure the line is; null with fewer than three means. */
  readonly spread: LineSpread | null
  /** The last days at or above the limit by the lower and by the upper edge of the line; null where there are none. */
  readonly lastDays: readonly [number, number] | null
  /** Last day on which the share under the limit is at or under that at which cutting ends, as SPEAR.SHARE_DATE has it. */
  readonly shareDay: number | null
}

export interface SpearSizes {
  readonly plantings: readonly PlantingSpears[]
  /** Mean diameter at which cutting ends, mm. */
  readonly limit: number | null
  /** Share of spears under the limit at which cutting ends; null where that rule is not used. */
  readonly share: number | null
  /** Of the edges of the lines: 0.8. */
  readonly confidence: number
  readonly asOf: number | null
  readonly region: Region
}

/** The spears measured in a workbook, the plantings in the order of their rows; null without a sheet of them. */
export function spearSizesOf(workbook: Workbook): SpearSizes | null {
  const {document} = workbook
  if (sheetWith(document, "spear mean") < 0) return null
  const limit = numberNamed(workbook, "Spear_limit")
  const share = numberNamed(workbook, "Spear_share")
  const confidence = edgeConfidence(workbook)
  const seasonOf = cutSeasons(workbook)
  const measured = new Map<string, SpearDay[]>()
  for (const row of rowsOf(workbook, "spear mean")) {
    const part = row.cells["spear mean used"] ? "spear mean used" : "spear mean"
    const [planting, day, mean] = [row.word("spear planting"), row.number("spear day"), row.number(part)]
    if (planting === "" || day === null || mean === null) continue
    const source = row.number("spear mean") === null ? "spears by size" : "spear mean"
    const one = {day, mean, ...countedIn(row, limit), at: row.cells[source]!}
    measured.set(planting, [...(measured.get(planting) ?? []), one])
  }
  return {
    plantings: [...measured].map(([planting, rows]) => {
      const days = rows.toSorted((a, b) => a.day - b.day)
      const season = days.length < FOR_A_LINE && limit !== null ? seasonOf(planting) : null
      const line = lineOf(days, limit, confidence)
      return {
        planting,
        days,
        ...line,
        ...(season && {lastDay: expectedDay(days, limit!, season)}),
        isExpected: season !== null,
        shareDay: shareDayOf(days, share),
      }
    }),
    limit,
    share,
    confidence,
    asOf: numberNamed(workbook, "As_of"),
    region: regionOf(document),
  }
}

/** Means from which on their line knows better than the balance (methods: from the third measurement). */
const FOR_A_LINE = 3

/** Finds the season of a planting by its crowns, or null where they are not known. */
function cutSeasons(workbook: Workbook): (planting: string) => CutSeason | null {
  const crowns = crownsOf(workbook)
  const values = thinningValues.read(rangeOf(workbook, ["value name", "value"]) ?? [])
  if (crowns === null || isRefusal(crowns) || isRefusal(values)) return () => null
  return (planting) => {
    const crown = crowns.plantings.find((one) => isSameName(one.planting, planting))
    if (!crown) return null
    const {structure, reserve, open, healthy} = crown
    return {crowns: {structure, reserve}, climate: crowns.climate, open, healthy, values}
  }
}

function expectedDay(days: readonly SpearDay[], limit: number, season: CutSeason): number | null {
  const expected = expectedDate(
    days.map(({day}) => day),
    days.map(({mean}) => mean),
    limit,
    season,
  )
  return isRefusal(expected) ? null : expected
}

/** What a row says of the spears counted, with the share under a limit. */
function countedIn(row: Row, limit: number | null): Pick<SpearDay, "counted" | "tally" | "under"> {
  const read = readTally(row.word("spears by size"))
  const [counted, tally] = [row.number("spears counted"), isRefusal(read) ? null : read]
  const spears = tally ? tally.counts.reduce((sum, one) => sum + one, 0) : 0
  if (!tally || spears === 0) return {counted, tally: null, under: null}
  const under = limit === null ? null : shareUnder(tally.diameters, limit, tally.counts)
  return {counted: counted ?? spears, tally, under: isRefusal(under) ? null : under}
}

function shareDayOf(days: readonly SpearDay[], share: number | null): number | null {
  const counted = days.filter((one): one is SpearDay & {under: number} => one.under !== null)
  if (share === null || counted.length === 0) return null
  const met = shareDate(
    counted.map(({day}) => day),
    counted.map(({under}) => under),
    share,
  )
  return isRefusal(met) ? null : met
}

function lineOf(
  days: readonly SpearDay[],
  limit: number | null,
  confidence: number,
): Pick<PlantingSpears, "line" | "lastDay" | "spread" | "lastDays"> {
  const [on, means] = [days.map(({day}) => day), days.map(({mean}) => mean)]
  const slope = trend(on, means)
  // The functions take what a spear can be; with anything else among the means they give no line.
  if (isRefusal(slope) || means.some((mean) => mean <= 0 || mean > 60))
    return {line: null, lastDay: null, spread: null, lastDays: null}
  const met = limit === null ? null : dateAt(on, means, limit)
  const lastDay = met === null || isRefusal(met) ? null : met
  const spread = lineSpread(on, means, confidence)
  const range = spread && lastDay !== null ? limitRange(spread, limit!) : null
  return {
    line: {day: average(on), mean: average(means), slope},
    lastDay,
    spread,
    lastDays: range && [roundDown(range[0]), roundDown(range[1])],
  }
}
