import {useEffect, useMemo, useState, type FormEvent} from "react"
import {cellColumn} from "../editor/cellColumn"
import {dateText, shiftText, textWithUnit} from "../editor/display"
import {chooseKeeping} from "../editor/editing"
import {readsAs} from "../editor/entry"
import type {Store} from "../editor/store"
import {cellName} from "../editor/words"
import type {Effects, Moved} from "../studies/effects"
import type {EffectsInput} from "../studies/effectsWorker"
import {startWorker} from "../studies/startWorker"
import {addressText} from "../workbook/cells"
import {bringNotes} from "../editor/commands/notes"
import {compare, sidesOf, type Difference, type NoteDifference, type Side} from "../workbook/compare"
import {sharedCopy} from "../workbook/copies"
import {isFormula, type CellAddress, type Content, type Document} from "../workbook/document"
import {dayOf} from "../../functions/calendar"
import {isoDate} from "../workbook/clock"
import {regionOf} from "../workbook/region"
import type {Value} from "../workbook/value"
import type {KeptVersion, Keeping} from "./keeping"
import {NoteWords} from "./NotePanel"
import {PanelFrame} from "./PanelFrame"
import {useEditor} from "./useEditor"

interface Props {
  store: Store
  keeping: Keeping
  onClose: () => void
  onGo: () => void
}

/** The state that the workbook is compared with: a version kept here, or a copy in a file. */
interface Other {
  readonly words: string
  readonly document: Document
  /** "Kept 25 May 2026 by RT", as far as it is known. */
  readonly kept: string
  /** The state that a file copy and this workbook both began from, where it is at hand. */
  readonly began: {readonly words: string; readonly document: Document} | null
  readonly isCopy: boolean
}

/** Versions that were kept on purpose: keeps one, goes back to one, and says what changed since and what that moved. */
export function VersionsPanel({store, keeping, onClose, onGo}: Props) {
  const {document} = useEditor(store)
  const [versions, setVersions] = useState<readonly KeptVersion[]>([])
  const [other, setOther] = useState<Other | null>(null)
  const [said, setSaid] = useState("")
  const {name} = document
  const refresh = () => void keeping.versions.of(name).then(setVersions)
  useEffect(() => {
    let isHere = true
    void keeping.versions.of(name).then((found) => isHere && setVersions(found))
    return () => {
      isHere = false
    }
  }, [keeping, name])

  const keep = async (version: {name: string; by: string; reason: string}) => {
    const refused = await keeping.versions.keep(
      {...version, workbook: name, at: new Date()},
      store.getState().document,
    )
    setSaid(refused ? `${refused.refused}.` : `The version “${version.name}” is kept on this device.`)
    refresh()
    return refused === null
  }
  const keepBefore = ({words}: Other) =>
    keep({name: `before taking from ${words}`, by: "", reason: "kept by itself"})
  const take = async ({id, name: words, at, by, copy}: KeptVersion): Promise<Other | null> => {
    const taken = await keeping.versions.take(id)
    if ("refused" in taken) setSaid(`${taken.refused}.`)
    if ("refused" in taken) return null
    const kept = copy === undefined ? keptWords(at, by) : copyWords(taken.document)
    return {words, document: taken.document, kept, began: null, isCopy: false}
  }
  const goBack = async (version: KeptVersion) => {
    const taken = await take(version)
    if (!taken) return
    await keep({name: `before going back to ${version.name}`, by: version.by, reason: "kept by itself"})
    store.open(taken.document)
    setOther(null)
  }
  const compareWithCopy = async () => {
    const copy = await keeping.readFileCopy()
    if (copy && "refused" in copy) setSaid(`${copy.refused}.`)
    else if (copy) {
      const {name: words, document: there} = copy
      setOther({words, document: there, kept: copyWords(there), began: await begunFrom(there), isCopy: true})
    }
  }
  const begunFrom = async (there: Document) => {
    const found = await keeping.versions.of(name)
    const shared = sharedCopy(there, new Set(found.flatMap(({copy}) => copy ?? [])))
    const version = shared === null ? undefined : found.find(({copy}) => copy === shared)
    const taken = version && (await keeping.versions.take(version.id))
    return taken && "document" in taken ? {words: version.name, document: taken.document} : null
  }
  return (
    <PanelFrame title="Versions" holds="versions-panel" onClose={onClose}>
      <KeepForm signed={versions[0]?.by ?? ""} onKeep={keep} />
      <p className="why" aria-live="polite">
        {said}
      </p>
      {versions.length === 0 ? (
        <p className="q">
          No version of {name} is kept on this device yet. What is saved by itself is another matter.
        </p>
      ) : (
        <ul className="versions">
          {versions.map((version) => (
            <li key={version.id}>
              <b>{version.name}</b>{" "}
              <span className="q">
                {dateText(dayOf(isoDate(version.at))!)}
                {version.by && `, ${version.by}`}
                {version.reason && `: ${version.reason}`}
              </span>
              <span className="acts">
                <button onClick={() => void take(version).then((taken) => taken && setOther(taken))}>
                  Compare with now
                </button>
                <button onClick={() => void goBack(version)}>Go back to it</button>
                <button onClick={() => void keeping.versions.drop(version.id).then(refresh)}>Drop it</button>
              </span>
            </li>
          ))}
        </ul>
      )}
      <button onClick={() => void compareWithCopy()}>Compare with a file copy</button>
      {other && (
        <Comparison
          key={other.words}
          store={store}
          other={other}
          onGo={(at) => chooseKeeping(store, at) && onGo()}
          onTake={(differences) =>
            void keepBefore(other).then(() => {
              const cells = differences.map(({now, before}) => ({at: now!, content: before}))
              store.run(() => ({type: "enter", cells, name: `${cells.length} taken from ${other.words}`}))
            })
          }
          onBring={(notes) => void keepBefore(other).then(() => store.run(bringNotes(notes, other.words)))}
        />
      )}
    </PanelFrame>
  )
}

function KeepForm({
  signed,
  onKeep,
}: {
  signed: string
  onKeep: (version: {name: string; by: string; reason: string}) => Promise<boolean>
}) {
  const [name, setName] = useState("")
  const [by, setBy] = useState<string | null>(null)
  const [reason, setReason] = useState("")
  const keep = (event: FormEvent) => {
    event.preventDefault()
    if (name.trim() === "") return
    void onKeep({name: name.trim(), by: (by ?? signed).trim(), reason: reason.trim()}).then((kept) => {
      if (!kept) return
      setName("")
      setReason("")
    })
  }
  return (
    <form onSubmit={keep} className="keep-version">
      <label>
        Name <input required value={name} onChange={({currentTarget}) => setName(currentTarget.value)} />
      </label>
      <label>
        Signed{" "}
        <input size={8} value={by ?? signed} onChange={({currentTarget}) => setBy(currentTarget.value)} />
      </label>
      <label>
        Reason <input value={reason} onChange={({currentTarget}) => setReason(currentTarget.value)} />
      </label>
      <button className="chief">Keep this version</button>
    </form>
  )
}

/** What changed since another state, and what it moved: the change that moves most first. */
function Comparison({
  store,
  other,
  onGo,
  onTake,
  onBring,
}: {
  store: Store
  other: Other
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
  const ranked = found
    ? [...found.effects.map(({difference}) => difference), ...rest(compared.cells, found)]
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
  return (
    <section aria-label={`What changed since ${other.words}`}>
      <h3>Since {other.words}</h3>
      <p className="q">
        {other.kept}
        {other.began && ` Both began from ${other.began.words}.`}
        {other.isCopy &&
          !other.began &&
          " The state that both began from is not at hand here, so it is not known on which side a cell was changed."}
      </p>
      {Object.values(compared).every(({length}) => length === 0) ? (
        <p>Nothing differs.</p>
      ) : (
        <>
          <Results store={store} found={found} onGo={onGo} />
          <h4>What changed</h4>
          <ul className="changes">
            {listed.slice(0, MOST_LISTED).map((one) => (
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
                  {sideOf && <span className="q">; {sideWords(store, one, sideOf(one))}.</span>}
                  <EffectWords store={store} found={found} difference={one} />
                </span>
              </li>
            ))}
          </ul>
          {listed.length > MOST_LISTED && <p className="q">and {listed.length - MOST_LISTED} more</p>}
          {compared.added.length > 0 && (
            <p>
              {other.isCopy ? "Only here" : "Added"}: {compared.added.slice(0, 12).join(", ")}.
            </p>
          )}
          {compared.removed.length > 0 && (
            <p>
              {other.isCopy ? "Only there" : "Gone"}: {compared.removed.slice(0, 12).join(", ")}.
            </p>
          )}
          <button disabled={chosen.length === 0} onClick={() => onTake(chosen)}>
            Take {chosen.length} as in {other.words}
          </button>
          {changedThere.length > 0 && (
            <button onClick={() => onTake(changedThere)}>
              Take all {changedThere.length} changed there alone
            </button>
          )}
          {compared.notes.length > 0 && (
            <TheirNotes store={store} notes={compared.notes} onGo={onGo} onBring={onBring} />
          )}
        </>
      )}
    </section>
  )
}

const MOST_LISTED = 60

/** What the other side did comes first, then what has to be decided. */
const SIDES: readonly Side["side"][] = ["there", "both", "here"]

function sideWords(store: Store, {now}: Difference, {side, began}: Side): string {
  if (side === "both") return `changed on both sides, both began from ${contentWords(store, now!, began)}`
  return side === "here" ? "changed here alone" : "changed there alone"
}

/** "Kept 25 May 2026, 14:02, by RT." */
const keptWords = (at: Date, by: string) =>
  `Kept ${dateText(dayOf(isoDate(at))!)}, ${clock(at)}, by ${by || "whom is not known"}.`

const clock = (at: Date) =>
  [at.getHours(), at.getMinutes()].map((part) => String(part).padStart(2, "0")).join(":")

const copyWords = ({copy}: Document) =>
  copy ? keptWords(new Date(copy.kept), copy.by ?? "") : "When it was kept, and by whom, is not known."

/** Names of cells, with the row where another one of the list has the same: ten samples are "Sugar of Long Acre". */
function namesOf(document: Document, listed: readonly Difference[]): (one: Difference) => string {
  const counts = new Map<string, number>()
  const plain = ({now}: Difference) => (now ? cellName(document, now) : "")
  for (const one of listed) counts.set(plain(one), (counts.get(plain(one)) ?? 0) + 1)
  return (one) => plain(one) + (counts.get(plain(one))! > 1 ? ` in row ${one.now!.row + 1}` : "")
}

/** The notes of the other state that are not here, to be put beside one's own. */
function TheirNotes({
  store,
  notes,
  onGo,
  onBring,
}: {
  store: Store
  notes: readonly NoteDifference[]
  onGo: (at: CellAddress) => void
  onBring: (notes: readonly NoteDifference[]) => void
}) {
  const {document} = useEditor(store)
  return (
    <>
      <h4>Notes there that are not here</h4>
      <ul className="changes">
        {notes.map(({now, before, after}) => (
          <li key={addressText(document, now)}>
            <span>
              <button className="link" onClick={() => onGo(now)}>
                {cellName(document, now)}, {document.sheets[now.sheet]!.name}
              </button>
              : <NoteWords note={before} />
              {after && <span className="q">; yours stays above it</span>}
            </span>
          </li>
        ))}
      </ul>
      <button onClick={() => onBring(notes)}>
        {notes.length === 1 ? "Bring in the note" : `Bring in ${notes.length} notes`}
      </button>
    </>
  )
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
                {resultName(store, one.at)}
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

/** "Cover of 2027": the name of a row may be worked out. */
function resultName(store: Store, at: CellAddress): string {
  const {document} = store.getState()
  const [first, {heading}] = [{...at, col: 0}, document.sheets[at.sheet]!.columns[at.col]!]
  const key = store.valueAt(first)
  const isPlain = (typeof key === "string" && key !== "") || typeof key === "number"
  return at.col > 0 && isPlain && !store.workbook.isDateAt(first)
    ? `${heading} of ${key}`
    : cellName(document, at)
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
    const shift = shiftText(by, one.isDate, cellColumn(document, one.at), regionOf(document))
    return shift === null
      ? []
      : [`${resultName(store, one.at).replace(/^./, (letter) => letter.toLowerCase())} ${shift}`]
  })
  return (
    <span className="q"> {told.length ? `moves ${told.slice(0, 4).join(", ")}` : "moves none of them"}</span>
  )
}

/** What moved between two states, from a worker that is let go when either changes. */
function useEffects(before: Document, after: Document, differences: readonly Difference[]): Effects | null {
  const [done, setDone] = useState<{readonly of: Document; readonly found: Effects} | null>(null)
  useEffect(() => {
    const worker = startWorker("effects")
    worker.addEventListener("message", ({data}: MessageEvent<Effects>) => setDone({of: after, found: data}))
    const input: EffectsInput = {before, after, differences}
    worker.postMessage(input, [])
    return () => worker.terminate()
  }, [before, after, differences])
  if (done?.of !== after) return null
  // The worker gives copies of the differences: the very ones are put back, so that they can be found again.
  const own = new Map(differences.map((one) => [placeOf(one), one]))
  return {
    ...done.found,
    effects: done.found.effects.map((one) => ({
      ...one,
      difference: own.get(placeOf(one.difference)) ?? one.difference,
    })),
  }
}

const rest = (all: readonly Difference[], {effects}: Effects) => {
  const told = new Set(effects.map(({difference}) => placeOf(difference)))
  return all.filter((one) => !told.has(placeOf(one)))
}

const placeOf = ({now, was}: Difference) => JSON.stringify(now ?? was)

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

const valueWords = (document: Document, {at, isDate}: Moved, value: Value) =>
  value === null ? "blank" : textWithUnit(value, cellColumn(document, at), isDate, regionOf(document))
