import {useEffect, useState, useSyncExternalStore, type FormEvent} from "react"
import {dayOf} from "../../functions/calendar"
import {bringNotes} from "../editor/commands/notes"
import {dateText} from "../editor/display"
import {chooseKeeping} from "../editor/editing"
import type {Store} from "../editor/store"
import {isoDate, isoTime} from "../workbook/clock"
import {sharedCopy} from "../workbook/copies"
import type {Document} from "../workbook/document"
import {Comparison, type Compared} from "./Comparison"
import type {KeptVersion, Keeping, Replaced} from "./keeping"
import {PanelFrame} from "./PanelFrame"
import {useEditor} from "./useEditor"

interface Props {
  store: Store
  keeping: Keeping
  onClose: () => void
  onGo: () => void
}

/** Versions that were kept on purpose: keeps one, goes back to one, and says what changed since and what that moved. */
export function VersionsPanel({store, keeping, onClose, onGo}: Props) {
  const {document} = useEditor(store)
  const [versions, setVersions] = useState<readonly KeptVersion[]>([])
  const [other, setOther] = useState<Compared | null>(null)
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

  const keep = async (version: Pick<KeptVersion, "name" | "by" | "reason" | "byItself">) => {
    const refused = await keeping.versions.keep(
      {...version, workbook: name, at: new Date()},
      store.getState().document,
    )
    setSaid(refused ? `${refused.refused}.` : `The version “${version.name}” is kept on this device.`)
    refresh()
    return refused === null
  }
  const keepBefore = ({words}: Compared) => keep({name: `before taking from ${words}`, by: "", ...BY_ITSELF})
  const take = async ({id, name: words, at, by, copy}: KeptVersion): Promise<Compared | null> => {
    const taken = await keeping.versions.take(id)
    if ("refused" in taken) setSaid(`${taken.refused}.`)
    if ("refused" in taken) return null
    const kept = copy === undefined ? keptWords(at, by) : copyWords(taken.document)
    return {words, document: taken.document, kept, began: null, sides: null}
  }
  const goBack = async (version: KeptVersion) => {
    const taken = await take(version)
    if (taken) await goBackTo(taken.document, version.name, version.by)
  }
  const goBackTo = async (document: Document, words: string, by: string) => {
    await keep({name: `before going back to ${words}`, by, ...BY_ITSELF})
    store.open(document)
    keeping.settleReplaced()
    setOther(null)
  }
  const drop = async ({id}: KeptVersion) => {
    const refused = await keeping.versions.drop(id)
    setSaid(refused ? `${refused.refused}.` : "")
    refresh()
  }
  const compareWithCopy = async () => {
    const copy = await keeping.readFileCopy()
    if (copy && "refused" in copy) setSaid(`${copy.refused}.`)
    else if (copy) setOther(await comparedCopy(keeping, name, copy))
  }
  const replaced = useSyncExternalStore(keeping.subscribe, keeping.replaced)
  useEffect(() => {
    if (!replaced) return
    let isHere = true
    void keeping.versions.of(replaced.document.name).then((found) => isHere && setVersions(found))
    void comparedReplaced(keeping, replaced).then((compared) => isHere && setOther(compared))
    return () => {
      isHere = false
    }
  }, [keeping, replaced])
  const close = () => {
    keeping.settleReplaced()
    onClose()
  }
  const isOfReplaced = other !== null && other.document === replaced?.document
  const comparison = other && (
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
  )
  return (
    <PanelFrame title="Versions" holds="versions-panel" onClose={close}>
      {replaced && isOfReplaced && (
        <>
          <p>
            {replaced.file} is open as it is. Take below what is to be as it was here, or go back to all of
            it.
          </p>
          <div className="acts">
            <button onClick={() => void goBackTo(other.document, other.words, "")}>
              Go back to what was open here
            </button>
            <button onClick={close}>Leave all as in {replaced.file}</button>
          </div>
          {comparison}
        </>
      )}
      <KeepForm signed={versions[0]?.by ?? ""} onKeep={keep} />
      <p className="why" aria-live="polite">
        {said}
      </p>
      {versions.length === 0 ? (
        <p className="q">
          No version of {name} is kept on this device yet. What is saved by itself is another matter.
        </p>
      ) : (
        <p className="small q">
          A version that you keep stays until you drop it. Of those kept by itself, before an act or for a
          file copy, the last {keeping.versions.keptByItself} stay.
        </p>
      )}
      {versions.length > 0 && (
        <ul className="versions">
          {versions.map((version) => (
            <li key={version.id}>
              <b>{version.name}</b>{" "}
              <span className="q">
                {atWords(version.at)}
                {version.by && `, ${version.by}`}
                {version.reason && `: ${version.reason}`}
              </span>
              <span className="acts">
                <button onClick={() => void take(version).then((taken) => taken && setOther(taken))}>
                  Compare with now
                </button>
                <button onClick={() => void goBack(version)}>Go back to it</button>
                <button onClick={() => void drop(version)}>Drop it</button>
              </span>
            </li>
          ))}
        </ul>
      )}
      <button onClick={() => void compareWithCopy()}>Compare with a file copy</button>
      {!isOfReplaced && comparison}
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

/** A file copy beside what is open. */
async function comparedCopy(
  keeping: Keeping,
  workbook: string,
  {name: words, document}: {name: string; document: Document},
): Promise<Compared> {
  const began = await begunFrom(keeping, workbook, document)
  return {
    words,
    document,
    kept: copyWords(document),
    began: began && {...began, there: copyUntil(document), here: `until now, ${byWords(began.own)}`},
    sides: {there: "there", here: "here"},
  }
}

/** What a file copy took the place of, beside that copy. */
async function comparedReplaced(
  keeping: Keeping,
  {file, opened, document, changed}: Replaced,
): Promise<Compared> {
  const began = await begunFrom(keeping, document.name, opened)
  return {
    words: "what was open here",
    document,
    kept: `What was open here was changed ${atWords(changed)}. ${file}: ${copyWords(opened)}`,
    began: began && {
      ...began,
      there: `until ${atWords(changed)}, ${byWords(began.own)}`,
      here: copyUntil(opened),
    },
    sides: {there: "in what was open", here: `in ${file}`},
  }
}

/** The state that a file copy and the workbook of this device both began from, and who signs here; null where it is not at hand. */
async function begunFrom({versions}: Keeping, workbook: string, copy: Document) {
  const found = await versions.of(workbook)
  const shared = sharedCopy(copy, new Set(found.flatMap(({copy}) => copy ?? [])))
  const version = shared === null ? undefined : found.find(({copy}) => copy === shared)
  const taken = version && (await versions.take(version.id))
  if (!taken || "refused" in taken) return null
  const own = found.find((one) => one.by !== "")?.by // the latest is the first
  return {words: version.name, document: taken.document, own}
}

const copyUntil = ({copy}: Document) => `until ${atWords(new Date(copy!.kept))}, ${byWords(copy!.by)}`

const BY_ITSELF = {reason: "kept by itself", byItself: true} as const

/** "Kept 25 May 2026, 14:02, by RT." */
const keptWords = (at: Date, by: string) => `Kept ${atWords(at)}, ${byWords(by)}.`

/** "25 May 2026, 14:02" */
const atWords = (at: Date) => `${dateText(dayOf(isoDate(at))!)}, ${isoTime(at)}`

const byWords = (by = "") => `by ${by || "whom is not known"}`

const copyWords = ({copy}: Document) =>
  copy ? keptWords(new Date(copy.kept), copy.by ?? "") : "When it was kept, and by whom, is not known."
