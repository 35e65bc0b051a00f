import {memo, useDeferredValue, useState, type ReactNode} from "react"
import {dayOf} from "../../functions/calendar"
import {worksOf} from "../../functions/described"
import {cellColumn} from "../editor/cellColumn"
import {dateText, isUnknownLimit, textWithUnit, withoutDay} from "../editor/display"
import {chooseKeeping} from "../editor/editing"
import type {Store} from "../editor/store"
import {cellName, movedFrom, rowNames} from "../editor/words"
import {isSameCell, type CellAddress, type Document} from "../workbook/document"
import {isoDate, isoTime} from "../workbook/clock"
import {culpritsOf} from "../workbook/culprits"
import {sourceColumn} from "../workbook/checks/sources"
import {sentenceOf} from "../workbook/faults"
import {actOf} from "../workbook/fieldActs"
import {rowsTaken} from "../workbook/rowsTaken"
import {originOf, usedOf, type Input} from "../workbook/trace"
import {regionOf} from "../workbook/region"
import {isFault} from "../workbook/value"
import {addressText} from "../workbook/cells"
import {columnAt, extraAt} from "../workbook/extras"
import {NoteWords} from "./NotePanel"
import {LimitMark} from "./pictures/marks"
import {useEditor} from "./useEditor"
import "./whereFrom.css"

const MOST_OPEN = 3
const MOST_VALUES = 12
const MOST_USERS = 24

/** Where the chosen cell's value came from, step by step down to what was typed or measured, and who uses it. */
export function WhereFrom({
  store,
  onGo,
  onWorkBack,
}: {
  store: Store
  onGo: () => void
  onWorkBack: () => void
}) {
  // What an edit moved on the sheet and in the picture is drawn first; another cell that is chosen is told at once.
  const now = useEditor(store)
  const drawn = useDeferredValue(now)
  const {cell, document} = now.document === drawn.document ? now : drawn
  return (
    <Trace
      key={`${cell.sheet}:${cell.row}:${cell.col}`}
      store={store}
      cell={cell}
      document={document}
      onGo={onGo}
      onWorkBack={onWorkBack}
    />
  )
}

interface TraceProps {
  store: Store
  cell: CellAddress
  document: Document
  onGo: () => void
  onWorkBack: () => void
}

/** Drawn again when the cell or the document changes, not with each key that is typed. */
const Trace = memo(function Trace({store, cell, document, onGo, onWorkBack}: TraceProps) {
  const [path, setPath] = useState<readonly CellAddress[]>([])
  const [showsUsers, setShowsUsers] = useState(false)
  if (cell.row >= document.sheets[cell.sheet]!.rows.length)
    return (
      <section className="trace" aria-labelledby="where-from">
        <div className="top">
          <h2 id="where-from">Where from</h2>
        </div>
        <p className="feeds">The next row to fill: type in it to add it.</p>
      </section>
    )

  const steps = [cell, ...path]
  const first = Math.max(0, steps.length - MOST_OPEN)
  const go = (at: CellAddress) => {
    if (chooseKeeping(store, at)) onGo()
  }
  const name = nameOf(store, cell)
  return (
    <section className="trace" aria-labelledby="where-from">
      <div className="top">
        <h2 id="where-from">
          {showsUsers ? "Used by" : "Where from"}: {name.replace(/^./, (letter) => letter.toLowerCase())}
        </h2>
        <span className="acts">
          {path.length > 0 && (
            <button className="plain" onClick={() => setPath(path.slice(0, -1))}>
              Step back
            </button>
          )}
          {store.workbook.formulaAt(cell) !== null && typeof store.valueAt(cell) === "number" && (
            <button className="plain" onClick={onWorkBack}>
              Work back
            </button>
          )}
          <button className="plain" aria-pressed={showsUsers} onClick={() => setShowsUsers(!showsUsers)}>
            {showsUsers ? "Where from" : "Used by"}
          </button>
        </span>
      </div>
      {showsUsers ? (
        <Users store={store} at={cell} onGo={go} />
      ) : (
        <ol start={first + 1} style={{counterReset: `step ${first}`}}>
          {steps.slice(first).map((at, i) => (
            <OriginStep
              key={`${at.sheet}:${at.row}:${at.col}:${first + i}`}
              store={store}
              at={at}
              isFirst={first + i === 0}
              onFollow={(to) => setPath([...path.slice(0, first + i), to])}
              onGo={go}
            />
          ))}
        </ol>
      )}
    </section>
  )
})

/** Who entered the row of a cell in the field, and when. */
function Entered({document, at: {sheet, row}}: {document: Document; at: CellAddress}) {
  const act = actOf(document, sheet, row)
  if (!act) return null
  const at = new Date(act.entry.entered)
  return (
    <p className="feeds">
      Entered in the field on {act.entry.device}, {dateText(dayOf(isoDate(at))!)} at {isoTime(at)}
      {act.isChanged && "; the row was changed since"}.
    </p>
  )
}

interface StepProps {
  store: Store
  at: CellAddress
  isFirst: boolean
  onFollow: (at: CellAddress) => void
  onGo: (at: CellAddress) => void
}

function OriginStep({store, at, isFirst, onFollow, onGo}: StepProps) {
  const {document, moved: changes} = store.getState()
  const {kind, formula, inWords, inputs, functions} = takenOrigin(store, at)
  const column = columnAt(document, at)
  const note = extraAt(document, at)?.note
  const told = inputs.filter(({cells}) => !isOwnKey(at, cells)).toSorted((a, b) => placeOf(a) - placeOf(b))
  const value = store.valueAt(at)
  const isDate = store.workbook.isDateAt(at)
  const moved = movedFrom(
    document,
    changes.find((change) => isSameCell(change.at, at)),
    isDate,
  )
  const began = isFault(value) && value.began && !isSameCell(value.began, at) ? value.began : null
  return (
    <li>
      <div>
        <p className="is">
          {!isFirst && `${nameOf(store, at)} `}
          <span className="n">{value === null || value === "" ? "blank" : shownText(store, at)}</span>{" "}
          <span className="kind">
            {kind}
            {moved && `, ${moved}`}
          </span>{" "}
          <Address store={store} at={at} onGo={onGo} />
        </p>
        {note && (
          <p className="note-line">
            Note: <NoteWords note={note} />
          </p>
        )}
        {isFault(value) && (
          <p className="why">
            {sentenceOf(value)}
            {!began &&
              culpritsOf(store.workbook, at, value, rowNames(store.workbook)).map(
                ({text, words, cells}, i) => (
                  <span key={text}>
                    {i === 0 ? ": " : ", "}
                    <button className="link" onClick={() => onFollow(cells[0]!)}>
                      {words}
                    </button>{" "}
                    is <ValueOf store={store} at={cells[0]!} />
                  </span>
                ),
              )}
            .{" "}
            {began && (
              <>
                Started in{" "}
                <button className="link" onClick={() => onFollow(began)}>
                  {nameOf(store, began)}, {document.sheets[began.sheet]?.name}
                </button>
              </>
            )}
          </p>
        )}
        {column?.about && <p>{column.about}</p>}
        {told.length > 0 && (
          <ul className="inputs" aria-label="What it uses">
            {told.map((input) => (
              <InputLine key={input.text} store={store} input={input} onFollow={onFollow} />
            ))}
          </ul>
        )}
        {formula !== null && <p className="feeds formula">{inWords}</p>}
        {kind !== "worked out" && formula === null && (
          <>
            <OwnRow store={store} at={at} />
            <Entered document={document} at={at} />
          </>
        )}
        {functions.map((one) => (
          <p className="feeds" key={one.name}>
            <b>{one.name}</b>: {one.summary}.{" "}
            {worksOf(one)
              .map(({work, tag}) => `${work} (${tag})`)
              .join("; ")}
            .
          </p>
        ))}
      </div>
    </li>
  )
}

/** One thing that a formula uses: its words, its value or values, and in quiet type what those come from. */
function InputLine({
  store,
  input: {words, cells},
  onFollow,
}: {
  store: Store
  input: Input
  onFollow: (at: CellAddress) => void
}) {
  const {document} = store.getState()
  const first = cells[0]
  if (!first) return <li>{words}: nothing there</li>
  const column = document.sheets[first.sheet]!.columns[first.col]
  const isRow = isOneRow(cells)
  // What a sheet of measurements works out of them counts as they do.
  const isMeasured =
    column?.kind === "measured" ||
    (column?.kind === "worked out" &&
      document.sheets[first.sheet]!.columns.some(({kind}) => kind === "measured"))
  if (cells.length === 1)
    return (
      <li>
        <button className="link" onClick={() => onFollow(first)}>
          {words}
        </button>{" "}
        <ValueOf store={store} at={first} />
        <Beneath store={store} at={first} />
      </li>
    )
  if (cells.every((at) => store.valueAt(at) === null))
    return (
      <li>
        {words}: all {cells.length} blank
      </li>
    )
  return (
    <li>
      {words}
      {isMeasured && ` (${usedOf(cells, store.valueAt)})`}:{" "}
      {cells.slice(0, MOST_VALUES).map((at, i) => (
        <span key={i} className="one">
          {isRow && <LimitMark name={document.sheets[at.sheet]!.columns[at.col]!.heading} size={14} />}
          <button className="link" onClick={() => onFollow(at)}>
            {isRow && `${document.sheets[at.sheet]!.columns[at.col]!.heading} `}
            <ValueOf store={store} at={at} />
          </button>
        </span>
      ))}
      {cells.length > MOST_VALUES && <span className="q"> and {cells.length - MOST_VALUES} more</span>}
    </li>
  )
}

function ValueOf({store, at}: {store: Store; at: CellAddress}): ReactNode {
  const value = store.valueAt(at)
  if (isFault(value)) {
    if (value.code !== "#N/A") return value.code
    return withoutDay(isUnknownLimit(value, columnAt(store.getState().document, at)) ? value : undefined)
  }
  return <span className="n">{value === null || value === "" ? "blank" : shownText(store, at)}</span>
}

/** In quiet type, what a worked-out input itself uses: one look ahead. */
function Beneath({store, at}: {store: Store; at: CellAddress}) {
  const {inputs} = takenOrigin(store, at)
  const told = inputs.filter(({cells}) => cells.length > 0 && !isOwnKey(at, cells)).slice(0, 4)
  if (told.length === 0) return null
  return (
    <span className="feeds">
      {" from "}
      {told.map(({words, cells}, i) => (
        <span key={i}>
          {i > 0 && "; "}
          {words}
          {cells.length === 1 && (
            <>
              {" "}
              <ValueOf store={store} at={cells[0]!} />
            </>
          )}
        </span>
      ))}
    </span>
  )
}

/** What else the row of a typed or measured value says: its source and dates in any case, and what comes first of the rest. */
function OwnRow({store, at}: {store: Store; at: CellAddress}) {
  const {document} = store.getState()
  const sheet = document.sheets[at.sheet]!
  const source = sourceColumn(sheet)
  const told = sheet.columns.flatMap(({heading, format}, col) => {
    const value = sheet.rows[at.row]?.[col]
    return col === at.col ||
      col === 0 ||
      value === null ||
      value === undefined ||
      value === "=" ||
      String(value).length > 160
      ? []
      : [
          {
            text: `${heading}: ${shownText(store, {...at, col})}`,
            isProof: col === source || format === "date",
          },
        ]
  })
  const rest = told.filter(({isProof}) => !isProof)
  const first = new Set(rest.slice(0, Math.max(0, MOST_OF_ROW - (told.length - rest.length))))
  const shown = told.filter((one) => one.isProof || first.has(one))
  return shown.length > 0 ? (
    <p className="feeds">{shown.map(({text}) => sentenceEnd(text)).join(" ")}</p>
  ) : null
}
const MOST_OF_ROW = 6
const sentenceEnd = (text: string) => (/[.!?]$/.test(text) ? text : `${text}.`)

const nameOf = ({workbook}: Store, at: CellAddress) => cellName(workbook.document, at, rowNames(workbook))

/** What a cell shows, with its unit. */
function shownText(store: Store, at: CellAddress): string {
  const {document} = store.getState()
  const isDate = store.workbook.isDateAt(at)
  return textWithUnit(store.valueAt(at), cellColumn(document, at), isDate, regionOf(document))
}

function Users({store, at, onGo}: {store: Store; at: CellAddress; onGo: (at: CellAddress) => void}) {
  const users = store.workbook.usersOf(at)
  if (users.length === 0) return <p className="feeds">No formula uses this cell.</p>
  return <UserList store={store} users={users} depth={1} onGo={onGo} />
}

interface UserListProps {
  store: Store
  users: readonly CellAddress[]
  /** How many steps these are from the chosen cell. */
  depth: number
  onGo: (at: CellAddress) => void
}

function UserList({store, users, depth, onGo}: UserListProps) {
  const {document} = store.getState()
  return (
    <ul className="inputs">
      {users.slice(0, MOST_USERS).map((user) => (
        <User key={addressText(document, user)} store={store} user={user} depth={depth} onGo={onGo} />
      ))}
      {users.length > MOST_USERS && <li className="q">and {users.length - MOST_USERS} more</li>}
    </ul>
  )
}

/** One cell that uses another; on request who uses it in turn, a few steps on. */
function User({store, user, depth, onGo}: Omit<UserListProps, "users"> & {user: CellAddress}) {
  const {document} = store.getState()
  const [isOpen, setOpen] = useState(false)
  const next = depth < MOST_OPEN ? store.workbook.usersOf(user) : []
  return (
    <li>
      <button className="link" onClick={() => onGo(user)}>
        {nameOf(store, user)}, {document.sheets[user.sheet]!.name}
      </button>{" "}
      <ValueOf store={store} at={user} />{" "}
      {next.length > 0 && (
        <button className="plain small" aria-expanded={isOpen} onClick={() => setOpen(!isOpen)}>
          used by {next.length}
          <span className="hide"> of its own: {nameOf(store, user)}</span>
        </button>
      )}
      {isOpen && <UserList store={store} users={next} depth={depth + 1} onGo={onGo} />}
    </li>
  )
}

const Address = ({store, at, onGo}: {store: Store; at: CellAddress; onGo: (at: CellAddress) => void}) => {
  const {document, cell} = store.getState()
  const text = addressText(document, at, cell.sheet)
  return isSameCell(at, cell) ? (
    <span className="kind">{text}</span>
  ) : (
    <button className="link small" onClick={() => onGo(at)}>
      go to {text}
    </button>
  )
}

const takenOrigin = ({workbook}: Store, at: CellAddress) =>
  originOf(workbook, at, rowNames(workbook), rowsTaken(workbook, at))

/** Limits that stand side by side come first, what is too long to be told whole last; between them the order of the formula. */
const placeOf = ({cells}: Input) => (isOneRow(cells) ? 0 : cells.length > MOST_VALUES ? 2 : 1)

const isOneRow = (cells: readonly CellAddress[]) =>
  cells.length > 1 && cells.every(({row}) => row === cells[0]!.row)

/** A row is looked up by the name in its first column: that name is no news. */
const isOwnKey = (at: CellAddress, cells: readonly CellAddress[]) =>
  cells.every(({col}) => col === 0) &&
  (cells.length !== 1 || cells[0]!.row === at.row || cells[0]!.sheet !== at.sheet)
