import type {Plan} from "../workbook/plan"
import {SeasonCalendar} from "./pictures/SeasonCalendar"
import {calendarFinding, calendarTable} from "./pictures/calendarWords"
import {HEAD_HEIGHT, ROW_HEIGHT} from "./sheetSize"
import {useWide} from "./useEditor"
import {Welcome} from "./Welcome"
import "./tokens.css"
import "./page.css"
import "./sheet.css"

/** The season plan of a workbook as it was last worked out. */
export interface Look {
  readonly name: string
  readonly season?: string | undefined
  readonly plan: Plan
}

const SHOWN = ["Planting", "Opens", "Closes", "Days", "Held by", "Crop", "Crop, low to high"]

/** The plan as it was last worked out, to be read while the engine is still being loaded. */
export function FirstLook({look: {name, season, plan}, isFirstVisit}: {look: Look; isFirstVisit: boolean}) {
  const beside = useWide(60)
  const {headings, rows} = calendarTable(plan)
  const columns = SHOWN.map((heading) => headings.indexOf(heading)).filter((column) => column >= 0)
  return (
    <>
      <header className="head">
        <span className="mark">Fernledger</span>
        <span className="book">
          <b>{name}</b>
          {season && `, ${season}`}
        </span>
      </header>
      <div className="rules" />
      <div className="page">
        <div className="contents" />
        <main aria-busy="true">
          <div className="title">
            <h1>Season plan</h1>
            <p className="finding">{calendarFinding(plan)}</p>
            {isFirstVisit && <Welcome />}
          </div>
          <div className="spread">
            <div className="sheet plain">
              <table>
                <thead>
                  <tr style={{height: HEAD_HEIGHT}}>
                    {columns.map((column) => (
                      <th key={column} scope="col" aria-label={headings[column]}>
                        <span className="col-head txt">{headings[column]}</span>
                      </th>
                    ))}
                  </tr>
                </thead>
                <tbody>
                  {rows.map((row, i) => (
                    <tr key={i} style={{height: ROW_HEIGHT}}>
                      {columns.map((column) => (
                        <td key={column} data-align="left">
                          {row[column]}
                        </td>
                      ))}
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
            <div className="cal">
              <SeasonCalendar
                plan={plan}
                selected={null}
                onSelect={() => {}}
                headHeight={HEAD_HEIGHT}
                rowHeight={ROW_HEIGHT}
                labels={beside ? "beside" : "inside"}
              />
            </div>
          </div>
        </main>
      </div>
      <footer className="folio">
        <span role="status">The plan as it was last worked out. It is being worked out anew.</span>
      </footer>
    </>
  )
}
