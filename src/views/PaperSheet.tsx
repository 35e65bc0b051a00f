import {measureOf} from "../editor/measures"
import {onlyRows} from "../editor/selection"
import type {EditorState, Store} from "../editor/store"
import {cellName, rowNames} from "../editor/words"
import {keptInView, type CellAddress, type Note} from "../workbook/document"
import {extraAt} from "../workbook/extras"
import {columnLetters} from "../workbook/formula"
import {regionOf} from "../workbook/region"
import {kindAt, type CellKind} from "../workbook/trace"
import {cellViewAt, isWordColumn, TOTAL_ROW} from "./cellView"
import {columnGroups} from "./columnGroups"
import {NoteWords} from "./NotePanel"
import {textWidth} from "./pictures/placing"
import {useEditor} from "./useEditor"
import {usePrinting} from "./usePrinting"

/** px that a line of the table has on A4, the narrower of the two papers, between the margins of 14 mm. */
const ROOM = 680
/** Chosen: so many rows are printed of a sheet; more is no paper anybody reads. */
const MOST_ROWS = 1500

/** The open sheet on paper: a plain table, in groups of columns that fit the page, each beginning with the names of the rows. */
export function PaperSheet({store}: {store: Store}) {
  const isPrinting = usePrinting()
  return isPrinting ? <Tables store={store} /> : null
}

const LETTERS = 13 // px, as the style of the table has them
const BOLD = 1.06 // of their width; chosen
const BESIDE = 13 // px on both sides of a text, and the line
const LONGEST = 256 // px, as the style has it: a longer text is wrapped

/** About how wide a column is on paper, px: a heading is wrapped between its words, and so is a long text. */
function paperWidth(heading: string, unit: string, texts: readonly string[]): number {
  const words = [...heading.split(" "), unit].map((word) => BOLD * textWidth(word, LETTERS))
  const widest = texts.reduce((most, text) => Math.max(most, textWidth(text, LETTERS)), 0)
  return BESIDE + Math.max(...words, Math.min(widest, LONGEST))
}

function Tables({store}: {store: Store}) {
  const state = useEditor(store)
  const {document, cell} = state
  const sheet = document.sheets[cell.sheet]!
  const region = regionOf(document)
  const all = onlyRows(state, cell.sheet) ?? sheet.rows.map((_, row) => row)
  const rows = all.slice(0, MOST_ROWS)
  const texts = (col: number) =>
    [...rows, TOTAL_ROW].map((row) => cellViewAt(store, {sheet: cell.sheet, row, col}).text)
  const widths = sheet.columns.map((column, col) =>
    paperWidth(column.heading, measureOf(column.unit, region).unit, texts(col)),
  )
  const remarks = remarksOn(state, rows)
  // By letters: a small figure beside a number would be read with it.
  const letters = new Map(remarks.map(({at}, i) => [`${at.row}:${at.col}`, columnLetters(i).toLowerCase()]))
  const hasTotal = sheet.columns.some(({total}) => total !== undefined)
  const line = (row: number, cols: readonly number[]) => (
    <tr key={row}>
      {cols.map((col) => {
        const {text, align} = cellViewAt(store, {sheet: cell.sheet, row, col})
        const isLong = textWidth(text, LETTERS) > LONGEST
        return (
          <td key={col} className={isLong ? "txt long" : align === "left" ? "txt" : undefined}>
            {text}
            {letters.has(`${row}:${col}`) && <sup>{letters.get(`${row}:${col}`)}</sup>}
          </td>
        )
      })}
    </tr>
  )
  return (
    <div className="paper-sheet">
      {columnGroups(widths, keptInView(sheet), ROOM).map((cols) => (
        <table key={cols.join()}>
          <thead>
            <tr>
              {cols.map((col) => {
                const column = sheet.columns[col]!
                return (
                  <th key={col} scope="col" className={isWordColumn(column) ? "txt" : undefined}>
                    {column.heading} <small>{measureOf(column.unit, region).unit}</small>
                  </th>
                )
              })}
            </tr>
          </thead>
          <tbody>{rows.map((row) => line(row, cols))}</tbody>
          {hasTotal && <tbody className="total">{line(TOTAL_ROW, cols)}</tbody>}
        </table>
      ))}
      {rows.length < all.length && (
        <p>
          The first {rows.length} of {all.length} rows.
        </p>
      )}
      {remarks.length > 0 && (
        <ol>
          {remarks.map(({at, kind, note}) => (
            <li key={`${at.row}:${at.col}`}>
              {at.col === 0 ? cellViewAt(store, at).text : cellName(document, at, rowNames(store.workbook))}:{" "}
              {kind && `${kind}. `}
              {note && <NoteWords note={note} />}
            </li>
          ))}
        </ol>
      )}
    </div>
  )
}

/** What paper says in words below its tables: there a mark has no colour and opens nothing. */
interface Remark {
  readonly at: CellAddress
  /** What the cell is besides what its column says: typed over, questioned. */
  readonly kind: CellKind | null
  readonly note: Note | null
}

function remarksOn({document, cell: {sheet}}: EditorState, rows: readonly number[]): readonly Remark[] {
  return rows.flatMap((row) =>
    document.sheets[sheet]!.columns.flatMap((_, col) => {
      const at = {sheet, row, col}
      const found = kindAt(document, at)
      const kind = found === "typed over" || found === "questioned" ? found : null
      const note = extraAt(document, at)?.note ?? null
      return kind || note ? [{at, kind, note}] : []
    }),
  )
}
