import {useEffect, useMemo, useRef, useState, type FormEvent} from "react"
import {dayOf} from "../../functions/calendar"
import {cellColumn} from "../editor/cellColumn"
import {enterContent} from "../editor/commands/cells"
import {textWithUnit} from "../editor/display"
import {yearOf} from "../editor/editing"
import {readEntry} from "../editor/entry"
import {inputsBehind} from "../editor/inputsBehind"
import type {Store} from "../editor/store"
import {cellName, rowNames} from "../editor/words"
import type {WorkBackInput, WorkedBack} from "../studies/workBack"
import {startWorker} from "../studies/startWorker"
import type {CellAddress} from "../workbook/document"
import {columnAt} from "../workbook/extras"
import {regionOf} from "../workbook/region"
import {PanelFrame} from "./PanelFrame"
import {useEditor} from "./useEditor"

/** Finds the input that gives a wanted result, and puts it in when asked to. */
export function WorkBackPanel({store, onClose}: {store: Store; onClose: () => void}) {
  const {document, cell} = useEditor(store)
  const [result, setResult] = useState(cell)
  const [wanted, setWanted] = useState("")
  const [chosen, setChosen] = useState(0)
  const [found, setFound] = useState<WorkedBack | null>(null)
  const [fault, setFault] = useState("")
  const worker = useRef<Worker | null>(null)
  const [isTrying, setTrying] = useState(false)
  const stop = () => {
    worker.current?.terminate()
    worker.current = null
    setTrying(false)
  }
  useEffect(() => stop, [])

  const inputs = useMemo(() => inputsBehind(store.workbook, result), [store, result])
  const input = inputs[chosen] ?? null
  const told = (at: CellAddress, value: Parameters<typeof textWithUnit>[0]) =>
    textWithUnit(value, cellColumn(document, at), store.workbook.isDateAt(at), regionOf(document))
  const name = (at: CellAddress) => {
    const sheet = document.sheets[at.sheet]!
    const own = sheet.names
      ? String(sheet.rows[at.row]?.[0])
      : cellName(document, at, rowNames(store.workbook))
    return `${own}, ${sheet.name}`
  }

  const start = (event: FormEvent) => {
    event.preventDefault()
    setFound(null)
    setFault("")
    const entry = readEntry(wanted, resultColumn(store, result), yearOf(document), () => null, {
      region: regionOf(document),
    })
    const number =
      "content" in entry && typeof entry.content === "string"
        ? dayOf(entry.content)
        : "content" in entry
          ? entry.content
          : null
    if ("refused" in entry || typeof number !== "number")
      return setFault(`${"refused" in entry ? entry.refused : "Type the number or the date that is wanted"}.`)
    if (!input) return
    const {least = null, most = null} = columnAt(document, input)?.rule ?? {}
    const asked: WorkBackInput = {document, input, result, wanted: number, least, most}
    setTrying(true)
    worker.current = startWorker("work back")
    worker.current.addEventListener("message", ({data}: MessageEvent<WorkedBack | null>) => {
      stop()
      if (data) setFound(data)
      else setFault("Nothing could be worked out with another number there.")
    })
    worker.current.addEventListener("error", ({message}) => {
      stop()
      setFault(`It could not be worked back: ${message}.`)
    })
    worker.current.postMessage(asked, [])
  }

  return (
    <PanelFrame title={`Work back: ${name(result)}`} holds="work-back" onClose={onClose}>
      <p>
        Now {told(result, store.valueAt(result))}. Say what it should be, and which number may change.
        {(result.row !== cell.row || result.col !== cell.col || result.sheet !== cell.sheet) && (
          <>
            {" "}
            <button
              className="link"
              onClick={() => {
                setResult(cell)
                setChosen(0)
                setFound(null)
              }}
            >
              Take the chosen cell instead
            </button>
          </>
        )}
      </p>
      {inputs.length === 0 ? (
        <p className="why">This cell rests on no typed number that could change.</p>
      ) : (
        <form onSubmit={start}>
          <label>
            It should be{" "}
            <input value={wanted} size={10} onChange={({currentTarget}) => setWanted(currentTarget.value)} />
          </label>
          <label>
            by changing{" "}
            <select
              value={chosen}
              onChange={({currentTarget}) => {
                setChosen(Number(currentTarget.value))
                setFound(null)
              }}
            >
              {inputs.map((at, i) => (
                <option key={`${at.sheet}:${at.row}:${at.col}`} value={i}>
                  {name(at)}: {told(at, store.valueAt(at))}
                </option>
              ))}
            </select>
          </label>
          {isTrying ? (
            <button type="button" onClick={stop}>
              Stop
            </button>
          ) : (
            <button>Work it back</button>
          )}
        </form>
      )}
      <div aria-live="polite">
        {isTrying && <p>Trying…</p>}
        {fault && <p className="why">{fault}</p>}
        {found && input && (
          <>
            <p>
              {found.isReached
                ? `With ${told(input, tidy(found.input))} it is ${told(result, found.gives)}.`
                : `It does not get there. The nearest found is ${told(result, found.gives)}, with ${told(input, tidy(found.input))}.`}
            </p>
            <button
              onClick={() => {
                store.run(enterContent(input, tidy(found.input)))
                setFound(null)
              }}
            >
              Put {told(input, tidy(found.input))} in
            </button>
          </>
        )}
      </div>
    </PanelFrame>
  )
}

/** Seven digits are more than any number on a farm is known to. */
const tidy = (value: number) => Number(value.toPrecision(7))

/** The column of a result, which takes dates where the result is one. */
function resultColumn(store: Store, at: CellAddress) {
  const {rule: _, ...column} = cellColumn(store.getState().document, at)!
  return store.workbook.isDateAt(at) ? {...column, format: "date" as const} : column
}
