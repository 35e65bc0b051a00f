import {dayOf, isoOf, yearOf} from "../../functions/calendar"
import {
  COLUMN_FORMULA,
  columnWith,
  isFormula,
  sheetWith,
  withSheet,
  type Content,
  type Document,
  type Part,
} from "../workbook/document"
import {listed} from "../workbook/extras"
import {namesIn, numberNamed} from "../workbook/names"
import {blankRow, withRowsRemoved} from "../workbook/rows"
import {rowsOf} from "../workbook/season"
import type {Workbook} from "../workbook/workbook"
import {dateText} from "./display"

/** What is known of one season and not of the next: the rows of these sheets go. The sheet is told by the part of a column. */
const OF_ONE_SEASON: readonly Part[] = [
  "picking planting",
  "spear planting",
  "agreed planting",
  "loss planting",
  "load planting",
  "cutters from",
  "wait planting",
  "range of the study",
  "ahead planting",
]

/** What the study of the best weeks found for one season. */
const STUDIED: readonly Part[] = [
  "life run on",
  "life weeks",
  "life days",
  "life last season",
  "life near",
  "life replace age",
  "life why",
  "life reserve worth",
  "life stop price",
  "life day cost",
  "life worth",
  "life clear now",
]

/**
 * The draft of the next season, begun from what really happened: each planting's crop of this year, from its pickings,
 * stands in the records with its dates and the reason of its close; openings and other typed dates lie a year later; what
 * belongs to this season alone is gone. Weather stays, and of the root samples those dug since the fern ended: a sample of the
 * autumn is the next year's start; one from before says nothing of it, and is not to be averaged with it.
 * Null where the workbook names no season.
 */
export function nextSeason(workbook: Workbook): Document | null {
  const {document} = workbook
  const season = namesIn(document).find(({name}) => name.toLowerCase() === "season")
  const year = season ? workbook.valueAt(season.at) : null
  if (!season || typeof year !== "number") return null
  let next = withLaterSamples(withRecords(document, workbook, year), workbook)
  for (const part of OF_ONE_SEASON) {
    const sheet = sheetWith(next, part)
    if (sheet >= 0) next = withSheet(next, sheet, {rows: [], ...listed([])})
  }
  next = withColumns(
    next,
    ["closed", "why closed", "close last week", "held by last week", ...STUDIED],
    () => null,
  )
  next = withColumns(next, ["lease"], seasonLess)
  next = withSeasonGone(next)
  next = withColumns(next, ["open"], yearLater)
  next = withNames(next, year, dormantDay(workbook, year + 1))
  next = withYearOverDates(next, year)
  return {...next, season: `season ${year + 1}, draft`}
}

/** The crop, kg/ha, of each planting that was picked, as a row of the records. */
function withRecords(document: Document, workbook: Workbook, year: number): Document {
  const sheet = sheetWith(document, "record year")
  if (sheet < 0) return document
  const {columns, rows} = document.sheets[sheet]!
  const pickings = rowsOf(workbook, "picking planting")
  const made = rowsOf(workbook, "name of planting").flatMap((planting): Content[][] => {
    const name = planting.word("name of planting")
    const area = planting.number("area")
    const own = pickings.filter((one) => one.word("picking planting") === name)
    const kg = own.reduce((sum, one) => sum + (one.number("picking weight") ?? 0), 0)
    if (!area || kg <= 0) return []
    const days = own.flatMap((one) => one.number("picking day") ?? [])
    const closed = planting.number("closed") ?? (days.length ? Math.max(...days) : null)
    const why = planting.word("why closed")
    const contents: Partial<Record<Part, Content>> = {
      "record planting": name,
      "record year": year,
      "record crop": Math.round(kg / area),
      "record document": `${own.length} pickings`,
      "record opened": days.length ? isoOf(Math.min(...days)) : null,
      "record closed": closed === null ? null : isoOf(closed),
      "record note":
        planting.number("closed") === null
          ? "no close typed: its last picking"
          : why
            ? `closed: ${why}`
            : null,
    }
    const row = blankRow(columns)
    for (const [part, content] of Object.entries(contents)) {
      const col = columnWith(document, sheet, part as Part)
      if (col >= 0 && content !== undefined) row[col] = content
    }
    return [row]
  })
  return withSheet(document, sheet, {rows: [...rows, ...made]})
}

/** The sentence on plantings that were picked and are not closed to fern, so that more may come of them; "" where all are. */
export function notClosedYet(workbook: Workbook): string {
  const picked = new Set(rowsOf(workbook, "picking planting").map((row) => row.word("picking planting")))
  const names = rowsOf(workbook, "name of planting").flatMap((row) => {
    const name = row.word("name of planting")
    return name && picked.has(name) && row.number("closed") === null ? [name] : []
  })
  if (names.length === 0) return ""
  const [are, they] = names.length === 1 ? ["is", "it"] : ["are", "they"]
  return (
    `${names.join(", ")} ${are} not closed to fern: what ${they} gave so far would stand in Records as the whole season. ` +
    `Type Closed on Plantings, or press again to begin all the same.`
  )
}

/** Without the samples of the season that ended. */
function withLaterSamples(document: Document, workbook: Workbook): Document {
  const sheet = sheetWith(document, "sample planting")
  return samplesIn(workbook).reduceRight(
    (next, {isLater}, row) => (isLater ? next : withRowsRemoved(next, sheet, row, 1)),
    document,
  )
}

/** The root samples row by row, and whether they were dug since the fern ended; where no day of that is named, since their planting opened. */
function samplesIn(workbook: Workbook) {
  const fernEnd = numberNamed(workbook, "Fern_end_date")
  const opened = new Map(rowsOf(workbook, "open").map((row) => [row.word("planting"), row.number("open")]))
  return rowsOf(workbook, "sample planting").map((one) => {
    const day = one.number("sample day")
    const since = fernEnd ?? opened.get(one.word("sample planting")) ?? null
    return {day, isLater: day !== null && since !== null && day >= since}
  })
}

/** The sentence on the root samples that the draft of the next season leaves behind, or "" where it leaves none. */
export function samplesLeftBehind(workbook: Workbook): string {
  const left = samplesIn(workbook).filter(({isLater}) => !isLater)
  if (left.length === 0) return ""
  const days = left.flatMap(({day}) => day ?? [])
  const latest = days.length
    ? `, ${left.length === 1 ? "" : "the latest "}of ${dateText(Math.max(...days))}`
    : ""
  const count = left.length === 1 ? "One root sample" : `${left.length} root samples`
  return `${count} of the season before${latest}, stayed behind: sample again while the crowns are dormant.`
}

/** Dates shown as a day and a month have their year in the place of the unit. */
function withYearOverDates(document: Document, year: number): Document {
  const sheets = document.sheets.map((sheet) => ({
    ...sheet,
    columns: sheet.columns.map((column) =>
      column.format === "day" && column.unit === String(year) ? {...column, unit: String(year + 1)} : column,
    ),
  }))
  return {...document, sheets}
}

/** The typed contents of the columns of some parts changed. */
function withColumns(
  document: Document,
  parts: readonly Part[],
  change: (content: Content) => Content,
): Document {
  const sheets = document.sheets.map((sheet) => {
    const cols = sheet.columns.flatMap(({part}, col) => (part && parts.includes(part) ? [col] : []))
    if (cols.length === 0) return sheet
    const rows = sheet.rows.map((row) =>
      row.map((content, col) => (cols.includes(col) && !isFormula(content) ? change(content) : content)),
    )
    return {...sheet, rows}
  })
  return {...document, sheets}
}

/** A lease with a season less; blank once none is left. */
const seasonLess = (content: Content): Content =>
  typeof content !== "number" ? content : content > 1 ? content - 1 : null

/** Margins that are typed season by season, each in the place of the one before: the first one lies behind. */
function withSeasonGone(document: Document): Document {
  const sheet = sheetWith(document, "own season")
  if (sheet < 0) return document
  const {columns, rows} = document.sheets[sheet]!
  const cols = columns.flatMap(({part}, col) => (part === "own season" ? [col] : []))
  const moved = rows.map((row) =>
    columns.map((_, col) => {
      const place = cols.indexOf(col)
      if (place < 0) return row[col] ?? null
      const from = cols[place + 1]
      return from === undefined ? null : (row[from] ?? null)
    }),
  )
  return withSheet(document, sheet, {rows: moved})
}

/** A day of the dormant time from which a season is planned: the tenth of its model year, January or, in the southern half, July. */
function dormantDay(workbook: Workbook, season: number): string {
  const values = rowsOf(workbook, "value name")
  const month = values.find((row) => row.word("value name") === "Year_start")?.number("value") ?? 1
  return `${season}-${String(month).padStart(2, "0")}-10`
}

/** The season and the dates among the named values, a year later; the plan stands on a day of the dormant time. */
function withNames(document: Document, year: number, asOf: string): Document {
  let next = document
  for (const {name, at} of namesIn(document)) {
    const {rows} = next.sheets[at.sheet]!
    const was = rows[at.row]?.[at.col] ?? null
    const plain = name.toLowerCase()
    const now = plain === "season" ? year + 1 : plain === "as_of" ? asOf : yearLater(was)
    if (now === was || was === COLUMN_FORMULA || isFormula(was)) continue
    next = withSheet(next, at.sheet, {rows: rows.with(at.row, rows[at.row]!.with(at.col, now))})
  }
  return next
}

/** A date a year later, the last of February for its 29th; anything else as it is. */
function yearLater(content: Content): Content {
  const day = typeof content === "string" ? dayOf(content) : null
  if (day === null) return content
  const iso = isoOf(day)
  const moved = `${String(yearOf(day) + 1).padStart(4, "0")}${iso.slice(4)}`
  return dayOf(moved) === null ? `${moved.slice(0, 5)}02-28` : moved
}
