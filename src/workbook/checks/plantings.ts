import {sheetNamed, sheetWith, type CellAddress, type Document, type Part} from "../document"
import {piecesOf, referenceOf, tokens} from "../formula"
import {planSheet} from "../plan"
import {isFault} from "../value"
import {wordsIn, type Checked} from "./checked"
import {inARow, type Finding} from "./finding"

/** Plantings that one sheet has and another lacks, and names twice where only the first is ever looked up. */
export function plantings(checked: Checked): Finding[] {
  const {document} = checked
  const kept = sheetsByPlanting(checked)
  return [...missing(document, kept), ...strangers(document, kept), ...twins(checked)]
}

/** A sheet kept by planting: its first column has the heading under which the plan has its plantings. */
interface Kept {
  readonly sheet: number
  readonly name: string
  /** The names in the first column, each by its first row. */
  readonly rows: ReadonlyMap<string, number>
  /** Has to have all plantings: it is looked up by their names, or nothing on it is typed but those. */
  readonly isRoster: boolean
}

function sheetsByPlanting({document, written}: Checked): readonly Kept[] {
  const plan = planSheet(document)
  const heading = document.sheets[plan]?.columns[0]?.heading
  if (heading === undefined) return []
  const looked = lookedUp(
    document,
    written.map(({at, formula}) => [at.sheet, formula] as const),
  )
  const putIn = new Set(PUT_IN.map((part) => sheetWith(document, part)))
  return document.sheets.flatMap(({name, columns, rows}, sheet) => {
    if (columns[0]!.heading !== heading || putIn.has(sheet) || rows.length === 0) return []
    const onlyWorked = columns.slice(1).every(({kind}) => kind === "worked out")
    const isRoster = sheet === plan || looked.has(sheet) || onlyWorked
    return [{sheet, name, rows: new Map(namesOf(document, sheet).toReversed()), isRoster}]
  })
}

/** Sheets that an act puts plantings on: a study for those it was run for, the plan as it was agreed on. */
const PUT_IN: readonly Part[] = ["range of the study", "agreed planting"]

const namesOf = ({sheets}: Document, sheet: number) =>
  sheets[sheet]!.rows.flatMap(([key], row) => {
    const name = wordsIn(key ?? null)
    return name === null ? [] : [[name, row] as const]
  })

/** The sheets in which MATCH or XLOOKUP looks for a name in the whole first column: they find the first row of that name alone. */
function lookedUp(document: Document, formulas: readonly (readonly [sheet: number, formula: string])[]) {
  const found = new Set<number>()
  for (const [on, formula] of formulas) {
    const written = tokens(formula).filter(({kind}) => kind !== "space")
    for (const [i, {kind, text}] of written.entries()) {
      if (kind !== "function" || !/^(MATCH|XLOOKUP)$/i.test(text)) continue
      const reference = written[secondArgument(written, i)]
      if (reference?.kind !== "reference") continue
      const {sheet, from, to} = referenceOf(reference.text)
      if (from.row !== null || from.col !== 0 || to.col !== 0) continue
      found.add(sheet === null ? on : sheetNamed(document.sheets, sheet))
    }
  }
  return found
}

function secondArgument(written: readonly {text: string}[], call: number): number {
  let depth = 0
  for (let i = call + 1; i < written.length; i++) {
    const {text} = written[i]!
    if (text === "(" || text === "{") depth++
    else if (text === ")" || text === "}") depth--
    else if (text === "," && depth === 1) return i + 1
  }
  return -1
}

function missing({sheets}: Document, kept: readonly Kept[]): Finding[] {
  const rosters = kept.filter(({isRoster}) => isRoster)
  const names = new Set(rosters.flatMap(({rows}) => [...rows.keys()]))
  return [...names].flatMap((name): Finding[] => {
    const [on, off] = [rosters.filter((one) => has(one, name)), rosters.filter((one) => !has(one, name))]
    if (off.length === 0) return []
    const stands: CellAddress = {sheet: on[0]!.sheet, row: on[0]!.rows.get(name)!, col: 0}
    const totals = off.filter(({sheet}) => sheets[sheet]!.columns.some(({total}) => total !== undefined))
    const leftOut = totals.length
      ? `; the totals of ${inARow(totals.map(({name}) => name))} leave it out`
      : ""
    return [
      {
        rule: "missing planting",
        cells: [stands],
        sentence: `${name} stands on ${inARow(on.map(({name}) => name))}, but not on ${inARow(off.map(({name}) => name))}${leftOut}`,
      },
    ]
  })
}

/** As formulas compare words: without regard to case. */
const has = ({rows}: Kept, name: string) =>
  rows.has(name) || [...rows.keys()].some((other) => other.toLowerCase() === name.toLowerCase())

/** Names of samples, pickings or years whose planting is nowhere: probably misspelt. */
function strangers(_: Document, kept: readonly Kept[]): Finding[] {
  const rosters = kept.filter(({isRoster}) => isRoster)
  if (rosters.length === 0) return []
  return kept
    .filter(({isRoster}) => !isRoster)
    .flatMap(({sheet, name: sheetName, rows}) =>
      [...rows].flatMap(([name, row]): Finding[] =>
        rosters.some((one) => has(one, name))
          ? []
          : [
              {
                rule: "missing planting",
                cells: [{sheet, row, col: 0}],
                sentence: `${name} on ${sheetName} is no planting: ${inARow(rosters.map(({name}) => name))} have none of this name`,
              },
            ],
      ),
    )
}

function twins({document, written}: Checked): Finding[] {
  const looked = lookedUp(
    document,
    written.map(({at, formula}) => [at.sheet, formula] as const),
  )
  return [...looked].flatMap((sheet) => {
    const first = new Map<string, number>()
    const twice = new Map<string, CellAddress>()
    for (const [name, row] of sheet < 0 ? [] : namesOf(document, sheet)) {
      const lower = name.toLowerCase()
      if (first.has(lower)) twice.set(name, {sheet, row, col: 0})
      else first.set(lower, row)
    }
    return [...twice].map(([name, at]): Finding => ({
      rule: "twin name",
      cells: [at, {...at, row: first.get(name.toLowerCase())!}],
      sentence: `${name} stands twice on ${document.sheets[sheet]!.name}: what is looked up there finds row ${first.get(name.toLowerCase())! + 1} alone`,
    }))
  })
}

/** Chosen: by common practice a planting is first cut at the age of two or three, so a younger one can have no record. */
const NO_RECORD_UNTIL = 2

/** Plantings that are cut, or may be, and have no year on the sheet that the years on record are counted on. */
export function withoutRecord({document, workbook}: Checked): Finding[] {
  const sheet = sheetWith(document, "record years")
  const counts = document.sheets[sheet]?.columns.find(({part}) => part === "record years")?.formula
  const records = counts === undefined ? -1 : firstSheetIn(document, counts)
  const plan = planSheet(document)
  if (records < 0 || plan < 0) return []
  const {columns} = document.sheets[plan]!
  const [age, close] = ["age", "close"].map((part) => columns.findIndex((column) => column.part === part))
  const recorded = new Set(namesOf(document, records).map(([name]) => name.toLowerCase()))
  const without = namesOf(document, plan).filter(([name, row]) => {
    const years = workbook.valueAt({sheet: plan, row, col: age!})
    const isYoung = typeof years === "number" && years <= NO_RECORD_UNTIL
    const closes = workbook.valueAt({sheet: plan, row, col: close!})
    const isInRing = isFault(closes) && closes.code === "#CYCLE!"
    return !recorded.has(name.toLowerCase()) && !isYoung && typeof closes !== "string" && !isInRing
  })
  if (without.length === 0) return []
  const [first, ...more] = without.map(([, row]) => ({sheet: plan, row, col: 0}))
  const count = without.length === 1 ? "1 planting has" : `${without.length} plantings have`
  return [
    {
      rule: "no yield record",
      cells: [first!, ...more],
      sentence: `${count} no yield record: ${inARow(without.map(([name]) => name))}`,
    },
  ]
}

function firstSheetIn({sheets}: Document, formula: string): number {
  const piece = piecesOf(formula).find((piece) => typeof piece !== "string" && piece.sheet !== null)
  return piece === undefined || typeof piece === "string" ? -1 : sheetNamed(sheets, piece.sheet!)
}
