import {useRef, useState, type FormEvent, type KeyboardEvent} from "react"
import {keepNote, settleNote} from "../editor/commands/notes"
import {dateText} from "../editor/display"
import {chooseKeeping} from "../editor/editing"
import type {Store} from "../editor/store"
import {cellName, loweredName, rowNames} from "../editor/words"
import {dayOf} from "../../functions/calendar"
import {isoDate} from "../workbook/clock"
import {addressText} from "../workbook/cells"
import {isSameCell, type CellAddress, type Document, type Note} from "../workbook/document"
import {extraAt, notesIn} from "../workbook/extras"
import {PanelFrame} from "./PanelFrame"
import {useEditor} from "./useEditor"

interface Props {
  store: Store
  onClose: () => void
  onGo: () => void
}

/** The note on the chosen cell, and all notes of the workbook. */
export function NotePanel({store, onClose, onGo}: Props) {
  const {document, cell} = useEditor(store)
  const notes = notesIn(document)
  const rowName = rowNames(store.workbook)
  const isNext = cell.row >= document.sheets[cell.sheet]!.rows.length
  const go = (at: CellAddress) => {
    if (chooseKeeping(store, at)) onGo()
  }
  return (
    <PanelFrame title={`Note: ${loweredName(document, cell, rowName)}`} holds="note-panel" onClose={onClose}>
      {isNext ? (
        <p>The next row to fill: type in it first, then write a note on it.</p>
      ) : (
        <Writing
          key={`${cell.sheet}:${cell.row}:${cell.col}`}
          store={store}
          at={cell}
          signed={lastSigned(document)}
        />
      )}
      <h3>
        {notes.length === 0 ? "No notes in this workbook yet" : `Notes in this workbook: ${notes.length}`}
      </h3>
      <ul className="notes">
        {notes.map(({at, found: note}) => (
          <li key={addressText(document, at)}>
            <button
              className="link"
              aria-current={isSameCell(at, cell) ? "true" : undefined}
              onClick={() => go(at)}
            >
              {cellName(document, at, rowName)}, {document.sheets[at.sheet]!.name}
            </button>{" "}
            <NoteWords note={note} />
          </li>
        ))}
      </ul>
    </PanelFrame>
  )
}

/** What a note says, who wrote it and when. */
export function NoteWords({note}: {note: Note}) {
  const day = dayOf(isoDate(new Date(note.written)))
  const signed = [note.by, day !== null && dateText(day), note.settled && "settled"]
    .filter(Boolean)
    .join(", ")
  return (
    <>
      <span className="note-text">{note.text}</span> <span className="q">{signed}</span>
    </>
  )
}

function Writing({store, at, signed}: {store: Store; at: CellAddress; signed: string}) {
  const {document} = useEditor(store)
  const note = extraAt(document, at)?.note
  // What is typed holds for the note as it is: once that changes, or goes back, the fields show it.
  const [typed, setTyped] = useState<{of: Note | undefined; text?: string; by?: string}>({of: note})
  const {text = note?.text ?? "", by = note?.by ?? signed} = typed.of === note ? typed : {}
  const [said, setSaid] = useState("")
  const keep = (event?: FormEvent) => {
    event?.preventDefault()
    setTyped({of: note})
    const kept = store.run(keepNote(at, text, by))
    setSaid(kept ? (text.trim() === "" ? "The note is taken away." : "The note is kept.") : "Unchanged.")
  }
  // Esc puts the panel away: a note that was written is not lost by one key.
  const isHeld = useRef(false)
  const holdUnkept = (event: KeyboardEvent) => {
    if (event.key !== "Escape" || isHeld.current || text === (note?.text ?? "")) return
    event.stopPropagation()
    isHeld.current = true
    setSaid("The note is not kept yet. Esc again drops what you wrote.")
  }
  return (
    <form onSubmit={keep} onKeyDown={holdUnkept}>
      <label>
        What to know
        <textarea
          value={text}
          rows={3}
          onChange={({currentTarget}) => {
            isHeld.current = false
            setTyped({of: note, by, text: currentTarget.value})
          }}
          onKeyDown={(event) => {
            if (event.key === "Enter" && (event.ctrlKey || event.metaKey)) keep()
          }}
        />
      </label>
      <label>
        Signed{" "}
        <input
          value={by}
          size={8}
          onChange={({currentTarget}) => setTyped({of: note, text, by: currentTarget.value})}
        />
      </label>
      <div className="acts">
        <button className="chief">Keep the note</button>
        {note && (
          <button
            type="button"
            aria-pressed={note.settled ?? false}
            onClick={() => store.run(settleNote(at))}
          >
            Settled
          </button>
        )}
        {note && (
          <button
            type="button"
            onClick={() => {
              store.run(keepNote(at, "", by))
              setSaid("The note is taken away.")
            }}
          >
            Take it away
          </button>
        )}
      </div>
      <p className="small q" aria-live="polite">
        {said}
      </p>
    </form>
  )
}

/** How the last one who wrote a note signed: most likely the same person writes again. */
const lastSigned = (document: Document) =>
  notesIn(document)
    .toSorted((a, b) => b.found.written.localeCompare(a.found.written))
    .find(({found}) => found.by)?.found.by ?? ""
