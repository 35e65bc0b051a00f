import {useState, type FormEvent} from "react"
import {canBeNamed, namesWithUse, nameRefused, nameValue} from "../editor/commands/names"
import {textWithUnit} from "../editor/display"
import {chooseKeeping} from "../editor/editing"
import type {Store} from "../editor/store"
import {loweredName} from "../editor/words"
import type {CellAddress} from "../workbook/document"
import {regionOf} from "../workbook/region"
import {PanelFrame} from "./PanelFrame"
import {useEditor} from "./useEditor"

interface Props {
  store: Store
  onClose: () => void
  onGo: () => void
}

/** The named values with what they are worth and how many cells use them; gives the chosen cell's value a name. */
export function NamesPanel({store, onClose, onGo}: Props) {
  const {document, cell} = useEditor(store)
  const [sought, setSought] = useState("")
  const all = namesWithUse(document)
  const found = all.filter(({name, about}) =>
    `${name} ${about}`.toLowerCase().includes(sought.trim().toLowerCase()),
  )
  const go = (at: CellAddress) => {
    if (chooseKeeping(store, at)) onGo()
  }
  return (
    <PanelFrame title="Named values" holds="names-panel" onClose={onClose}>
      {canBeNamed(document, cell) ? (
        <Naming key={`${cell.sheet}:${cell.row}:${cell.col}`} store={store} at={cell} />
      ) : (
        <p className="q">To give a value a name, choose a typed cell that is none of the named values.</p>
      )}
      <label>
        Look for a name{" "}
        <input type="search" value={sought} onChange={({currentTarget}) => setSought(currentTarget.value)} />
      </label>
      <p className="small q" aria-live="polite">
        {found.length} of {all.length} named values. To rename one, type another name in its row: every
        formula follows.
      </p>
      <ul>
        {found.map(({name, at, unit, about, uses}) => (
          <li key={name}>
            <button className="link" onClick={() => go(at)}>
              {name}
            </button>{" "}
            {textWithUnit(
              store.valueAt(at),
              {heading: name, kind: "typed", unit},
              store.workbook.isDateAt(at),
              regionOf(document),
            )}{" "}
            <span className="q">
              {about}
              {about && ". "}
              {uses === 0 ? "No formula uses it" : `Used in ${uses} ${uses === 1 ? "formula" : "formulas"}`}.
            </span>
          </li>
        ))}
      </ul>
    </PanelFrame>
  )
}

function Naming({store, at}: {store: Store; at: CellAddress}) {
  const {document} = useEditor(store)
  const [name, setName] = useState("")
  const [fault, setFault] = useState("")
  const keep = (event: FormEvent) => {
    event.preventDefault()
    const refused = nameRefused(document, name.trim(), store.workbook.standardFunctions)
    setFault(refused === null ? "" : `${refused}.`)
    if (refused === null) store.run(nameValue(at, name.trim()))
  }
  return (
    <form onSubmit={keep}>
      <label>
        Name for {loweredName(document, at)}{" "}
        <input value={name} size={16} onChange={({currentTarget}) => setName(currentTarget.value)} />
      </label>{" "}
      <button>Name this value</button>
      <p className="why" aria-live="polite">
        {fault}
      </p>
    </form>
  )
}
