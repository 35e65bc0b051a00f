import {useMemo, useState} from "react"
import {bringingOf, matchesOf, type CsvTable, type Match, type UnitSaid} from "../editor/csvIn"
import {fieldBringing} from "../editor/fieldBringing"
import type {FieldFile} from "../editor/fieldFile"
import {keepEditing} from "../editor/editing"
import {measureOf} from "../editor/measures"
import {choose} from "../editor/selection"
import type {Store} from "../editor/store"
import type {Taken} from "../storage/book/documentOf"
import type {Document} from "../workbook/document"
import {regionOf} from "../workbook/region"
import {PastePreview} from "./AskedQuestion"
import type {Foreign, Keeping} from "./keeping"
import {LeftList} from "./LeftList"
import {PanelFrame} from "./PanelFrame"
import {useEditor} from "./useEditor"

interface Props {
  store: Store
  keeping: Keeping
  onClose: () => void
}

/** Tables and workbooks of other programs: shown first, brought in when the person says so. */
export function BringInPanel({store, keeping, onClose}: Props) {
  const [found, setFound] = useState<Foreign | null>(null)
  const look = async () => {
    const read = await keeping.readForeign()
    if (read) setFound(read)
  }
  return (
    <PanelFrame title="Bring in" holds="files-panel" onClose={onClose}>
      <p>
        A table in text (.csv) for one of the sheets, field rows of another device, or a workbook of another
        program (.xlsx, .ods). You see what it holds before anything is written.
      </p>
      <div className="acts">
        <button className={found ? undefined : "chief"} onClick={() => void look()}>
          Choose a file…
        </button>
      </div>
      <p className="why" aria-live="polite">
        {found &&
          "refused" in found &&
          `${found.name} is not read. ${found.refused}. What was open is as it was.`}
      </p>
      {found && "workbook" in found && (
        <WorkbookFound
          name={found.name}
          taken={found.workbook}
          onOpen={() => {
            if (!keepEditing(store, 0, 0)) return
            keeping.openRead(found.workbook.document)
            onClose()
          }}
        />
      )}
      {found && "field" in found && (
        <FieldRowsFound store={store} name={found.name} file={found.field} onDone={onClose} />
      )}
      {found && "table" in found && (
        <TableFound key={found.name} store={store} name={found.name} table={found.table} onDone={onClose} />
      )}
    </PanelFrame>
  )
}

function WorkbookFound({name, taken, onOpen}: {name: string; taken: Taken; onOpen: () => void}) {
  const {document, formulas, asValues, left} = taken
  return (
    <>
      <h3>{name}</h3>
      <div className="preview" tabIndex={0} role="group" aria-label="Its sheets, can be scrolled">
        <table>
          <thead>
            <tr>
              <th scope="col">Sheet</th>
              <th scope="col">rows</th>
              <th scope="col">columns</th>
            </tr>
          </thead>
          <tbody>
            {document.sheets.map(({name, rows, columns}) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td className="n">{rows.length}</td>
                <td>
                  {columns
                    .map(({heading}) => heading)
                    .slice(0, 4)
                    .join(", ")}
                  {columns.length > 4 && ` and ${columns.length - 4} more`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p>
        {formulas} of its formulas are read as formulas
        {asValues ? `, ${asValues} as the values they had` : ""}. It has no plan or cases: those are in file
        copies alone.
      </p>
      {left.length > 0 && (
        <>
          <p>What cannot be kept:</p>
          <LeftList left={left} />
        </>
      )}
      <div className="acts">
        <button className="chief" onClick={onOpen}>
          Open it as a workbook
        </button>
      </div>
      <p className="small q">What is open now is one undo away.</p>
    </>
  )
}

interface FieldRowsProps {
  store: Store
  name: string
  file: FieldFile
  onDone: () => void
}

function FieldRowsFound({store, name, file, onDone}: FieldRowsProps) {
  useEditor(store) // what the rows are held against
  const {entries, told, added, takenOut, here, left} = fieldBringing(store.workbook, file)
  const bringIn = () => {
    if (!keepEditing(store, 0, 0)) return
    const words = counted(added, "field row")
    store.run(
      () => ({type: "addField", entries, from: "elsewhere", name: `${words} brought in`}),
      `${words} of ${name} brought in${takenOut ? `, ${takenOut} taken out` : ""}.`,
    )
    onDone()
  }
  return (
    <>
      <h3>{name}</h3>
      <p aria-live="polite">
        {counted(added, "row")} would be added
        {takenOut > 0 && `, ${takenOut} taken out`}
        {here > 0 && `, ${counted(here, "act")} of the field ${here === 1 ? "is" : "are"} known already`}
        {left.length > 0 && `, ${left.length} cannot be taken`}.
      </p>
      {told.length > 0 && <LeftList left={told} />}
      {left.length > 0 && (
        <>
          <p>Left out, and still in the file:</p>
          <LeftList left={left} />
        </>
      )}
      <div className="acts">
        <button className="chief" disabled={entries.length === 0} onClick={bringIn}>
          Bring in what the field has
        </button>
      </div>
    </>
  )
}

interface TableProps {
  store: Store
  name: string
  table: CsvTable
  onDone: () => void
}

function TableFound({store, name, table, onDone}: TableProps) {
  const {document, cell} = useEditor(store)
  const [sheet, setSheet] = useState(() => likeliest(document, table, cell.sheet))
  const [said, setSaid] = useState<readonly UnitSaid[]>([])
  const matches = useMemo(() => matchesOf(document, sheet, table), [document, sheet, table])
  const bringing = useMemo(
    () => bringingOf(document, sheet, table, matches, said),
    [document, sheet, table, matches, said],
  )
  const {edit, rows, pieces, left, twins, taken} = bringing
  const isAsked = matches.some(({named}, i) => named !== null && (said[i] ?? null) === null)
  const bringIn = () => {
    if (!edit || !keepEditing(store, 0, 0)) return
    const row = document.sheets[sheet]!.rows.length
    store.run(() => edit, `${counted(rows, "row")} of ${name} brought into ${document.sheets[sheet]!.name}.`)
    store.turn(choose({sheet, row, col: 0}))
    onDone()
  }
  return (
    <>
      <h3>{name}</h3>
      {table.notice && <p className="why">{table.notice}</p>}
      <label>
        Into the sheet{" "}
        <select
          value={sheet}
          onChange={({currentTarget}) => {
            setSheet(Number(currentTarget.value))
            setSaid([])
          }}
        >
          {document.sheets.map(({name}, i) => (
            <option key={name} value={i}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <div className="preview" tabIndex={0} role="group" aria-label="Where its columns go, can be scrolled">
        <table>
          <thead>
            <tr>
              <th scope="col">Column of the file</th>
              <th scope="col">goes to</th>
            </tr>
          </thead>
          <tbody>
            {matches.map((match, i) => (
              <tr key={i}>
                <th scope="row">{match.heading || "no heading"}</th>
                <td>
                  <Goes
                    document={document}
                    sheet={sheet}
                    match={match}
                    said={said[i] ?? null}
                    onSay={(answer) => setSaid(matches.map((_, k) => (k === i ? answer : (said[k] ?? null))))}
                  />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p aria-live="polite">
        {isAsked
          ? "Say first what the units of the columns marked above are."
          : `${counted(rows, "row")} would be added below the last one${left.length ? `, ${left.length} cannot` : ""}${twins ? `, ${twins} stand there already` : ""}.`}
        {taken === "," && " Commas are taken as decimal points."}
        {taken === "." && " Points are taken as decimal commas."}
      </p>
      {left.length > 0 && <LeftList left={left} />}
      {!isAsked && pieces.length > 0 && <PastePreview pieces={pieces} />}
      <div className="acts">
        <button className="chief" disabled={!edit || isAsked} onClick={bringIn}>
          Bring in {counted(rows, "row")}
        </button>
      </div>
    </>
  )
}

interface GoesProps {
  document: Document
  sheet: number
  match: Match
  said: UnitSaid
  onSay: (said: UnitSaid) => void
}

/** Where a column goes, and the question of its unit where the heading names another. */
function Goes({document, sheet, match: {heading, to, why, named, turns}, said, onSay}: GoesProps) {
  if (to === null) return <>nowhere: {why}</>
  const column = document.sheets[sheet]!.columns[to]!
  const unit = measureOf(column.unit, regionOf(document)).unit
  if (named === null) return <>{unit ? `${column.heading}, taken as ${unit}` : column.heading}</>
  return (
    <label>
      {column.heading}{" "}
      <select
        aria-label={`Unit of ${heading}`}
        value={said ?? ""}
        onChange={({currentTarget}) => onSay((currentTarget.value || null) as UnitSaid)}
      >
        <option value="">which unit?</option>
        {turns && <option value="turn">{`in ${named}: turn it into ${unit}`}</option>}
        <option value="as shown">{unit ? `it is ${unit} already` : "as it stands"}</option>
        <option value="leave out">leave it out</option>
      </select>
    </label>
  )
}

const counted = (count: number, thing: string) => `${count} ${count === 1 ? thing : `${thing}s`}`

/** The sheet that most columns of a table fit, the open one where it fits as well as any. */
function likeliest(document: Document, table: CsvTable, open: number): number {
  const fit = (sheet: number) => matchesOf(document, sheet, table).filter(({to}) => to !== null).length
  const best = Math.max(...document.sheets.map((_, sheet) => fit(sheet)))
  return fit(open) === best ? open : document.sheets.findIndex((_, sheet) => fit(sheet) === best)
}
