import {lazy, Suspense, useCallback, useRef, useState, useSyncExternalStore} from "react"
import {insertRowsAbove, removeRows} from "../editor/commands/rows"
import {chosenBlock} from "../editor/block"
import {chosenSet, bringValueSet} from "../editor/commands/valueSet"
import {putFormulaBack} from "../editor/commands/cells"
import {deleteRows} from "../editor/deletion"
import {answerYes, openSheetKeeping} from "../editor/editing"
import {choose, showPanel} from "../editor/selection"
import {summaryOf} from "../editor/summary"
import {showAllRows} from "../editor/showOnly"
import type {Command, Panel, Store} from "../editor/store"
import {ContentLine} from "./ContentLine"
import {FindPanel} from "./FindPanel"
import {HelpPanel} from "./HelpPanel"
import {SheetPanel} from "./SheetPanel"
import {SeasonSpread} from "./SeasonSpread"
import {ColumnPanel} from "./ColumnPanel"
import {KeysPanel} from "./KeysPanel"
import {MoreActs} from "./MoreActs"
import {PlainSheet} from "./PlainSheet"
import type {SheetFocus} from "./SheetGrid"
import {HEAD_HEIGHT, ROW_HEIGHT} from "./sheetSize"
import {WhereFrom} from "./WhereFrom"
import {CalendarTable} from "./pictures/CalendarTable"
import {calendarFinding} from "./pictures/calendarWords"
import {CalendarKey} from "./pictures/marks"
import {planShown} from "./planShown"
import {noReserve, ReservePlate} from "./ReservePlate"
import {reserveFinding} from "./pictures/reserveLayout"
import {reserveShown} from "./reserveShown"
import {sheetWith} from "../workbook/document"
import {isRefusal} from "../../functions/refusal"
import {WorkBackPanel} from "./WorkBackPanel"
import {useEditor, useWide} from "./useEditor"
import "./tokens.css"
import "./page.css"

// The grid is large and not needed to read the plan: it is loaded once the plan stands there as a plain table.
const painted = () => new Promise((done) => requestAnimationFrame(() => setTimeout(done)))
const SheetGrid = lazy(async () => {
  await painted()
  return {default: (await import("./SheetGrid")).SheetGrid}
})

/** What keeps the workbook: its state in words, and copies in files. */
export interface Keeping {
  subscribe(listener: () => void): () => void
  /** "Saved on this device 14:02" */
  words(): string
  keepFileCopy(): Promise<void>
  openFileCopy(): Promise<void>
  /** Reads days of weather from a table in text, and asks before they go into the sheet. */
  bringInWeather(): Promise<void>
  openSample(name: "demonstration" | "blank"): Promise<void>
}

export function App({store, keeping}: {store: Store; keeping: Keeping}) {
  const state = useEditor(store)
  const {document, cell, panel} = state
  const sheet = document.sheets[cell.sheet]!
  const closePanel = useCallback(() => store.turn(showPanel("where from")), [store])
  const grid = useRef<SheetFocus>(null)
  const wantsFocus = useRef(false) // asked for while the sheet of the chosen cell was not drawn yet
  const focusSheet = useCallback(() => {
    wantsFocus.current = !grid.current?.focus()
  }, [])
  const showCell = useCallback(() => grid.current?.show(), [])
  const onDrawn = useCallback(async () => {
    showCell()
    if (!wantsFocus.current) return
    await painted() // the rows come after the sheet
    focusSheet()
  }, [focusSheet, showCell])
  const plan = planShown(store)
  const reserve = reserveShown(store)
  const year = reserve && !isRefusal(reserve) ? reserve.year : null
  const only = state.only?.sheet === cell.sheet ? state.only : null
  const set = chosenSet(state)
  const {rows} = chosenBlock(state)
  const rowCount = rows[1] - rows[0] + 1
  const selectRow = useCallback(
    (row: number) => store.turn((state) => choose({...state.cell, row})(state)),
    [store],
  )

  const shown = (
    <Suspense fallback={<PlainSheet store={store} />}>
      <SheetGrid store={store} focusRef={grid} onDrawn={onDrawn} />
    </Suspense>
  )
  return (
    <>
      <a className="skip" href="#main">
        To the page
      </a>
      <Head store={store} keeping={keeping} />
      <div className="page">
        <Contents store={store} keeping={keeping} />
        <main id="main">
          <div className="title">
            <h1>{sheet.name}</h1>
            <div className="acts">
              {sheetWith(document, "record day") === cell.sheet && (
                <button onClick={() => void keeping.bringInWeather()}>Bring in a file</button>
              )}
              {set !== null && (
                <Act store={store} command={bringValueSet} onDone={focusSheet}>
                  {`Use the set “${set}”`}
                </Act>
              )}
              {store.canRun(putFormulaBack) && (
                <Act store={store} command={putFormulaBack} onDone={focusSheet}>
                  Put formula back
                </Act>
              )}
              <Act store={store} command={insertRowsAbove} onDone={focusSheet}>
                {rowCount > 1 ? `Insert ${rowCount} rows above` : "Insert row above"}
              </Act>
              <button
                disabled={!store.canRun(removeRows)}
                onClick={() => {
                  deleteRows(store)
                  if (!store.getState().question) focusSheet()
                }}
              >
                {rowCount > 1 ? `Delete ${rowCount} rows` : "Delete row"}
              </button>
              <MoreActs store={store} onDone={focusSheet} />
            </div>
            <p className="finding">
              {plan
                ? calendarFinding(plan)
                : year
                  ? reserveFinding(year)
                  : reserve
                    ? noReserve(reserve)
                    : sheet.about}
            </p>
            {only && (
              <p className="only">
                {only.rows.length} of {sheet.rows.length} rows shown: {only.words}.{" "}
                <button onClick={() => showAllRows(store)}>Show all rows</button>
              </p>
            )}
            {(plan || reserve) && sheet.about && <p className="basis">{sheet.about}</p>}
          </div>
          {plan ? (
            <SeasonSpread
              plan={plan}
              selected={cell.row}
              onSelect={selectRow}
              headHeight={HEAD_HEIGHT}
              rowHeight={ROW_HEIGHT}
            >
              {shown}
            </SeasonSpread>
          ) : (
            <>
              {reserve && !isRefusal(reserve) && <ReservePlate store={store} shown={reserve} />}
              <div className="alone">{shown}</div>
            </>
          )}
          <div className={plan ? "foot" : "foot even"}>
            <div className="left">
              <CellKey />
              <AskedQuestion store={store} onDone={focusSheet} />
              <ContentLine store={store} onLeave={focusSheet} />
            </div>
            <div className="right">
              {plan && (
                <>
                  <CalendarKey />
                  <CalendarTable plan={plan} />
                </>
              )}
              {panel === "help" ? (
                <HelpPanel store={store} onClose={closePanel} />
              ) : panel === "keys" ? (
                <KeysPanel onClose={closePanel} />
              ) : panel === "work back" ? (
                <WorkBackPanel store={store} onClose={closePanel} />
              ) : panel === "column" ? (
                <ColumnPanel store={store} onClose={closePanel} />
              ) : panel === "sheet" ? (
                <SheetPanel store={store} onClose={closePanel} />
              ) : panel === "find" ? (
                <FindPanel store={store} onShow={showCell} onLeave={focusSheet} />
              ) : (
                <WhereFrom
                  key={`${cell.sheet}:${cell.row}:${cell.col}`}
                  store={store}
                  onGo={focusSheet}
                  onWorkBack={() => store.turn(showPanel("work back"))}
                />
              )}
            </div>
          </div>
        </main>
      </div>
      <Foot store={store} keeping={keeping} />
    </>
  )
}

function Head({store, keeping}: {store: Store; keeping: Keeping}) {
  const {document, undoable, redoable} = useEditor(store)
  const undo = undoable.at(-1)
  const redo = redoable.at(-1)
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
          <button className="plain" onClick={() => void keeping.keepFileCopy()}>
            Keep a file copy
          </button>
          <button className="plain" onClick={() => void keeping.openFileCopy()}>
            Open a file copy
          </button>
          <PanelButton store={store} panel="find">
            Find
          </PanelButton>
          <PanelButton store={store} panel="help">
            Help
          </PanelButton>
        </div>
      </header>
      <div className="rules" />
    </>
  )
}

/** Opens a panel, and puts it away again. */
function PanelButton({store, panel, children}: {store: Store; panel: Panel; children: string}) {
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

/** The sheets in groups by job. */
function Contents({store, keeping}: {store: Store; keeping: Keeping}) {
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

function Act({
  store,
  command,
  onDone,
  children,
}: {
  store: Store
  command: Command
  onDone: () => void
  children: string
}) {
  useEditor(store)
  return (
    <button
      disabled={!store.canRun(command)}
      onClick={() => {
        store.run(command)
        onDone()
      }}
    >
      {children}
    </button>
  )
}

function AskedQuestion({store, onDone}: {store: Store; onDone: () => void}) {
  const {question} = useEditor(store)
  if (!question) return null
  const leave = () => {
    store.turn(() => ({question: null, said: "Unchanged."}))
    onDone()
  }
  return (
    <div
      className="note"
      role="alertdialog"
      aria-labelledby="question"
      onKeyDown={(event) => {
        if (event.key !== "Escape") return
        event.stopPropagation()
        leave()
      }}
    >
      <p id="question">{question.asks}</p>
      {question.links && (
        <ul className="links">
          {question.links.map(({at, words}) => (
            <li key={words}>
              <button
                className="plain"
                onClick={() => {
                  store.turn(choose(at))
                  onDone()
                }}
              >
                {words}
              </button>
            </li>
          ))}
        </ul>
      )}
      <div className="acts">
        <button
          className="chief"
          autoFocus
          onClick={() => {
            answerYes(store)
            onDone()
          }}
        >
          {question.yes}
        </button>
        <button onClick={leave}>Leave it</button>
      </div>
    </div>
  )
}

const KINDS = ["worked out", "measured", "carried over", "typed over", "missing", "questioned"] as const

/** What the marks in the cells mean. */
function CellKey() {
  return (
    <ul className="key" aria-label="Marks in the cells">
      {KINDS.map((kind) => (
        <li key={kind}>
          <span className="sw" data-kind={kind} aria-hidden="true" />
          {kind}
        </li>
      ))}
      <li>no mark: typed</li>
    </ul>
  )
}

function Foot({store, keeping}: {store: Store; keeping: Keeping}) {
  const {said, editing} = useEditor(store)
  const saving = useSyncExternalStore(keeping.subscribe, keeping.words)
  return (
    <footer className="folio">
      <span>
        <span role="status">{said}</span> <span className="sum">{summaryOf(store)}</span>{" "}
        {editing ? "Enter keeps it, Esc drops it." : "Esc, then Tab, leaves the sheet."}
      </span>
      <span role="status">{saving}</span>
    </footer>
  )
}
