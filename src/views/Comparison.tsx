import {useMemo, useState} from "react"
import {cellColumn} from "../editor/cellColumn"
import {shiftText, textWithUnit} from "../editor/display"
import {readsAs} from "../editor/entry"
import type {Store} from "../editor/store"
import {cellName, loweredName, rowNames} from "../editor/words"
import {byLowestCover, firstAsked, type Effects, type Moved} from "../studies/effects"
import {addressText} from "../workbook/cells"
import {sourceColumn} from "../workbook/checks/sources"
import {compare, sidesOf, type Difference, type NoteDifference, type Side} from "../workbook/compare"
import {
  contentAt,
  isFormula,
  sheetWith,
  type CellAddress,
  type Content,
  type Document,
} from "../workbook/document"
import {regionOf} from "../workbook/region"
import type {Value} from "../workbook/value"
import {editionWords} from "./edition"
import {movedBy} from "./pictures/movedBy"
import {ResultMoved} from "./pictures/ResultMoved"
import {TheirNotes} from "./TheirNotes"
import {useEditor} from "./useEditor"
import {placeOf, useEffects} from "./useEffects"
import {useFirsts} from "./useFirsts"

/** The state that the workbook is compared with: a version kept here, or a copy in a file. */
export interface Compared {
  readonly words: string
  readonly document: Document
  /** "Kept 25 May 2026 by RT", as far as it is known. */
  readonly kept: string
  /** The state that a file copy and this workbook both began from, where it is at hand. */
  readonly began: Began | null
  /** Where it and the workbook were changed apart, the words for either; null for an earlier state of the workbook. */
  readonly sides: {readonly there: string; readonly here: string} | null
}

export interface Began {
  readonly words: string
  readonly document: Document
  /** Who changed each side since, and until when: "until now, by RT". */
  readonly there: string
  readonly here: string
}

/** What changed since another state, and what it moved: the change that moves most first. */
export function Comparison({
  store,
  other,
  onGo,
  onTake,
  onBring,
}: {
  store: Store
  other: Compared
  onGo: (at: CellAddress) => void
  onTake: (differences: readonly Difference[]) => void
  onBring: (notes: readonly NoteDifference[]) => void
}) {
  const {document} = useEditor(store)
  const compared = useMemo(() => compare(other.document, document), [other, document])
  const found = useEffects(other.document, document, compared.cells)
  const [taken, setTaken] = useState<ReadonlySet<string>>(new Set())
  const sideOf = useMemo(
    () => (other.began ? sidesOf(other.began.document, other.document, document) : null),
    [other, document],
  )
  const lowestFirst = found && isOfMoney(store) ? byLowestCover(found) : null
  const ranked = found
    ? [...(lowestFirst ?? found.effects).map(({difference}) => difference), ...rest(compared.cells, found)]
    : compared.cells
  const listed = sideOf
    ? ranked.toSorted((a, b) => SIDES.indexOf(sideOf(a).side) - SIDES.indexOf(sideOf(b).side))
    : ranked
  const canTake = (one: Difference) =>
    sideOf?.(one).side !== "here" &&
    one.now !== null &&
    !(isFormula(one.before) && isFormula(one.after) && one.before === one.after)
  const chosen = listed.filter((one) => canTake(one) && taken.has(placeOf(one)))
  const changedThere = listed.filter((one) => canTake(one) && sideOf?.(one).side === "there")
  const nameOf = namesOf(document, listed)
  const {listed: shown, more} = useFirsts(listed, MOST_LISTED)
  return (
    <section aria-label={`What changed since ${other.words}`}>
      <h3>Since {other.words}</h3>
      <p className="q">
        {other.kept}
        {other.began && ` Both began from ${other.began.words}.`}
        {other.sides &&
          !other.began &&
          " The state that both began from is not at hand here, so it is not known on which side a cell was changed."}
      </p>
      {Object.values(compared).every(({length}) => length === 0) ? (
        <p>Nothing differs.</p>
      ) : (
        <>
          <Results store={store} found={found} onGo={onGo} />
          {found && <WhyMoved store={store} found={found} since={other.words} nameOf={nameOf} onGo={onGo} />}
          <h4>What changed{lowestFirst && ", by what it moves the lowest cover"}</h4>
          <ul className="changes">
            {shown.map((one) => (
              <li key={placeOf(one)}>
                {canTake(one) && (
                  <input
                    type="checkbox"
                    aria-label={`Take ${nameOf(one)} as it was`}
                    checked={taken.has(placeOf(one))}
                    onChange={() => setTaken(toggled(taken, placeOf(one)))}
                  />
                )}
                <span>
                  <button className="link" onClick={() => onGo(one.now!)}>
                    {nameOf(one)}, {document.sheets[one.now!.sheet]!.name}
                  </button>
                  : {contentWords(store, one.now!, one.before)} <span aria-hidden="true">→</span>
                  <span className="hide">became</span> {contentWords(store, one.now!, one.after)}
                  {typeof one.after === "number" && <SourceWords document={document} at={one.now!} />}
                  {sideOf && other.began && (
                    <span className="q">; {sideWords(store, one, sideOf(one), other)}.</span>
                  )}
                  <EffectWords store={store} found={found} difference={one} />
                </span>
              </li>
            ))}
          </ul>
          {more}
          <Wholes words={other.sides ? `Only ${other.sides.here}` : "Added"} names={compared.added} />
          <Wholes words={other.sides ? `Only ${other.sides.there}` : "Gone"} names={compared.removed} />
          <button disabled={chosen.length === 0} onClick={() => onTake(chosen)}>
            Take {chosen.length} as in {other.words}
          </button>
          {changedThere.length > 0 && (
            <button onClick={() => onTake(changedThere)}>
              Take all {changedThere.length} changed {other.sides?.there} alone
            </button>
          )}
          {compared.notes.length > 0 && (
            <TheirNotes
              store={store}
              notes={compared.notes}
              sides={other.sides ?? {there: "there", here: "here"}}
              onGo={onGo}
              onBring={onBring}
            />
          )}
        </>
      )}
    </section>
  )
}

const MOST_LISTED = 60

/** Sheets, rows and columns that one side alone has. */
function Wholes({words, names}: {words: string; names: readonly string[]}) {
  const {listed, more} = useFirsts(names)
  if (names.length === 0) return null
  return (
    <>
      <p>
        {words}: {listed.join(", ")}
        {listed.length < names.length ? " …" : "."}
      </p>
      {more}
    </>
  )
}

/** What the other side did comes first, then what has to be decided. */
const SIDES: readonly Side["side"][] = ["there", "both", "here"]

function sideWords(store: Store, {now}: Difference, {side, began}: Side, other: Compared): string {
  const {there, here} = other.sides!
  if (side === "both")
    return `changed on both sides: ${there} ${other.began!.there}; ${here} ${other.began!.here}; both began from ${contentWords(store, now!, began)}`
  return `changed ${side === "here" ? here : there} alone`
}

/** Names of cells, with the row where another one of the list has the same: ten samples are "Sugar of Long Acre". */
function namesOf(document: Document, listed: readonly Difference[]): (one: Difference) => string {
  const counts = new Map<string, number>()
  const plain = ({now}: Difference) => (now ? cellName(document, now) : "")
  for (const one of listed) counts.set(plain(one), (counts.get(plain(one)) ?? 0) + 1)
  return (one) => plain(one) + (counts.get(plain(one))! > 1 ? ` in row ${one.now!.row + 1}` : "")
}

function Results({
  store,
  found,
  onGo,
}: {
  store: Store
  found: Effects | null
  onGo: (at: CellAddress) => void
}) {
  const {document} = useEditor(store)
  if (!found) return <p aria-busy="true">Working out what it moved …</p>
  const moved = found.moved.filter(
    (one) => valueWords(document, one, one.before) !== valueWords(document, one, one.after),
  )
  if (moved.length === 0) return <p>None of the results that are compared moved.</p>
  return (
    <>
      <h4>What moved</h4>
      <ul className="changes">
        {moved.map((one) => (
          <li key={addressText(document, one.at)}>
            <span>
              <button className="link" onClick={() => onGo(one.at)}>
                {resultName(store, one)}
              </button>
              : {valueWords(document, one, one.before)} <span aria-hidden="true">→</span>
              <span className="hide">became</span> {valueWords(document, one, one.after)}
            </span>
          </li>
        ))}
      </ul>
    </>
  )
}

const resultName = ({workbook}: Store, {cover, at}: Moved) =>
  cover === "lowest" ? "Lowest cover" : cellName(workbook.document, at, rowNames(workbook))

/** The bars of one result that moved: of which, is chosen. */
function WhyMoved({
  store,
  found,
  since,
  nameOf,
  onGo,
}: {
  store: Store
  found: Effects
  since: string
  nameOf: (one: Difference) => string
  onGo: (at: CellAddress) => void
}) {
  const {document} = useEditor(store)
  const [chosen, setChosen] = useState<string | null>(null)
  const region = regionOf(document)
  const shiftOf = (one: Moved) => (by: number) => shiftText(by, one.isDate, columnOf(document, one), region)
  const asked = found.moved.flatMap((one, i) => {
    const text = shiftOf(one)
    const why = movedBy(found, i, (by) => text(by) !== null)
    const isSeen = valueWords(document, one, one.before) !== valueWords(document, one, one.after)
    return why && isSeen ? [{one, i, why, text, name: resultName(store, one)}] : []
  })
  const first = firstAsked(found, isOfMoney(store))
  const shown = asked.find(({name}) => name === chosen) ?? asked.find(({i}) => i === first) ?? asked[0]
  if (!shown) return null
  const {one, why, text, name} = shown
  return (
    <>
      {asked.length > 1 && (
        <label className="choice">
          What moved{" "}
          <select value={name} onChange={({currentTarget}) => setChosen(currentTarget.value)}>
            {asked.map(({name, i}) => (
              <option key={i}>{name}</option>
            ))}
          </select>
        </label>
      )}
      <ResultMoved
        result={{
          name,
          was: valueWords(document, one, one.before),
          is: valueWords(document, one, one.after),
        }}
        isDate={one.isDate}
        changes={why.changes.map(({difference, by}) => ({
          name: nameOf(difference),
          was: contentWords(store, difference.now!, difference.before),
          is: contentWords(store, difference.now!, difference.after),
          by,
          text: text(by)!,
          at: difference.now!,
        }))}
        others={why.others === 0 ? null : {by: why.others, text: text(why.others)!}}
        source={editionWords(store, `Compared with ${since}`)}
        onGo={onGo}
      />
    </>
  )
}

/** "close of Sand Piece −3 d, crop of Sand Piece −1.2 t": what this change alone moves. */
function EffectWords({
  store,
  found,
  difference,
}: {
  store: Store
  found: Effects | null
  difference: Difference
}) {
  const {document} = useEditor(store)
  const effect = found?.effects.find((one) => one.difference === difference)
  if (!found || !effect) return null
  const told = found.moved.flatMap((one, i) => {
    const by = effect.by[i]
    if (by === null || by === undefined) return []
    const shift = shiftText(by, one.isDate, columnOf(document, one), regionOf(document))
    const name =
      one.cover === "lowest" ? "lowest cover" : loweredName(document, one.at, rowNames(store.workbook))
    return shift === null ? [] : [`${name} ${shift}`]
  })
  return (
    <span className="q"> {told.length ? `moves ${told.slice(0, 4).join(", ")}` : "moves none of them"}</span>
  )
}

/** What the row of a cell says of where it came from. */
function SourceWords({document, at}: {document: Document; at: CellAddress}) {
  const col = sourceColumn(document.sheets[at.sheet]!)
  const source = col < 0 || col === at.col ? null : contentAt(document, {...at, col})
  return typeof source === "string" && !isFormula(source) ? (
    <span className="q">, source: {source}</span>
  ) : null
}

const rest = (all: readonly Difference[], {effects}: Effects) => {
  const told = new Set(effects.map(({difference}) => placeOf(difference)))
  return all.filter((one) => !told.has(placeOf(one)))
}

const toggled = (all: ReadonlySet<string>, one: string): ReadonlySet<string> =>
  new Set(all.has(one) ? [...all].filter((other) => other !== one) : [...all, one])

function contentWords(store: Store, at: CellAddress, content: Content): string {
  if (content === null) return "blank"
  const {document} = store.getState()
  const [column, region] = [cellColumn(document, at), regionOf(document)]
  if (typeof content === "number") return textWithUnit(content, column, false, region)
  const text = readsAs(content, column, isFormula(content) ? content : null, region)
  return text.length > 60 ? `${text.slice(0, 59)}…` : text
}

const valueWords = (document: Document, one: Moved, value: Value) =>
  value === null || value === ""
    ? "blank"
    : textWithUnit(value, columnOf(document, one), one.isDate, regionOf(document))

/** A cover is told in hundredths, wherever it stands. */
function columnOf(document: Document, {at, cover}: Moved) {
  const column = cellColumn(document, at)
  return column && cover === "lowest" ? {...column, format: 2} : column
}

/** Whether the sheet that is open is of the group of the page for the lender: who reads there asks for the cover. */
function isOfMoney(store: Store): boolean {
  const {document, cell} = store.getState()
  const {group} = document.sheets[cell.sheet]!
  return group !== undefined && group === document.sheets[sheetWith(document, "page line")]?.group
}
