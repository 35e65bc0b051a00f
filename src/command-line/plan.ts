import {isoOf} from "../../functions/calendar"
import {sentenceOf} from "../workbook/faults"
import {planOf, type Plan, type PlanRow} from "../workbook/plan"
import {isFault, type Value} from "../workbook/value"
import {Workbook} from "../workbook/workbook"
import {BAD_USAGE, readArguments, readWorkbook, runWhenCalled, type Shell} from "./common/shell"

const HELP = `Prints the season plan of a saved workbook.

  npm run -s plan -- workbooks/NAME.json

  --json   a list of objects instead of a table: ISO dates, numbers, null where there is nothing
  --help   this text

Exit status: 0, or 1 when the workbook has no season plan, or 2 when the call or the workbook cannot be used.`

/** Prints when each planting opens and closes, what holds it, and what it is expected to give. */
export async function main(args: readonly string[], {out, err}: Shell): Promise<number> {
  const given = readArguments(args, {flags: ["--json", "--help"], values: []})
  const fail = (sentence: string, status: number) => {
    err(sentence)
    return status
  }
  if ("refused" in given) return fail(`${given.refused}. See --help.`, BAD_USAGE)
  if (given.flags.has("--help")) {
    out(HELP)
    return 0
  }
  const [path, ...others] = given.words
  if (path === undefined || others.length) return fail("One workbook is needed. See --help.", BAD_USAGE)
  const reading = readWorkbook(path)
  if ("refused" in reading) return fail(`${reading.refused}.`, BAD_USAGE)
  const workbook = new Workbook(reading.document)
  const plan = planOf(workbook)
  if (!plan) return fail(`${path} has no season plan: no column of its sheets holds the close.`, 1)

  const seasons = plan.rows.map((row) => seasonOf(workbook, row))
  if (given.flags.has("--json")) out(JSON.stringify(seasons, null, 2))
  else for (const line of table(seasons, plan)) out(line)
  return 0
}

/** One planting as printed. `cut` is null when its close is not known. */
interface Season {
  readonly planting: string
  readonly age: number | null
  readonly cut: boolean | null
  readonly opens: string | null
  readonly closes: string | null
  readonly heldBy: string
  readonly slack: number | null
  readonly weeks: number | null
  readonly expectedKg: number | null
  readonly lowKg: number | null
  readonly highKg: number | null
}

function seasonOf(workbook: Workbook, row: PlanRow): Season {
  const shown = (part: keyof PlanRow["cells"]): Value => {
    const at = row.cells[part]
    return at ? workbook.valueAt(at) : null
  }
  const iso = (day: number | null) => (day === null ? null : isoOf(day))
  const fault = [shown("close"), shown("open")].find(isFault)
  return {
    planting: row.planting,
    age: row.age,
    cut: fault ? null : row.closes !== null,
    opens: iso(row.opens),
    closes: iso(row.closes),
    heldBy: row.heldBy || (fault ? sentenceOf(fault) : ""),
    slack: row.slack,
    weeks: row.weeks,
    expectedKg: row.crop,
    lowKg: row.cropLow,
    highKg: row.cropHigh,
  }
}

const COLUMNS: readonly {
  readonly heading: string
  readonly isNumber?: boolean
  text(season: Season): string
}[] = [
  {heading: "planting", text: ({planting}) => planting},
  {heading: "age", isNumber: true, text: ({age}) => number(age, 0)},
  {heading: "opens", text: ({opens}) => opens ?? ""},
  {heading: "closes", text: ({closes, cut}) => closes ?? (cut === null ? "not known" : "not cut")},
  {heading: "held by", text: ({heldBy}) => heldBy},
  {heading: "slack", isNumber: true, text: ({slack}) => number(slack, 0)},
  {heading: "weeks", isNumber: true, text: ({weeks}) => number(weeks, 1)},
  {heading: "expected kg", isNumber: true, text: ({expectedKg}) => number(expectedKg, 0)},
  {heading: "range kg", isNumber: true, text: ({lowKg, highKg}) => range(lowKg, highKg)},
]

const number = (value: number | null, decimals: number) => (value === null ? "" : value.toFixed(decimals))

const range = (low: number | null, high: number | null) =>
  low === null || high === null ? "" : `${number(low, 0)} to ${number(high, 0)}`

function table(seasons: readonly Season[], {asOf}: Plan): readonly string[] {
  if (seasons.length === 0) return ["The season plan has no plantings."]
  const rows = [
    COLUMNS.map(({heading}) => heading),
    ...seasons.map((one) => COLUMNS.map(({text}) => text(one))),
  ]
  const widths = COLUMNS.map((_, col) => Math.max(...rows.map((row) => row[col]!.length)))
  const padded = (text: string, col: number) =>
    COLUMNS[col]!.isNumber ? text.padStart(widths[col]!) : text.padEnd(widths[col]!)
  const stands = asOf === null ? "" : ` The plan stands as of ${isoOf(asOf)}.`
  return [
    ...rows.map((row) => row.map(padded).join("  ").trimEnd()),
    "",
    `Age: the planting year is 0. Closes: the last day of cutting. Slack: days to the next limit.${stands}`,
  ]
}

await runWhenCalled("plan.ts", main)
