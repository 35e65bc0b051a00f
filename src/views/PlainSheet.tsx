import {measureOf} from "../editor/measures"
import type {Store} from "../editor/store"
import {columnLetters} from "../workbook/formula"
import {regionOf} from "../workbook/region"
import {cellViewAt, isWordColumn} from "./cellView"
import {drawnWidth, HEAD_HEIGHT, MOST_ROWS_SHOWN, NUMBERS_WIDTH, ROW_HEIGHT} from "./sheetSize"
import {useEditor, useWide} from "./useEditor"
import "./sheet.css"

/** The open sheet as a plain table, to be read while the grid is still being loaded. */
export function PlainSheet({store}: {store: Store}) {
  const {document, cell} = useEditor(store)
  const numbers = useWide(40)
  const {columns, rows} = document.sheets[cell.sheet]!
  return (
    <div className="sheet plain">
      <table aria-busy="true">
        <colgroup>
          {numbers && <col style={{width: NUMBERS_WIDTH}} />}
          {columns.map((column, col) => (
            <col key={col} style={{width: drawnWidth(column, col, regionOf(document))}} />
          ))}
        </colgroup>
        <thead>
          <tr style={{height: HEAD_HEIGHT}}>
            {numbers && (
              <th scope="col">
                <span className="hide">Row</span>
              </th>
            )}
            {columns.map((column, col) => (
              <th key={col} scope="col" aria-label={column.heading}>
                <span className={`col-head ${isWordColumn(column) ? "txt" : ""}`}>
                  <span className="let">{columnLetters(col)}</span>
                  <span className="heading">{column.heading}</span>
                  <span className="unit">{measureOf(column.unit, regionOf(document)).unit || "\u00a0"}</span>
                </span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, MOST_ROWS_SHOWN).map((_, row) => (
            <tr key={row} style={{height: ROW_HEIGHT}}>
              {numbers && <td className="no">{row + 1}</td>}
              {columns.map((_, col) => {
                const {text, align} = cellViewAt(store, {sheet: cell.sheet, row, col})
                return (
                  <td key={col} data-align={align}>
                    {text}
                  </td>
                )
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
