import {useEffect, useState, type FormEvent} from "react"
import {dayOf} from "../../functions/calendar"
import {bringNotes} from "../editor/commands/notes"
import {dateText} from "../editor/display"
import {chooseKeeping} from "../editor/editing"
import type {Store} from "../editor/store"
import {isoDate, isoTime} from "../workbook/clock"
import {sharedCopy} from "../workbook/copies"
import type {Document} from "../workbook/document"
import {Comparison, type Began, type Compared} from "./Comparison"
import type {KeptVersion, Keeping} from "./keeping"
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
    return {words, document: taken.document, kept, began: null, isCopy: false}
  }
  const goBack = async (version: KeptVersion) => {
    const taken = await take(version)
    if (!taken) return
    await keep({name: `before going back to ${version.name}`, by: version.by, ...BY_ITSELF})
    store.open(taken.document)
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
    else if (copy) {
      const {name: words, document: there} = copy
      setOther({words, document: there, kept: copyWords(there), began: await begunFrom(there), isCopy: true})
    }
  }
  const begunFrom = async (there: Document): Promise<Began | null> => {
    const found = await keeping.versions.of(name)
    const shared = sharedCopy(there, new Set(found.flatMap(({copy}) => copy ?? [])))
    const version = shared === null ? undefined : found.find(({copy}) => copy === shared)
    const taken = version && (await keeping.versions.take(version.id))
    if (!taken || "refused" in taken) return null
    const {by, kept} = there.copy!
    const own = found.find((one) => one.by !== "")?.by // the latest is the first
    return {
      words: version.name,
      document: taken.document,
      there: `until ${atWords(new Date(kept))}, ${byWords(by)}`,
      here: `until now, ${byWords(own)}`,
    }
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
                {dateText(dayOf(isoDate(version.at))!)}
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

const BY_ITSELF = {reason: "kept by itself", byItself: true} as const

/** "Kept 25 May 2026, 14:02, by RT." */
const keptWords = (at: Date, by: string) => `Kept ${atWords(at)}, ${byWords(by)}.`

/** "25 May 2026, 14:02" */
const atWords = (at: Date) => `${dateText(dayOf(isoDate(at))!)}, ${isoTime(at)}`

const byWords = (by = "") => `by ${by || "whom is not known"}`

const copyWords = ({copy}: Document) =>
  copy ? keptWords(new Date(copy.kept), copy.by ?? "") : "When it was kept, and by whom, is not known."
