import {useState, type FormEvent} from "react"
import {deleteSheet} from "../editor/deletion"
import {openSheet} from "../editor/selection"
import type {Store} from "../editor/store"
import {editRefused, type Edit} from "../workbook/edit"
import {PanelFrame} from "./PanelFrame"
import {useEditor} from "./useEditor"

const NOTHING = {of: "", words: ""}

/** What the open sheet is called and where it stands; copies it, deletes it, and adds another. */
export function SheetPanel({store, onClose}: {store: Store; onClose: () => void}) {
  const {document, cell} = useEditor(store)
  const sheet = document.sheets[cell.sheet]!
  // Both hold for the sheet of this name alone; the fields stay, and with them the keyboard's focus.
  const [typed, setTyped] = useState(NOTHING)
  const [told, setTold] = useState(NOTHING)
  const name = typed.of === sheet.name ? typed.words : sheet.name
  const fault = told.of === sheet.name ? told.words : ""
  const [added, setAdded] = useState("")

  /** Makes the edit, or says why it cannot be made. */
  const run = (edit: Edit, opens?: number) => {
    const refused = editRefused(document, edit)
    setTold(refused === null ? NOTHING : {of: sheet.name, words: `${refused}.`})
    if (refused === null) setTyped(NOTHING)
    if (refused === null && store.run(() => edit) && opens !== undefined) store.turn(openSheet(opens))
    return refused === null
  }
  const rename = (event: FormEvent) => {
    event.preventDefault()
    if (name.trim() !== sheet.name) run({type: "renameSheet", sheet: cell.sheet, name: name.trim()})
  }
  const add = (event: FormEvent) => {
    event.preventDefault()
    if (run({type: "addSheet", name: added.trim(), group: sheet.group}, document.sheets.length)) setAdded("")
  }
  const move = (by: 1 | -1) => {
    const to = cell.sheet + by
    if (!document.sheets[to])
      return setTold({of: sheet.name, words: `It is the ${by < 0 ? "first" : "last"} sheet already.`})
    run({type: "moveSheet", from: cell.sheet, to}, to)
  }
  const copy = () => {
    const taken = new Set(document.sheets.map((one) => one.name.toLowerCase()))
    let copied = `${sheet.name.slice(0, 25)} copy`
    for (let n = 2; taken.has(copied.toLowerCase()); n++) copied = `${sheet.name.slice(0, 23)} copy ${n}`
    run({type: "copySheet", sheet: cell.sheet, name: copied}, cell.sheet + 1)
  }

  return (
    <PanelFrame title={`Sheet ${sheet.name}`} holds="column-panel" onClose={onClose}>
      <form onSubmit={rename}>
        <label>
          Name{" "}
          <input
            value={name}
            maxLength={31}
            onChange={({currentTarget}) => setTyped({of: sheet.name, words: currentTarget.value})}
          />
        </label>
        <button>Rename it</button>
      </form>
      <div className="acts">
        <button onClick={() => move(-1)}>Move up</button>
        <button onClick={() => move(1)}>Move down</button>
        <button onClick={copy}>Copy it</button>
        <button onClick={() => deleteSheet(store)}>Delete it</button>
      </div>
      <form onSubmit={add}>
        <label>
          Name of a new sheet{" "}
          <input value={added} maxLength={31} onChange={({currentTarget}) => setAdded(currentTarget.value)} />
        </label>
        <button>Add a sheet</button>
      </form>
      <p className="why" aria-live="polite">
        {fault}
      </p>
    </PanelFrame>
  )
}
