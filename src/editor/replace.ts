import {extraAt, type ExtraChange} from "../workbook/extras"
import {COLUMN_FORMULA, contentAt, isFormula, type Content} from "../workbook/document"
import type {Edit, Entry} from "../workbook/edit"
import {regionOf} from "../workbook/region"
import type {Workbook} from "../workbook/workbook"
import {entryColumn, yearOf} from "./editing"
import {readEntry, readsAs} from "./entry"
import {cellOfHit, excerpt, patternOf, type Hit, type Search} from "./find"

/** What would become of one hit. */
export interface Replacement {
  readonly hit: Hit
  /** What stands there and what would stand there instead, as a person types it. */
  readonly before: string
  readonly after: string
  /** The new content or note, or the sentence that says why the cell stays as it is. */
  readonly entry: Entry | ExtraChange | {readonly refused: string}
}

type Read = Pick<Workbook, "document" | "normalized">

/** What would become of each hit, with `by` in the place of all that was looked for. Nothing is changed yet. */
export function replacementsOf(
  workbook: Read,
  hits: readonly Hit[],
  search: Search,
  by: string,
): readonly Replacement[] {
  const pattern = patternOf(search)
  return hits.map((hit) => replacementOf(workbook, hit, pattern, by))
}

/** One edit that makes the replacements that can be made, or null when there are none. */
export function replaceEdit(replacements: readonly Replacement[], query: string, by: string): Edit | null {
  const cells = replacements.flatMap(({entry}) => ("content" in entry ? [entry] : []))
  const extras = replacements.flatMap(({entry}) => ("note" in entry ? [entry] : []))
  const places = cells.length + extras.length
  if (places === 0) return null
  const thing = extras.length === 0 ? "cell" : cells.length === 0 ? "note" : "place"
  const count = `${places} ${thing}${places === 1 ? "" : "s"}`
  const name = `${count} replaced, “${short(query)}” by ${by === "" ? "nothing" : `“${short(by)}”`}`
  return {type: "enter", cells, name, ...(extras.length ? {extras} : {})}
}

const short = (text: string) => (text.length > 24 ? `${text.slice(0, 23)}\u2026` : text)

function replacementOf(workbook: Read, hit: Hit, pattern: RegExp, by: string): Replacement {
  const {document} = workbook
  const at = cellOfHit(hit)
  const content = contentAt(document, at)
  const region = regionOf(document)
  const stays = (refused: string, before = hit.text, after = before): Replacement => ({
    hit,
    before,
    after,
    entry: {refused},
  })
  if (hit.row === null) return stays("Headings and names of sheets are not changed from here")
  const note = hit.inNote && extraAt(document, at)?.note
  if (note) {
    const after = note.text.replace(pattern, () => by)
    if (after === note.text) return stays("It already reads so")
    if (after.trim() === "") return stays("The note would be blank; take it away in its panel")
    return {hit, before: note.text, after, entry: {at, note: {...note, text: after}}}
  }
  if (content === COLUMN_FORMULA) return stays("The formula of the column works it out")
  if (!hit.inFormula && (content === null || isFormula(content)))
    return stays("A formula gives this value; look in formulas to change it")

  const column = entryColumn(document, at, content)
  const read = (text: string) =>
    readEntry(text, column, yearOf(document), (formula) => workbook.normalized(formula), {
      region,
      isSure: true, // it is written as formulas are shown here
    })
  const from = hit.inFormula ? {mark: "", text: hit.text} : typedForm(hit.text, content, read)
  const whole = from ?? {mark: "", text: readsAs(content, column, null, region)}
  if (!from && whole.text.search(pattern) < 0)
    return stays(`The cell holds ${whole.text}, which is shown as ${hit.text}`)

  const after = whole.text.replace(pattern, () => by)
  const entry = read(whole.mark + after)
  if ("refused" in entry) return stays(entry.refused, whole.text, after)
  const refused = whyNot(content, entry.content, after)
  if (refused !== null) return stays(refused, whole.text, after)
  return {hit, before: whole.text, after, entry: {at, content: entry.content}}
}

/** The text that is found, when typing it gives what the cell holds: as it is, or marked as words. */
const typedForm = (text: string, content: Content, read: (text: string) => ReturnType<typeof readEntry>) =>
  ["", "'"]
    .map((mark) => ({mark, text, entry: read(mark + text)}))
    .find(({entry}) => "content" in entry && entry.content === content)

/** Why one content may not take the place of another, though it can stand in the cell. */
function whyNot(was: Content, now: Content, after: string): string | null {
  if (now === was) return "It already reads so"
  if (isFormula(was) && !isFormula(now)) return "It would be a formula no more"
  if (!isFormula(was) && isFormula(now)) return "It would become a formula"
  if (typeof was !== "string" && typeof now === "string")
    return `“${after}” would be words here, and the cell holds a ${typeof was === "number" ? "number" : "TRUE or FALSE"}`
  return null
}

/** A change in few words: what both texts have in common at their ends is shortened. */
export function inShort({before, after}: Pick<Replacement, "before" | "after">): {
  readonly before: string
  readonly after: string
} {
  const most = Math.min(before.length, after.length)
  let from = 0
  while (from < most && before[from] === after[from]) from++
  let same = 0
  while (same < most - from && before.at(-1 - same) === after.at(-1 - same)) same++
  const around = (text: string) => {
    const part = excerpt({text, from, to: text.length - same})
    return part.before + part.found + part.after
  }
  return {before: around(before), after: around(after)}
}
