import {memo, useState} from "react"
import {shownIn} from "../editor/display"
import type {Store} from "../editor/store"
import type {Risk} from "../studies/risk"
import type {CellAddress, Part, Region} from "../workbook/document"
import type {CashYear, LenderPage} from "../workbook/lender"
import {CashAndDebt} from "./pictures/CashAndDebt"
import {coverOf, coverText, typedOverWords} from "./pictures/lenderWords"
import {inARow} from "./pictures/weekWords"
import {gapText} from "./pictures/yieldLayout"
import {YieldByAge} from "./pictures/YieldByAge"
import type {Keeping} from "./keeping"
import {EachPage} from "./EachPage"
import {RiskPanel} from "./RiskPanel"
import type {LenderShown} from "./lenderShown"
import "./lender.css"

/** What the study of risk found of a page; of the next plan's it says nothing. */
export interface RiskOf {
  readonly page: LenderPage
  readonly found: Risk
}

interface Props {
  store: Store
  shown: LenderShown
  keeping: Keeping
  found: Risk | null
  onFound: (risk: RiskOf | null) => void
  /** Goes to a cell and gives it the keyboard. */
  onGo: (at: CellAddress) => void
  /** Opens the sheet that has a column of a part. */
  onOpen: (part: Part) => void
}

/** The first page of the lender's copy: lines of plain text, two pictures, and what a reader has to know of the numbers. */
export const LenderPlate = memo(function LenderPlate({
  store,
  shown: {page, lists},
  keeping,
  found,
  onFound,
  onGo,
  onOpen,
}: Props) {
  const {name, season, reading} = store.getState().document
  return (
    <div className="lender">
      <EachPage plan={`${season ? `${name}, ${season}` : name}. ${page.lines[1]?.text ?? ""}`} />
      <dl className="five">
        {page.lines.map((line, i) => (
          <div key={line.name}>
            <dt>{line.name}</dt>
            <dd>
              {i === 0 && <b>{season ? `${name}, ${season}. ` : `${name}. `}</b>}
              {line.text}
            </dd>
          </div>
        ))}
      </dl>
      <div className="lists">
        <section aria-labelledby="typed-over">
          <h2 id="typed-over">{counted(lists.typedOver.length, "number", "typed over")}</h2>
          {lists.typedOver.length === 0 ? (
            <p className="small q">
              Every worked-out number on this page and under it comes from its formula.
            </p>
          ) : (
            <div className="scroll" tabIndex={0} role="region" aria-label="Numbers typed over">
              <table>
                <thead>
                  <tr>
                    <th scope="col" className="txt">
                      Cell
                    </th>
                    <th scope="col">typed</th>
                    <th scope="col">formula says</th>
                    <th scope="col" className="txt">
                      reason, person
                    </th>
                  </tr>
                </thead>
                <tbody>
                  {lists.typedOver.map(({at, name, typed, formula, note}) => (
                    <tr key={`${at.sheet}:${at.row}:${at.col}`}>
                      <th scope="row" className="txt">
                        <button className="link" onClick={() => onGo(at)}>
                          {name}
                        </button>
                      </th>
                      <td>{typed}</td>
                      <td>{formula}</td>
                      <td className="txt">{note}</td>
                    </tr>
                  ))}
                </tbody>
              </table>
            </div>
          )}
        </section>
        <section aria-labelledby="unsourced">
          <h2 id="unsourced">
            {counted(lists.unsourced.length, "input", "without a source")}
            {lists.silent.length > 0 && ", where a sheet has a place for one"}
          </h2>
          {lists.unsourced.length > 0 && (
            <ul>
              {lists.unsourced.map(({at, name, value}) => (
                <li key={`${at.sheet}:${at.row}:${at.col}`}>
                  <button className="link" onClick={() => onGo(at)}>
                    {name}
                  </button>{" "}
                  {value}
                </li>
              ))}
            </ul>
          )}
          {lists.silent.length > 0 && (
            <p className="small q">
              The inputs of {inARow(lists.silent)} have no column for a source: they are the grower’s own, and
              not in this count.
            </p>
          )}
        </section>
      </div>
      <div className="pictures">
        <div>
          <CashAndDebt page={page} risk={found} onGo={onGo} />
          <button className="link" onClick={() => onOpen("cash year")}>
            Cash and debt as a table
          </button>
        </div>
        <div>
          <YieldByAge page={page} onGo={onGo} />
          <YieldTable page={page} />
          <button className="link" onClick={() => onOpen("evidence planting")}>
            Yield evidence as a table
          </button>
        </div>
      </div>
      <RiskPanel
        store={store}
        page={page}
        found={found}
        onFound={(found) => onFound(found && {page, found})}
      />
      <CashTable page={page} />
      {!reading && <ReadingCopy preparedBy={page.preparedBy} keeping={keeping} />}
      <p className="guide">
        <span className="on-screen">Ask Where from on any number for what it rests on. </span>Cover: term debt
        coverage as the Farm Financial Standards Council defines it. Establishing a planting is paid in cash
        and asked of the replacement margin; it is no cost of its year, so it does not touch the cover, and
        what it loses in value belongs in Depreciation. A general guide, no score and no pass mark: each
        lender sets its own points.
      </p>
    </div>
  )
})

/** "replanting North Bench; cover typed over as 1.30" */
function causeWords(one: CashYear, region: Region): string {
  const typed = typedOverWords(one, region)
  return [one.cause, typed && `cover ${typed}`].filter(Boolean).join("; ")
}

/** The years of cash and debt as a table, on paper only: on the screen the sheet of that name has them. */
function CashTable({page: {years, region}}: {page: LenderPage}) {
  const {unit, text} = shownIn("money", region)
  const price = shownIn("money/kg", region)
  const cover = (value: number | null) => (value === null ? "" : coverText(value, region))
  const priceText = (value: number | null) => (value === null ? "" : price.text(value, 2))
  if (years.length === 0) return null
  return (
    <table className="on-paper">
      <caption>Cash and debt by year, {unit}</caption>
      <thead>
        <tr>
          {["Year", "to pay debt", "due", "left", "cover", "under stress"].map((heading) => (
            <th key={heading} scope="col">
              {heading}
            </th>
          ))}
          {["price", "break price"].map((heading) => (
            <th key={heading} scope="col">
              {heading} <small>{price.unit}</small>
            </th>
          ))}
          <th scope="col" className="txt">
            what presses
          </th>
        </tr>
      </thead>
      <tbody>
        {years.map((one) => (
          <tr key={one.year}>
            <th scope="row">{one.year}</th>
            <td>{text(one.capacity, 0)}</td>
            <td>{text(one.due, 0)}</td>
            <td>{text(one.capacity - one.due, 0)}</td>
            <td>{cover(one.cover === null ? null : coverOf(one))}</td>
            <td>{cover(one.stressed)}</td>
            <td>{priceText(one.price)}</td>
            <td>{priceText(one.breakPrice)}</td>
            <td className="txt">{causeWords(one, region)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** Keeps a copy that can be read but not changed, for whoever is to judge the plan. */
function ReadingCopy({preparedBy, keeping}: {preparedBy: string; keeping: Keeping}) {
  const [by, setBy] = useState(preparedBy)
  return (
    <form
      className="reading-copy"
      onSubmit={(event) => {
        event.preventDefault()
        void keeping.keepReadingCopy(by.trim())
      }}
    >
      <label>
        Made by{" "}
        <input
          required
          pattern=".*\S.*"
          value={by}
          onChange={({currentTarget}) => setBy(currentTarget.value)}
        />
      </label>
      <button>Make a reading copy</button>
      <p className="small q">
        A file for the lender: it opens for reading, and shows by its digest whether anything was changed on
        the way. A digest finds slips; it is not a signature. Give its first characters to the reader by
        another way too.
      </p>
    </form>
  )
}

const counted = (count: number, what: string, how: string) =>
  count === 0 ? `No ${what} ${how}` : `${count} ${count === 1 ? what : `${what}s`} ${how}`

function YieldTable({page: {yields, region}}: {page: LenderPage}) {
  const told = yields.filter(({mean, projection}) => mean !== null || (projection ?? 0) > 0)
  const {unit, text} = shownIn("kg/ha", region)
  const kg = (value: number | null) => (value === null ? "" : text(value, 0))
  if (told.length === 0) return null
  return (
    <div
      className="scroll"
      tabIndex={0}
      role="region"
      aria-label="Record and projection, can be scrolled sideways"
    >
      <table>
        <caption className="hide">Three-year record and projection of each planting, {unit}</caption>
        <thead>
          <tr>
            <th scope="col" className="txt">
              Planting
            </th>
            <th scope="col">
              record <small>{unit}</small>
            </th>
            <th scope="col">
              this season <small>{unit}</small>
            </th>
            <th scope="col">gap</th>
            <th scope="col">
              as if this old <small>{unit}</small>
            </th>
            <th scope="col" className="txt">
              reason given
            </th>
          </tr>
        </thead>
        <tbody>
          {told.map(({planting, mean, atThisAge, projection, gap, reason}) => (
            <tr key={planting}>
              <th scope="row" className="txt">
                {planting}
              </th>
              <td>{kg(mean)}</td>
              <td>{kg(projection)}</td>
              <td>{gap === null ? "" : gapText(gap)}</td>
              <td>{kg(atThisAge)}</td>
              <td className="txt">{reason}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
