import {useState} from "react"
import {putFormulaBack} from "../editor/commands/cells"
import {addMissingRows, inWords, plantingsWithoutRows} from "../editor/commands/plantings"
import {insertRowsAbove, removeRows, rowActs} from "../editor/commands/rows"
import {bringSizeTable} from "../editor/commands/sizeTable"
import {bringValueSet} from "../editor/commands/valueSet"
import {deleteRows} from "../editor/deletion"
import {nextSeason, notClosedYet, samplesLeftBehind} from "../editor/nextSeason"
import {chosenWord, showPanel} from "../editor/selection"
import type {Command, Store} from "../editor/store"
import {agreePlan} from "../editor/commands/season"
import {isoDate} from "../workbook/clock"
import {planOf, planSheet} from "../workbook/plan"
import {sheetWith, type Document} from "../workbook/document"
import type {Keeping} from "./keeping"
import {MoreActs} from "./MoreActs"
import {useEditor} from "./useEditor"

interface Props {
  store: Store
  keeping: Keeping
  /** The page is there for its rows; on one that answers a question their acts are among the others alone. */
  rowsLead: boolean
  onDone: () => void
  /** Told when another workbook is open. */
  onOpened: () => void
}

/** The acts beside the sheet's title: those that only this sheet has, and those of its rows. */
export function TitleActs({store, keeping, rowsLead, onDone, onOpened}: Props) {
  const state = useEditor(store)
  const {document, cell} = state
  const set = chosenWord(state, "set")
  const table = chosenWord(state, "size table")
  return (
    <div className="acts">
      {sheetWith(document, "record day") === cell.sheet && (
        <button onClick={() => void keeping.bringInWeather()}>Bring in a file</button>
      )}
      {planSheet(document) === cell.sheet && sheetWith(document, "agreed planting") >= 0 && (
        <button
          onClick={() => {
            const plan = planOf(store.workbook)
            const on = isoDate(new Date())
            if (plan && !store.run(agreePlan(plan, on), "The plan is agreed as it stands."))
              store.turn(() => ({said: "The plan is agreed as it stands already."}))
          }}
        >
          Agree this plan
        </button>
      )}
      {[planSheet(document), sheetWith(document, "name of planting")].includes(cell.sheet) && (
        <button onClick={() => store.turn(showPanel("planting"))}>Add a planting</button>
      )}
      {sheetWith(document, "name of planting") === cell.sheet && store.canRun(addMissingRows) && (
        <Act store={store} command={addMissingRows} onDone={onDone}>
          {`Add the rows of ${inWords(plantingsWithoutRows(document))}`}
        </Act>
      )}
      {sheetWith(document, "week planting") === cell.sheet && (
        <NextSeason store={store} keeping={keeping} onOpened={onOpened} />
      )}
      {set !== null && (
        <Act store={store} command={bringValueSet} onDone={onDone}>
          {`Use the set “${set}”`}
        </Act>
      )}
      {table !== null && (
        <Act store={store} command={bringSizeTable} onDone={onDone}>
          {`Use the table “${table}”`}
        </Act>
      )}
      {store.canRun(putFormulaBack) && (
        <Act store={store} command={putFormulaBack} onDone={onDone}>
          Put formula back
        </Act>
      )}
      {rowsLead && <RowActs store={store} onDone={onDone} />}
      <MoreActs store={store} onDone={onDone} />
    </div>
  )
}

/** On a narrow page they are in the list of acts alone, so that what the page says comes first. */
function RowActs({store, onDone}: {store: Store; onDone: () => void}) {
  const {above, removal} = rowActs(useEditor(store))
  return (
    <span className="row-acts">
      <Act store={store} command={insertRowsAbove} onDone={onDone}>
        {above}
      </Act>
      <button
        disabled={!store.canRun(removeRows)}
        onClick={() => {
          deleteRows(store)
          if (!store.getState().question) onDone()
        }}
      >
        {removal}
      </button>
    </span>
  )
}

/** Begins the next season; while a planting is not closed, only once that was told. */
function NextSeason({store, keeping, onOpened}: Pick<Props, "store" | "keeping" | "onOpened">) {
  const {document} = useEditor(store)
  const [told, setTold] = useState<Document | null>(null)
  const isTold = told === document
  const begin = () => {
    const open = isTold ? "" : notClosedYet(store.workbook)
    if (open === "") return void beginNextSeason(store, keeping, onOpened)
    setTold(document)
    store.turn(() => ({said: open}))
  }
  return <button onClick={begin}>{isTold ? "Begin it all the same" : "Begin next season"}</button>
}

/** Opens the draft of the next season; this one is kept as a version first, and is one undo away. */
async function beginNextSeason(store: Store, keeping: Keeping, onOpened: () => void) {
  const next = nextSeason(store.workbook)
  if (!next) return store.turn(() => ({said: "No season is named: type its year on Named values first."}))
  const {document} = store.getState()
  const {name, season} = document
  const left = samplesLeftBehind(store.workbook)
  const version = {
    workbook: name,
    name: `as ${season ?? "the season"} ended`,
    by: "",
    reason: "kept by itself",
    at: new Date(),
  }
  const refused = await keeping.versions.keep(version, document)
  store.open(next)
  const kept = refused ? `${refused.refused}.` : "The season before is kept as a version."
  const said = ["The draft of the next season is open.", kept, left].filter(Boolean).join(" ")
  store.turn(() => ({said}))
  onOpened()
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
