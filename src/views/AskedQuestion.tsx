import {useId, useRef, useState} from "react"
import {answerRather, answerYes, editAgain} from "../editor/editing"
import {choose} from "../editor/selection"
import type {PastePiece, Store} from "../editor/store"
import type {CellAddress} from "../workbook/document"
import {cellText} from "../workbook/formula"
import {useEditor} from "./useEditor"
import {useFirsts} from "./useFirsts"

interface Props {
  store: Store
  /** Told when the question is answered. */
  onDone: () => void
  /** Brings the chosen cell into view. */
  onShow: () => void
}

/** A question that waits for an answer, with links to the cells it speaks of; where it needs a reason, a line for that. */
export function AskedQuestion({store, onDone, onShow}: Props) {
  const {question} = useEditor(store)
  if (!question) return null
  // One frame for each question, so that a reason is not carried over to the next.
  return <Asked key={question.asks} store={store} onDone={onDone} onShow={onShow} />
}

/** What a paste would put in each cell: those that cannot be taken first, then those that read otherwise than they were copied. */
export function PastePreview({pieces}: {pieces: readonly PastePiece[]}) {
  const rank = ({why, copied, reads}: PastePiece) => (why !== null ? 0 : copied !== reads ? 1 : 2)
  const {listed, more} = useFirsts(pieces.toSorted((a, b) => rank(a) - rank(b)))
  return (
    <>
      <div className="preview" tabIndex={0} role="group" aria-label="What would be pasted, can be scrolled">
        <table>
          <thead>
            <tr>
              <th scope="col">Cell</th>
              <th scope="col">as copied</th>
              <th scope="col">read as</th>
            </tr>
          </thead>
          <tbody>
            {listed.map(({at, copied, reads, why}) => (
              <tr key={cellText(at.row, at.col)}>
                <th scope="row">{cellText(at.row, at.col)}</th>
                <td className="n">{copied}</td>
                <td className={why === null ? "n" : "cannot"}>{why ?? reads}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      {more}
    </>
  )
}

function Asked({store, onDone, onShow}: Props) {
  const {asks, yes, links, rather, reasonAt, typed, preview} = useEditor(store).question!
  const [reason, setReason] = useState("")
  const [isMissing, setMissing] = useState(false)
  const id = useId()
  // A link shows a cell while the question waits; after the answer the person is where they were asked.
  const from = useRef<CellAddress | null>(null)
  const look = (at: CellAddress) => {
    from.current ??= store.getState().cell
    store.turn((state) => ({...choose(at)(state), question: state.question}))
    onShow()
  }
  const done = () => {
    if (from.current) store.turn(choose(from.current))
    const {editing, question} = store.getState() // what was read anew may be refused, or asked about
    if (!editing && !question) onDone()
  }
  const leave = () => {
    store.turn(() => ({question: null, said: "Unchanged."}))
    done()
  }
  const keep = () => {
    if (reasonAt && reason.trim() === "") {
      setMissing(true)
      return
    }
    answerYes(store, reason.trim())
    done()
  }
  return (
    <div
      className="note"
      role="alertdialog"
      aria-labelledby={id}
      onKeyDown={(event) => {
        if (event.key !== "Escape") return
        event.stopPropagation()
        leave()
      }}
    >
      <p id={id}>{asks}</p>
      {preview && <PastePreview pieces={preview} />}
      {links && links.length > 0 && (
        <ul className="links">
          {links.map(({at, words}) => (
            <li key={words}>
              <button className="plain" onClick={() => look(at)}>
                {words}
              </button>
            </li>
          ))}
        </ul>
      )}
      <div className="acts">
        {rather && (
          <button
            className="chief"
            autoFocus
            onClick={() => {
              answerRather(store)
              done()
            }}
          >
            {rather.words}
          </button>
        )}
        {!reasonAt && (
          <button className={rather ? undefined : "chief"} autoFocus={!rather} onClick={keep}>
            {yes}
          </button>
        )}
        {typed !== undefined && <button onClick={() => store.turn(editAgain(typed))}>Change it</button>}
        <button onClick={leave}>Leave it</button>
      </div>
      {reasonAt && (
        <form
          className="reason"
          onSubmit={(event) => {
            event.preventDefault()
            keep()
          }}
        >
          <label>
            Reason{" "}
            <input
              value={reason}
              autoFocus={!rather}
              aria-invalid={isMissing}
              onChange={({currentTarget}) => {
                setReason(currentTarget.value)
                setMissing(false)
              }}
            />
          </label>
          <button>{yes}</button>
          <p className="why" aria-live="polite">
            {isMissing && "A reason is needed: it is kept as a note on the cell, and listed in Checks."}
          </p>
        </form>
      )}
    </div>
  )
}
