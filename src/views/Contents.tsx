import {useEffect, useRef, useState} from "react"
import type {Store} from "../editor/store"
import type {Sheet} from "../workbook/document"
import type {Keeping} from "./keeping"
import {useEditor, useWide} from "./useEditor"

/** Chosen: fewer sheets than this are taken in at a glance. */
const MANY = 15

/** px of the list that the head of the page pushes out of the window; chosen. */
const AT_THE_FOOT = 100

/** Whether a sheet, its group or one of its columns is called by words that hold these. */
function holds({name, group, columns}: Sheet, sought: string): boolean {
  const words = sought.trim().toLowerCase()
  return (
    words === "" ||
    [name, group, ...columns.map(({heading}) => heading)].some((one) => one.toLowerCase().includes(words))
  )
}

interface Props {
  store: Store
  keeping: Keeping
  onOpen: (sheet: number) => void
  /** Told when another workbook is open. */
  onOpened: () => void
}

/** The sheets in groups by job. */
export function Contents({store, keeping, onOpen, onOpened}: Props) {
  const {document, cell} = useEditor(store)
  const wide = useWide(85)
  const [open, setOpen] = useState(false)
  const [sought, setSought] = useState("")
  const current = useRef<HTMLButtonElement>(null)
  const list = useRef<HTMLElement>(null)
  // The list alone is scrolled: to bring the line into view would move the page under the reader's eyes.
  useEffect(() => {
    const [nav, line] = [list.current, current.current]
    if (!nav || !line) return
    const down = line.offsetTop - nav.scrollTop
    if (down < 0 || down > nav.clientHeight - AT_THE_FOOT)
      nav.scrollTop = line.offsetTop - nav.clientHeight / 3
  }, [cell.sheet, document.name])
  const found = document.sheets.flatMap((sheet, i) => (holds(sheet, sought) ? [i] : []))
  // A sheet that is called so comes before one that only has such a column.
  const begins = (i: number) => document.sheets[i]!.name.toLowerCase().startsWith(sought.trim().toLowerCase())
  const first = found.find(begins) ?? found[0]
  const groups = [...new Set(found.map((i) => document.sheets[i]!.group))]
  const go = (sheet: number) => {
    onOpen(sheet)
    setOpen(false)
    setSought("")
  }
  const start = (name: "demonstration" | "blank") => void keeping.openSample(name).then(onOpened)
  return (
    <nav className="contents" aria-label="Contents" ref={list}>
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
                  if (key === "Enter" && first !== undefined) go(first)
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
                      <button
                        ref={i === cell.sheet ? current : undefined}
                        aria-current={i === cell.sheet ? "page" : undefined}
                        onClick={() => go(i)}
                      >
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
                <button onClick={() => start("demonstration")}>The demonstration farm</button>
              </li>
              <li>
                <button onClick={() => start("blank")}>A blank workbook</button>
              </li>
            </ul>
          </section>
        </div>
      </details>
    </nav>
  )
}
