import {useState} from "react"
import {openSheetKeeping} from "../editor/editing"
import type {Store} from "../editor/store"
import type {Sheet} from "../workbook/document"
import type {Keeping} from "./keeping"
import {useEditor, useWide} from "./useEditor"

/** Chosen: fewer sheets than this are taken in at a glance. */
const MANY = 15

/** Whether a sheet, its group or one of its columns is called by words that hold these. */
function holds({name, group, columns}: Sheet, sought: string): boolean {
  const words = sought.trim().toLowerCase()
  return (
    words === "" ||
    [name, group, ...columns.map(({heading}) => heading)].some((one) => one.toLowerCase().includes(words))
  )
}

/** The sheets in groups by job. */
export function Contents({store, keeping}: {store: Store; keeping: Keeping}) {
  const {document, cell} = useEditor(store)
  const wide = useWide(85)
  const [open, setOpen] = useState(false)
  const [sought, setSought] = useState("")
  const found = document.sheets.flatMap((sheet, i) => (holds(sheet, sought) ? [i] : []))
  const groups = [...new Set(found.map((i) => document.sheets[i]!.group))]
  const go = (sheet: number) => {
    openSheetKeeping(store, sheet)
    setOpen(false)
    setSought("")
    scrollTo(0, 0) // a sheet is read from its title on
  }
  return (
    <nav className="contents" aria-label="Contents">
      <details open={wide || open} onToggle={({currentTarget}) => setOpen(currentTarget.open)}>
        <summary>Contents: {document.sheets[cell.sheet]!.name}</summary>
        <div>
          {document.sheets.length > MANY && (
            <label className="sought">
              Sheets with
              <input
                type="search"
                value={sought}
                onChange={({currentTarget}) => setSought(currentTarget.value)}
                onKeyDown={({key}) => {
                  if (key === "Enter" && found.length) go(found[0]!)
                  if (key === "Escape") setSought("")
                }}
              />
              <span className="hide" role="status">
                {sought && `${found.length} of ${document.sheets.length} sheets`}
              </span>
            </label>
          )}
          {groups.length === 0 && <p>No sheet, group or column is called so.</p>}
          {groups.map((group) => (
            <section key={group}>
              <h2>{group}</h2>
              <ul>
                {found.map((i) => {
                  const {name, group: own, rows} = document.sheets[i]!
                  if (own !== group) return null
                  return (
                    <li key={name}>
                      <button aria-current={i === cell.sheet ? "page" : undefined} onClick={() => go(i)}>
                        {name}
                        <i />
                        <span>
                          {rows.length}
                          <span className="hide"> rows</span>
                        </span>
                      </button>
                    </li>
                  )
                })}
              </ul>
            </section>
          ))}
          <section>
            <h2>Start from</h2>
            <ul>
              <li>
                <button onClick={() => void keeping.openSample("demonstration")}>
                  The demonstration farm
                </button>
              </li>
              <li>
                <button onClick={() => void keeping.openSample("blank")}>A blank workbook</button>
              </li>
            </ul>
          </section>
        </div>
      </details>
    </nav>
  )
}
