import type {CellAddress} from "../document"
import {extraAt} from "../extras"
import type {Workbook} from "../workbook"
import {blanks} from "./blanks"
import {checkedByStep, type Checked} from "./checked"
import {pickedAfterClose} from "./closed"
import {dates} from "./dates"
import {errors} from "./errors"
import type {Finding, Words} from "./finding"
import {namedValues} from "./names"
import {oddFormulas} from "./oddFormulas"
import {oddNumbers} from "./oddNumbers"
import {openedOtherwise} from "./opened"
import {pickedTooMuch} from "./picked"
import {plantings, withoutRecord} from "./plantings"
import {ranges} from "./ranges"
import {replantYears} from "./replantYears"
import {rings} from "./rings"
import {oldSamples} from "./samples"
import {sources} from "./sources"
import {negativeStores} from "./stores"
import {textNumbers} from "./textNumbers"
import {typedNumbers} from "./typedNumbers"
import {typedOver} from "./typedOver"
import {units} from "./units"
import {pickedInWait} from "./waits"

const rules: readonly ((checked: Checked) => readonly Finding[])[] = [
  errors,
  rings,
  typedOver,
  plantings,
  textNumbers,
  oddNumbers,
  dates,
  pickedInWait,
  pickedAfterClose,
  openedOtherwise,
  negativeStores,
  pickedTooMuch,
  ranges,
  oddFormulas,
  units,
  blanks,
  namedValues,
  oldSamples,
  withoutRecord,
  replantYears,
  sources,
  typedNumbers,
]

/** Chosen: more cells than this that one column has alike are told together. */
const MOST_APART = 3

/** Everything in the workbook that needs a look. What can be decided from the workbook alone is looked for. */
export const findingsIn = (workbook: Workbook, words: Words): readonly Finding[] =>
  toTheEnd(lookingIn(workbook, words))

/** What is found step by step, in one go. */
export function toTheEnd<T>(steps: Generator<void, T>): T {
  for (;;) {
    const {done, value} = steps.next()
    if (done) return value
  }
}

/**
 * The same, some cells and then one rule after the other, so that the page can answer in between. The workbook must stay as it is
 * meanwhile.
 */
export function* lookingIn(workbook: Workbook, words: Words): Generator<void, readonly Finding[]> {
  const checked = yield* checkedByStep(workbook, words)
  const findings: Finding[] = []
  for (const rule of rules) {
    yield
    const found = rule(checked).map((one) => withNote(checked, one))
    findings.push(...together(checked, found))
  }
  return findings
}

/** A finding at whose cell the person noted something, and settled it, is told for itself. */
function withNote({document}: Checked, finding: Finding): Finding {
  const note = extraAt(document, finding.cells[0])?.note
  if (!note) return finding
  const {alike, ...rest} = finding
  return {...rest, note, ...(alike !== undefined && !note.settled && {alike})}
}

/** Many cells of one column of which the same is said, told as one. */
function together(checked: Checked, found: readonly Finding[]): readonly Finding[] {
  const groups = new Map<string, Finding[]>()
  for (const [i, finding] of found.entries()) {
    const {sheet, col} = finding.cells[0]
    const key = finding.alike === undefined ? `${i}` : `${sheet}:${col}:${finding.alike}`
    if (!groups.get(key)?.push(finding)) groups.set(key, [finding])
  }
  return [...groups.values()].flatMap((group) =>
    group.length > MOST_APART ? [asOne(checked, group)] : group,
  )
}

function asOne({document, words}: Checked, group: readonly Finding[]): Finding {
  const [first] = group as readonly [Finding, ...Finding[]]
  const cells = group.map((finding) => finding.cells[0]) as [CellAddress, ...CellAddress[]]
  const [{sheet, col}] = cells
  const {name, columns} = document.sheets[sheet]!
  const fixes = group.flatMap(({fix}) => fix?.edit.cells ?? [])
  const {fix, note: _, ...rest} = first
  return {
    ...rest,
    cells,
    sentence: `${group.length} cells of ${columns[col]!.heading}, ${name}, ${first.alike}; the first is ${words.name(cells[0])}`,
    ...(fix &&
      fixes.length === group.length && {
        fix: {words: `${fix.words}: all ${group.length}`, edit: {type: "enter", cells: fixes}},
      }),
  }
}
