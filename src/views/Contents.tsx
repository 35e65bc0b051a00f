import {useState} from "react"
import {openSheetKeeping} from "../editor/editing"
import type {Store} from "../editor/store"
import type {Keeping} from "./keeping"
import {useEditor, useWide} from "./useEditor"

/** The sheets in groups by job. */
export function Contents({store, keeping}: {store: Store; keeping: Keeping}) {
  const {document, cell} = useEditor(store)
  const wide = useWide(85)
  const [open, setOpen] = useState(false)
  const groups = [...new Set(document.sheets.map(({group}) => group))]
  return (
    <nav className="contents" aria-label="Contents">
      <details open={wide || open} onToggle={({currentTarget}) => setOpen(currentTarget.open)}>
        <summary>Contents: {document.sheets[cell.sheet]!.name}</summary>
        <div>
          {groups.map((group) => (
            <section key={group}>
              <h2>{group}</h2>
              <ul>
                {document.sheets.map(
                  ({name, group: own, rows}, i) =>
                    own === group && (
                      <li key={name}>
                        <button
                          aria-current={i === cell.sheet ? "page" : undefined}
                          onClick={() => {
                            openSheetKeeping(store, i)
                            setOpen(false)
                            scrollTo(0, 0) // a sheet is read from its title on
                          }}
                        >
                          {name}
                          <i />
                          <span>
                            {rows.length}
                            <span className="hide"> rows</span>
                          </span>
                        </button>
                      </li>
                    ),
                )}
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
