import {measureOf} from "../editor/measures"
import {onlyRows} from "../editor/selection"
import type {Store} from "../editor/store"
import {keptInView} from "../workbook/document"
import {regionOf} from "../workbook/region"
import {cellViewAt, isWordColumn, TOTAL_ROW} from "./cellView"
import {columnGroups} from "./columnGroups"
import {drawnWidth} from "./sheetSize"
import {useEditor} from "./useEditor"
import {usePrinting} from "./usePrinting"

/** px that a line of the table has on A4 or Letter, at the size it is printed in; chosen a little too small. */
const ROOM = 800
/** Chosen: so many rows are printed of a sheet; more is no paper anybody reads. */
const MOST_ROWS = 1500

/** The open sheet on paper: a plain table, in groups of columns that fit the page, each beginning with the names of the rows. */
export function PaperSheet({store}: {store: Store}) {
  const isPrinting = usePrinting()
  return isPrinting ? <Tables store={store} /> : null
}

function Tables({store}: {store: Store}) {
  const state = useEditor(store)
  const {document, cell} = state
  const sheet = document.sheets[cell.sheet]!
  const region = regionOf(document)
  const all = onlyRows(state, cell.sheet) ?? sheet.rows.map((_, row) => row)
  const rows = all.slice(0, MOST_ROWS)
  const widths = sheet.columns.map((column, col) => drawnWidth(column, col, region))
  const hasTotal = sheet.columns.some(({total}) => total !== undefined)
  const line = (row: number, cols: readonly number[]) => (
    <tr key={row}>
      {cols.map((col) => {
        const {text, align} = cellViewAt(store, {sheet: cell.sheet, row, col})
        return (
          <td key={col} className={align === "left" ? "txt" : undefined}>
            {text}
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
    </div>
  )
}
