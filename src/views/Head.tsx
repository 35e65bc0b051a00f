import type {ReactNode} from "react"
import {findingsByStep, unsettled} from "../editor/checks"
import {showPanel} from "../editor/selection"
import type {Panel, Store} from "../editor/store"
import {sheetWith} from "../workbook/document"
import type {Keeping} from "./keeping"
import {useEditor, useWide} from "./useEditor"
import {useLooked} from "./useLooked"

/** The running head: whose workbook it is, the history, copies in files, and the panels. */
export function Head({store, keeping}: {store: Store; keeping: Keeping}) {
  const {document, undoable, redoable, panel} = useEditor(store)
  const undo = undoable.at(-1)
  const redo = redoable.at(-1)
  const isWide = useWide(60)
  const files = (
    <>
      <button className="plain" onClick={() => void keeping.keepFileCopy()}>
        Keep a file copy
      </button>
      <button className="plain" onClick={() => void keeping.openFileCopy()}>
        Open a file copy
      </button>
      <PanelButton store={store} panel="send out">
        Send out…
      </PanelButton>
      <PanelButton store={store} panel="bring in">
        Bring in…
      </PanelButton>
    </>
  )
  const versions = (
    <PanelButton store={store} panel="versions">
      Versions
    </PanelButton>
  )
  const help = (
    <PanelButton store={store} panel="help">
      Help
    </PanelButton>
  )
  return (
    <>
      <header className="head">
        <span className="mark">Fernledger</span>
        <span className="book">
          <b>{document.name}</b>
          {document.season && `, ${document.season}`}
        </span>
        <div className="does">
          <button className="plain" disabled={!undo} onClick={() => store.undo()}>
            <span>
              Undo<span className="undo-what">{undo && `: ${undo.name}`}</span>
            </span>
          </button>
          <button className="plain" disabled={!redo} onClick={() => store.redo()}>
            <span>
              Redo<span className="undo-what">{redo && `: ${redo.name}`}</span>
            </span>
          </button>
          {isWide && files}
          {sheetWith(document, "picking planting") >= 0 && (
            <button className="plain" onClick={() => store.turn(() => ({page: "field"}))}>
              Field page
            </button>
          )}
          {isWide && versions}
          <PanelButton store={store} panel="find">
            Find
          </PanelButton>
          <PanelButton store={store} panel="checks">
            Checks
            <CheckCount store={store} />
          </PanelButton>
          {isWide ? (
            help
          ) : (
            // What is needed more seldom leaves a small screen to the plan; it folds when a panel opens.
            <details className="folded" key={panel}>
              <summary>Files and help</summary>
              <div>
                {files}
                {versions}
                {help}
              </div>
            </details>
          )}
        </div>
      </header>
      <div className="rules" />
    </>
  )
}

/** Opens a panel, and puts it away again. */
function PanelButton({store, panel, children}: {store: Store; panel: Panel; children: ReactNode}) {
  const isOpen = useEditor(store).panel === panel
  return (
    <button
      className="plain"
      aria-expanded={isOpen}
      onClick={() => store.turn(showPanel(isOpen ? "where from" : panel))}
    >
      {children}
    </button>
  )
}

/** How much needs a look, once that is known. */
function CheckCount({store}: {store: Store}) {
  const {seen} = useLooked(store, findingsByStep)
  const count = unsettled(seen ?? []).length
  if (count === 0) return null
  return (
    <>
      {" "}
      {count}
      <span className="hide"> to look at</span>
    </>
  )
}
