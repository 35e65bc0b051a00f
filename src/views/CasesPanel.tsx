import {useEffect, useState, type FormEvent} from "react"
import {
  addCase,
  caseNameRefused,
  compareBy,
  putInCase,
  removeCase,
  takeFromCase,
  putCaseIn,
} from "../editor/commands/cases"
import {cellColumn} from "../editor/cellColumn"
import {differenceText, textWithUnit} from "../editor/display"
import {chooseKeeping, readFor} from "../editor/editing"
import {readsAs} from "../editor/entry"
import type {Store} from "../editor/store"
import {cellName, loweredName, rowNames} from "../editor/words"
import {caseCells, type Compared} from "../studies/cases"
import {startWorker} from "../studies/startWorker"
import {addressText, formulaIn} from "../workbook/cells"
import {contentAt, isSameCell, type CellAddress, type Document} from "../workbook/document"
import {cellsWith, extraAt} from "../workbook/extras"
import {regionOf} from "../workbook/region"
import {isFault, type Value} from "../workbook/value"
import {PanelFrame} from "./PanelFrame"
import {useEditor} from "./useEditor"

interface Props {
  store: Store
  onClose: () => void
  onGo: () => void
}

/** Cases side by side: what each changes, and what follows from it. */
export function CasesPanel({store, onClose, onGo}: Props) {
  const {document, cell} = useEditor(store)
  const names = document.cases ?? []
  const rowName = rowNames(store.workbook)
  const changed = cellsWith(document, ({cases}) => cases).map(({at}) => at)
  const [said, setSaid] = useState("")
  const compared = useCompared(document)
  const moving = (compared ?? []).filter(({now, inCases}) => inCases.some((value) => !isAlike(value, now)))
  const staying = (compared?.length ?? 0) - moving.length
  const go = (at: CellAddress) => {
    if (chooseKeeping(store, at)) onGo()
  }
  const canTake = cell.row < document.sheets[cell.sheet]!.rows.length && formulaIn(document, cell) === null
  const isCompared = extraAt(document, cell)?.compared ?? false
  return (
    <PanelFrame title="Cases" holds="cases-panel" onClose={onClose}>
      <p>
        A case is a name for other inputs. The workbook stays as it is; each case says what it would give.
      </p>
      <NewCase store={store} onSaid={setSaid} />
      {names.length > 0 && (
        <>
          <div className="acts">
            {canTake && !changed.some((at) => isSameCell(at, cell)) && (
              <button
                onClick={() => store.run(putInCase(names.at(-1)!, cell, contentAt(document, cell), rowName))}
              >
                Change {loweredName(document, cell, rowName)} in cases
              </button>
            )}
            {!canTake && (
              <button aria-pressed={isCompared} onClick={() => store.run(compareBy(cell, rowName))}>
                Compare {loweredName(document, cell, rowName)}
              </button>
            )}
          </div>
          <div className="scroll" tabIndex={0} role="group" aria-label="Cases side by side, can be scrolled">
            <table>
              <thead>
                <tr>
                  <th scope="col">What changes</th>
                  <th scope="col">now</th>
                  {names.map((name) => (
                    <th key={name} scope="col">
                      {name}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {changed.length === 0 && (
                  <tr>
                    <td colSpan={names.length + 2} className="q">
                      Nothing yet: choose a typed cell on a sheet, then change it here.
                    </td>
                  </tr>
                )}
                {changed.map((at) => (
                  <tr key={addressText(document, at)}>
                    <th scope="row">
                      <CellLink store={store} at={at} onGo={go} />
                    </th>
                    <td>{shown(store, at, store.valueAt(at))}</td>
                    {names.map((name) => (
                      <td key={name}>
                        <CaseField store={store} name={name} at={at} onSaid={setSaid} />
                      </td>
                    ))}
                  </tr>
                ))}
              </tbody>
              <tbody aria-busy={compared === null}>
                <tr>
                  <th scope="col">What it gives</th>
                  <td colSpan={names.length + 1} className="q">
                    {compared === null && "working it out …"}
                  </td>
                </tr>
                {moving.map(({at, isDate, now, inCases}) => (
                  <tr key={addressText(document, at)}>
                    <th scope="row">
                      <CellLink store={store} at={at} onGo={go} />
                    </th>
                    <td>{shown(store, at, now, isDate)}</td>
                    {inCases.map((value, i) => (
                      <td key={names[i]}>
                        {shown(store, at, value, isDate)}
                        <Difference store={store} at={at} now={now} value={value} isDate={isDate} />
                      </td>
                    ))}
                  </tr>
                ))}
                {compared && staying > 0 && (
                  <tr>
                    <td colSpan={names.length + 2} className="q">
                      {staying}{" "}
                      {moving.length > 0 ? "more stay" : staying === 1 ? "result stays" : "results stay"} as
                      now in every case.
                    </td>
                  </tr>
                )}
              </tbody>
            </table>
          </div>
          <ul className="case-acts">
            {names.map((name) => (
              <li key={name}>
                {name}:{" "}
                <button
                  disabled={caseCells(document, name).length === 0}
                  onClick={() => store.run(putCaseIn(name))}
                >
                  Put it into the workbook
                </button>{" "}
                <button onClick={() => store.run(removeCase(name))}>Drop it</button>
              </li>
            ))}
          </ul>
        </>
      )}
      <p className="why" aria-live="polite">
        {said}
      </p>
    </PanelFrame>
  )
}

/** What the cases give; null while it is being worked out, by a worker that is let go when something changes. */
function useCompared(document: Document): readonly Compared[] | null {
  const [done, setDone] = useState<{readonly of: Document; readonly compared: readonly Compared[]} | null>(
    null,
  )
  const hasCases = (document.cases ?? []).length > 0
  useEffect(() => {
    if (!hasCases) return
    const worker = startWorker("cases")
    worker.addEventListener("message", ({data}: MessageEvent<readonly Compared[]>) =>
      setDone({of: document, compared: data}),
    )
    worker.postMessage(document, [])
    return () => worker.terminate()
  }, [document, hasCases])
  return done?.of === document ? done.compared : null
}

function NewCase({store, onSaid}: {store: Store; onSaid: (words: string) => void}) {
  const {document} = useEditor(store)
  const [name, setName] = useState("")
  const add = (event: FormEvent) => {
    event.preventDefault()
    const refused = caseNameRefused(document, name.trim())
    onSaid(refused ? `${refused}.` : "")
    if (refused === null && store.run(addCase(name.trim()))) setName("")
  }
  return (
    <form onSubmit={add}>
      <label>
        Name of a new case{" "}
        <input value={name} size={14} onChange={({currentTarget}) => setName(currentTarget.value)} />
      </label>{" "}
      <button>Begin it</button>
    </form>
  )
}

/** What a cell holds in a case; emptied, the case leaves the cell as it is. */
function CaseField({
  store,
  name,
  at,
  onSaid,
}: {
  store: Store
  name: string
  at: CellAddress
  onSaid: (words: string) => void
}) {
  const {document} = useEditor(store)
  const rowName = rowNames(store.workbook)
  const held = caseCells(document, name).find((one) => isSameCell(one.at, at))
  const reads = held ? readsAs(held.content, cellColumn(document, at), null, regionOf(document)) : ""
  const [typed, setTyped] = useState<string | null>(null)
  const keep = () => {
    if (typed === null || typed === reads) return setTyped(null)
    if (typed.trim() === "") {
      store.run(takeFromCase(name, at, rowName))
      onSaid("")
      return setTyped(null)
    }
    const entry = readFor(store, at, typed)
    onSaid("refused" in entry ? `${entry.refused}.` : "")
    if ("refused" in entry) return
    store.run(putInCase(name, at, entry.content, rowName))
    setTyped(null)
  }
  return (
    <input
      aria-label={`${cellName(document, at, rowName)} in case ${name}`}
      placeholder="as now"
      size={8}
      value={typed ?? reads}
      onChange={({currentTarget}) => setTyped(currentTarget.value)}
      onBlur={keep}
      onKeyDown={(event) => {
        if (event.key === "Enter") keep()
        if (event.key !== "Escape" || typed === null) return
        event.stopPropagation() // it drops what is typed; the next one puts the panel away
        setTyped(null)
      }}
    />
  )
}

/** How far a number, or a date in days, lies from where it is now. */
function Difference({
  store,
  at,
  now,
  value,
  isDate,
}: {
  store: Store
  at: CellAddress
  now: Value
  value: Value
  isDate: boolean
}) {
  const {document} = useEditor(store)
  if (typeof now !== "number" || typeof value !== "number" || now === value) return null
  const apart = value - now
  const size = isDate
    ? `${Math.abs(apart)} d`
    : differenceText(apart, cellColumn(document, at), regionOf(document))
  return <span className="q"> {`${apart > 0 ? "+" : "\u2212"}${size}`}</span>
}

function CellLink({store, at, onGo}: {store: Store; at: CellAddress; onGo: (at: CellAddress) => void}) {
  const {document} = useEditor(store)
  const sheet = document.sheets[at.sheet]!
  const name = sheet.names
    ? String(sheet.rows[at.row]?.[0])
    : cellName(document, at, rowNames(store.workbook))
  return (
    <button className="link" title={sheet.name} onClick={() => onGo(at)}>
      {name}
      <span className="hide">, {sheet.name}</span>
    </button>
  )
}

function shown(store: Store, at: CellAddress, value: Value, isDate = store.workbook.isDateAt(at)): string {
  if (value === null) return "blank"
  const {document} = store.getState()
  return textWithUnit(value, cellColumn(document, at), isDate, regionOf(document))
}

const isAlike = (a: Value, b: Value) => a === b || (isFault(a) && isFault(b) && a.code === b.code)
