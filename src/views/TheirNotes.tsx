import type {Store} from "../editor/store"
import {cellName} from "../editor/words"
import {addressText} from "../workbook/cells"
import type {NoteDifference} from "../workbook/compare"
import type {CellAddress} from "../workbook/document"
import type {Compared} from "./Comparison"
import {NoteWords} from "./NotePanel"
import {useEditor} from "./useEditor"

/** The notes of the other state that are not here, to be put beside one's own. */
export function TheirNotes({
  store,
  notes,
  sides: {there, here},
  onGo,
  onBring,
}: {
  store: Store
  notes: readonly NoteDifference[]
  sides: NonNullable<Compared["sides"]>
  onGo: (at: CellAddress) => void
  onBring: (notes: readonly NoteDifference[]) => void
}) {
  const {document} = useEditor(store)
  return (
    <>
      <h4>
        Notes {there} that are not {here}
      </h4>
      <ul className="changes">
        {notes.map(({now, before, after}) => (
          <li key={addressText(document, now)}>
            <span>
              <button className="link" onClick={() => onGo(now)}>
                {cellName(document, now)}, {document.sheets[now.sheet]!.name}
              </button>
              : <NoteWords note={before} />
              {after && <span className="q">; the one {here} stays above it</span>}
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
