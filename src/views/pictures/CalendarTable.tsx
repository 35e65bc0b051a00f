import {memo, useDeferredValue} from "react"
import {dateText} from "../../editor/display"
import type {Plan} from "../../workbook/plan"
import {calendarTable} from "./calendarWords"

/** The season calendar in words: the same plan as the picture, closed until it is asked for and drawn after it. */
export function CalendarTable({plan}: {readonly plan: Plan}) {
  return <Table plan={useDeferredValue(plan)} />
}

const Table = memo(function Table({plan}: {readonly plan: Plan}) {
  const {headings, rows, crop} = calendarTable(plan)
  return (
    <details className="twin">
      <summary>The same as a table</summary>
      {plan.asOf !== null && <p>As of {dateText(plan.asOf)}.</p>}
      <WordTable caption="Season of each planting, and its limits" headings={headings} rows={rows} />
      {crop.rows.length > 0 && (
        <WordTable caption="Expected crop of the farm, each day" headings={crop.headings} rows={crop.rows} />
      )}
    </details>
  )
})

interface WordTableProps {
  readonly caption: string
  readonly headings: readonly string[]
  readonly rows: readonly (readonly string[])[]
}

function WordTable({caption, headings, rows}: WordTableProps) {
  return (
    <div className="twin-scroll" tabIndex={0} role="region" aria-label={caption}>
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            {headings.map((heading, column) => (
              <th key={column} scope="col">
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, ...cells], index) => (
            <tr key={index}>
              <th scope="row">{name}</th>
              {cells.map((cell, column) => (
                <td key={column}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
