import {
  lazy,
  Suspense,
  useCallback,
  useEffect,
  useRef,
  useState,
  useSyncExternalStore,
  type CSSProperties,
} from "react"
import {isRefusal} from "../../functions/refusal"
import {moveClose} from "../editor/commands/season"
import {openSheetKeeping} from "../editor/editing"
import {choose, showPanel} from "../editor/selection"
import {showAllRows} from "../editor/showOnly"
import type {Store} from "../editor/store"
import {summaryOf} from "../editor/summary"
import {columnWith, sheetWith, type CellAddress, type Part} from "../workbook/document"
import {decimalOf, regionOf} from "../workbook/region"
import {AskedQuestion} from "./AskedQuestion"
import {BringInPanel} from "./BringInPanel"
import {CasesPanel} from "./CasesPanel"
import {ChecksPanel} from "./ChecksPanel"
import {ColumnPanel} from "./ColumnPanel"
import {ContentLine} from "./ContentLine"
import {Contents} from "./Contents"
import {FieldPage} from "./FieldPage"
import {FieldLifePlate} from "./FieldLifePlate"
import {fieldLifeFinding, fieldLifeShown} from "./fieldLifeShown"
import {EachPage} from "./EachPage"
import {FindPanel} from "./FindPanel"
import {Head} from "./Head"
import {HelpPanel} from "./HelpPanel"
import type {Keeping} from "./keeping"
import {KeysPanel} from "./KeysPanel"
import {LenderPlate, type RiskOf} from "./LenderPlate"
import {CashPlate, YieldPlate} from "./MoneyPlate"
import {cashShown, lenderShown, yieldsShown} from "./lenderShown"
import {NamesPanel} from "./NamesPanel"
import {NotePanel} from "./NotePanel"
import {editionWords} from "./edition"
import {onceDrawn} from "./onceDrawn"
import {PaperSheet} from "./PaperSheet"
import {PlainSheet} from "./PlainSheet"
import {PlantingPanel} from "./PlantingPanel"
import {planShown} from "./planShown"
import {RegionPanel} from "./RegionPanel"
import {noReserve, ReservePlate} from "./ReservePlate"
import {ReadingLine} from "./ReadingLine"
import {reserveShown} from "./reserveShown"
import {SamplePlate} from "./SamplePlate"
import {samplesShown} from "./samplesShown"
import {SeasonSpread} from "./SeasonSpread"
import {SendOutPanel} from "./SendOutPanel"
import {SheetPanel} from "./SheetPanel"
import {HEAD_HEIGHT, REM, ROW_HEIGHT, widthAsFarAs} from "./sheetSize"
import {SpearPlate} from "./SpearPlate"
import {spearsShown} from "./spearsShown"
import {TitleActs} from "./TitleActs"
import {NeedsPlate} from "./NeedsPlate"
import {ReplantPlate} from "./ReplantPlate"
import {replantShown} from "./replantShown"
import {WeekPlate} from "./WeekPlate"
import {
  asOfDay,
  coldChainShown,
  needsShown,
  shedDayShown,
  typedFirst,
  uncountedShown,
  weekShown,
} from "./weekShown"
import {WhereFrom} from "./WhereFrom"
import {VersionOffer} from "./VersionOffer"
import {VersionsPanel} from "./VersionsPanel"
import {WorkBackPanel} from "./WorkBackPanel"
import {CalendarTable} from "./pictures/CalendarTable"
import {calendarFinding} from "./pictures/calendarWords"
import {CalendarKey} from "./pictures/marks"
import {replantFinding} from "./pictures/replantWords"
import {lenderFinding, yieldFinding} from "./pictures/lenderWords"
import {needsFinding, shedFinding, weekFinding} from "./pictures/weekWords"
import {reserveFinding} from "./pictures/reserveLayout"
import {sampleFinding} from "./pictures/sampleLayout"
import {spearFinding} from "./pictures/spearWords"
import {useEditor} from "./useEditor"
import {useSheetFocus} from "./useSheetFocus"
import {Welcome} from "./Welcome"
import "./tokens.css"
import "./page.css"

// The grid is large and not needed to read the plan: it is loaded once the plan stands there as a plain table.
const SheetGrid = lazy(async () => {
  await new Promise<void>(onceDrawn)
  return {default: (await import("./SheetGrid")).SheetGrid}
})

const EDGES = 5 // px, of the grid and of the calendar beside it
const MOST_WIDTH = 62 // rem, so that the calendar has room

/** How wide the season plan is as far as its crop: with large totals and in other units it needs more room. */
function planWidth(store: Store): CSSProperties | undefined {
  const {cell, document} = store.getState()
  const crop = columnWith(document, cell.sheet, "crop")
  if (crop < 0) return undefined
  const px = widthAsFarAs(store, cell.sheet, crop) + EDGES
  return {"--plan-sheet": `${Math.min(MOST_WIDTH, px / REM)}rem`} as CSSProperties
}

/** The book of sheets, or the page for the field. */
export function App(props: {store: Store; keeping: Keeping}) {
  return useEditor(props.store).page === "field" ? <FieldPage {...props} /> : <Book {...props} />
}

function Book({store, keeping}: {store: Store; keeping: Keeping}) {
  const state = useEditor(store)
  const {document, cell, panel} = state
  const sheet = document.sheets[cell.sheet]!
  const keepFileCopy = useCallback(() => void keeping.keepFileCopy(), [keeping])
  const keys = useSheetFocus(store, keepFileCopy)
  const {grid, focus: focusSheet} = keys
  // A panel that was asked for comes into view and takes the keyboard's focus; the one for finding sees to it itself.
  const right = useRef<HTMLDivElement>(null)
  useEffect(() => {
    const frame = panel === "find" ? null : right.current?.querySelector(".panel")
    frame?.scrollIntoView({block: "nearest"})
    frame?.querySelector("h2")?.focus({preventScroll: true})
  }, [panel])
  const showCell = useCallback(() => grid.current?.show(), [grid])
  const plan = planShown(store)
  const reserve = reserveShown(store)
  const week = weekShown(store)
  const needs = needsShown(store)
  const shed = shedDayShown(store)
  const replant = replantShown(store)
  const fieldLife = fieldLifeShown(store)
  const lender = lenderShown(store)
  const [risk, setRisk] = useState<RiskOf | null>(null)
  const found = lender && risk?.page === lender.page ? risk.found : null
  const cash = cashShown(store)
  const yields = yieldsShown(store)
  const spears = spearsShown(store)
  const samples = samplesShown(store)
  const year = reserve && !isRefusal(reserve) ? reserve.year : null
  const only = state.only?.sheet === cell.sheet ? state.only : null
  const edition = editionWords(store)
  const told = plan
    ? calendarFinding(plan)
    : week
      ? weekFinding(week)
      : needs
        ? needsFinding(needs, asOfDay(store), decimalOf(document), uncountedShown(store))
        : replant
          ? replantFinding(replant.field, replant.replanting.money.little, regionOf(document))
          : fieldLife
            ? fieldLifeFinding(store, fieldLife)
            : lender
              ? lenderFinding(lender.page, lender.atPace, found)
              : cash
                ? lenderFinding(cash)
                : yields
                  ? yieldFinding(yields.yields, yields.region)
                  : year
                    ? reserveFinding(year)
                    : reserve
                      ? noReserve(reserve)
                      : spears
                        ? spearFinding(spears)
                        : samples
                          ? sampleFinding(samples)
                          : shed
                            ? shedFinding(shed, regionOf(document))
                            : null
  const finding = typedFirst(store) ?? told
  const answers = [week, needs, replant, fieldLife, lender, reserve].some((shown) => shown !== null)
  const goTo = useCallback(
    (at: CellAddress) => {
      store.turn(choose(at))
      focusSheet()
    },
    [store, focusSheet],
  )
  // What is opened has the keyboard: on its chosen cell, or on the title where there is a page to read before the sheet, or the
  // sheet lies further down than can be seen.
  const [opened, setOpened] = useState(0)
  const entered = useRef(0) // once for each that is opened, not whenever another page is shown
  const onOpened = useCallback(() => {
    scrollTo(0, 0) // a sheet is read from its title on
    setOpened((times) => times + 1)
  }, [])
  const open = useCallback(
    (sheet: number) => {
      if (openSheetKeeping(store, sheet)) onOpened()
    },
    [store, onOpened],
  )
  const openPart = useCallback(
    (part: Part) => open(sheetWith(store.getState().document, part)),
    [store, open],
  )
  const title = useRef<HTMLHeadingElement>(null)
  const alone = useRef<HTMLDivElement>(null)
  const isEmpty = plan?.rows.length === 0 // a plan without a planting has no cell to choose
  const isRead = Boolean(week || lender || needs || replant || fieldLife || isEmpty)
  const closePanel = useCallback(() => {
    store.turn(showPanel("where from"))
    if (isEmpty) title.current?.focus({preventScroll: true})
    else focusSheet()
  }, [store, isEmpty, focusSheet])
  useEffect(() => {
    if (entered.current === opened) return
    entered.current = opened
    const firstRow = (alone.current?.getBoundingClientRect().top ?? 0) + HEAD_HEIGHT + ROW_HEIGHT
    if (isRead || firstRow > innerHeight) title.current?.focus({preventScroll: true})
    else focusSheet()
  }, [opened, isRead, focusSheet])
  const selectRow = useCallback(
    (row: number) => store.turn((state) => choose({...state.cell, row})(state)),
    [store],
  )

  const moveRow = useCallback(
    (row: number, day: number | null, movement: number) =>
      void store.run(moveClose(row, day), "", `close ${row}, ${movement}`),
    [store],
  )

  const shown = (
    <>
      <Suspense fallback={<PlainSheet store={store} />}>
        <SheetGrid store={store} keys={keys} focusRef={grid} onDrawn={showCell} />
      </Suspense>
      <PaperSheet store={store} />
    </>
  )
  return (
    <>
      <a className="skip" href="#main">
        To the page
      </a>
      <Head store={store} keeping={keeping} />
      <div className="page" style={plan ? planWidth(store) : undefined}>
        <Contents store={store} keeping={keeping} onOpen={open} onOpened={onOpened} />
        <main id="main">
          {!lender && <EachPage plan={edition} />}
          <div className="title">
            <h1 ref={title} tabIndex={-1}>
              {sheet.name}
            </h1>
            <TitleActs
              store={store}
              keeping={keeping}
              rowsLead={!answers}
              onDone={focusSheet}
              onOpened={onOpened}
            />
            <p className={finding === null ? "finding told" : "finding"}>{finding ?? sheet.about}</p>
            <ReadingLine store={store} />
            {plan && keeping.greets(document) && (
              <Welcome onBegin={() => void keeping.openSample("blank").then(onOpened)} />
            )}
            {only && (
              <p className="only">
                {only.rows.length} of {sheet.rows.length} rows shown: {only.words}.{" "}
                <button onClick={() => showAllRows(store)}>Show all rows</button>
              </p>
            )}
            {finding !== null && sheet.about && <p className="basis">{sheet.about}</p>}
          </div>
          {plan ? (
            <SeasonSpread
              plan={plan}
              selected={cell.row}
              onSelect={selectRow}
              onMove={moveRow}
              headHeight={HEAD_HEIGHT}
              rowHeight={ROW_HEIGHT}
            >
              {shown}
            </SeasonSpread>
          ) : (
            <>
              {week && <WeekPlate store={store} week={week} onGo={goTo} onOpen={openPart} />}
              {lender && (
                <LenderPlate
                  store={store}
                  shown={lender}
                  keeping={keeping}
                  found={found}
                  onFound={setRisk}
                  onGo={goTo}
                  onOpen={openPart}
                />
              )}
              {needs && (
                <NeedsPlate
                  store={store}
                  needs={needs}
                  uncounted={uncountedShown(store)}
                  cold={coldChainShown(store)}
                  asOf={asOfDay(store)}
                  region={regionOf(document)}
                  onGo={goTo}
                />
              )}
              {replant && <ReplantPlate store={store} shown={replant} onGo={goTo} />}
              {fieldLife && <FieldLifePlate store={store} shown={fieldLife} />}
              {reserve && !isRefusal(reserve) && <ReservePlate store={store} shown={reserve} onGo={goTo} />}
              {cash && <CashPlate page={cash} onGo={goTo} />}
              {yields && <YieldPlate page={yields} onGo={goTo} />}
              {spears && <SpearPlate sizes={spears} onGo={goTo} />}
              {samples && <SamplePlate spread={samples} onGo={goTo} />}
              {(week || lender || needs || replant || year || cash || yields || spears || samples) && (
                <Source words={edition} />
              )}
              <div className="alone" ref={alone}>
                {shown}
              </div>
            </>
          )}
          <div className={plan ? "foot" : "foot even"}>
            <div className="left">
              <CellKey />
              <AskedQuestion store={store} onDone={focusSheet} onShow={showCell} />
              <ContentLine store={store} onLeave={focusSheet} />
            </div>
            <div className="right" ref={right}>
              {plan && (
                <>
                  <CalendarKey />
                  <CalendarTable plan={plan} />
                  <Source words={edition} />
                </>
              )}
              {panel === "help" ? (
                <HelpPanel store={store} onClose={closePanel} />
              ) : panel === "keys" ? (
                <KeysPanel onClose={closePanel} />
              ) : panel === "region" ? (
                <RegionPanel store={store} onClose={closePanel} />
              ) : panel === "work back" ? (
                <WorkBackPanel store={store} onClose={closePanel} />
              ) : panel === "column" ? (
                <ColumnPanel store={store} onClose={closePanel} />
              ) : panel === "note" ? (
                <NotePanel store={store} onClose={closePanel} onGo={focusSheet} />
              ) : panel === "cases" ? (
                <CasesPanel store={store} onClose={closePanel} onGo={focusSheet} />
              ) : panel === "versions" ? (
                <VersionsPanel store={store} keeping={keeping} onClose={closePanel} onGo={focusSheet} />
              ) : panel === "planting" ? (
                <PlantingPanel store={store} onClose={closePanel} />
              ) : panel === "names" ? (
                <NamesPanel store={store} onClose={closePanel} onGo={focusSheet} />
              ) : panel === "send out" ? (
                <SendOutPanel store={store} keeping={keeping} onClose={closePanel} />
              ) : panel === "bring in" ? (
                <BringInPanel store={store} keeping={keeping} onClose={closePanel} />
              ) : panel === "sheet" ? (
                <SheetPanel store={store} onClose={closePanel} />
              ) : panel === "checks" ? (
                <ChecksPanel store={store} onShow={showCell} onLeave={focusSheet} />
              ) : panel === "find" ? (
                <FindPanel store={store} onShow={showCell} onLeave={focusSheet} />
              ) : (
                <WhereFrom
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

const KINDS = ["worked out", "measured", "carried over", "typed over", "missing", "questioned"] as const

/** Where the numbers of the pictures above come from: the sheet that is their table, in which state. */
const Source = ({words}: {words: string}) => <p className="source">Source: {words}.</p>

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
      <li>
        <span className="sw" data-kind="note" aria-hidden="true" />
        has a note
      </li>
      <li>no mark: typed</li>
    </ul>
  )
}

function Foot({store, keeping}: {store: Store; keeping: Keeping}) {
  const {said, editing, offer} = useEditor(store)
  const saving = useSyncExternalStore(keeping.subscribe, keeping.words)
  return (
    <footer className="folio">
      <span>
        <span role="status">{said}</span>{" "}
        {offer && (
          <button className="plain" onClick={() => offer.act(store)}>
            {offer.words}
          </button>
        )}{" "}
        <VersionOffer store={store} keeping={keeping} /> <span className="sum">{summaryOf(store)}</span>{" "}
        {editing ? "Enter keeps it, Esc drops it." : "Esc, then Tab, leaves the sheet."}
      </span>
      <span role="status">{saving}</span>
    </footer>
  )
}
