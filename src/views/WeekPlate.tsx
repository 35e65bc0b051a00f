import {memo, useRef, useState} from "react"
import {dayOf, isoOf} from "../../functions/calendar"
import {closeToFern, takeWeek} from "../editor/commands/season"
import {dateText, dayText, numberText, shownIn} from "../editor/display"
import {closeDoubt} from "../editor/pickingDoubts"
import type {Store} from "../editor/store"
import type {CellAddress, Part} from "../workbook/document"
import {planOf} from "../workbook/plan"
import {lastDayCut, type PlantingWeek, type SeasonWeek} from "../workbook/season"
import {PickedSoFar} from "./pictures/PickedSoFar"
import {textWidth} from "./pictures/placing"
import {WhatMoved} from "./pictures/WhatMoved"
import {cameInWords, goOnWords, movedWords} from "./pictures/weekWords"
import "./week.css"

interface Props {
  store: Store
  week: SeasonWeek
  /** Goes to a cell and gives it the keyboard. */
  onGo: (at: CellAddress) => void
  /** Opens the sheet that has a column of a part. */
  onOpen: (part: Part) => void
}

/** The page of the week: its four questions in the order of the job, each with its picture, its figures and its acts. */
export const WeekPlate = memo(function WeekPlate({store, week, onGo, onOpen}: Props) {
  return (
    <div className="week">
      <section aria-labelledby="came-in">
        <div>
          <h2 id="came-in">What came in</h2>
          <p>{cameInWords(week)}</p>
        </div>
        <PickedSoFar week={week} onGo={onGo} />
        <PickedTable week={week} />
      </section>
      <section aria-labelledby="moved">
        <div>
          <h2 id="moved">What moved</h2>
          <p>{movedWords(week)}</p>
        </div>
        <WhatMoved plantings={week.plantings} onGo={onGo} />
        <div>
          <p className="small q">
            Told against the plan that was used last week; the plan as agreed stays beside both.
          </p>
          <button
            onClick={() => {
              const plan = planOf(store.workbook)
              if (plan && !store.run(takeWeek(plan), "This week’s plan is used."))
                store.turn(() => ({said: "The plan of this week is in use already."}))
            }}
          >
            Use this week’s plan
          </button>
        </div>
      </section>
      <section aria-labelledby="go-on">
        <div>
          <h2 id="go-on">What it costs to go on</h2>
          <p>{goOnWords(week)}</p>
        </div>
        <GoOnTable week={week} />
      </section>
      <section aria-labelledby="to-do">
        <div>
          <h2 id="to-do">What to do</h2>
          <p>Each line says why. Nothing changes until you do it.</p>
        </div>
        <ul className="to-do">
          {week.plantings.map((one) => (
            <ToDo key={one.planting} store={store} week={week} planting={one} onOpen={onOpen} />
          ))}
        </ul>
      </section>
      <p className="guide">
        A general guide to judge by. Knives, night work, heat and long shifts hurt people: keep to your local
        code. After spraying wait as long as the label says.
      </p>
    </div>
  )
})

const WEEKDAYS = ["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"]

/** px: the widest name of a planting that leaves the days of the week their room beside the picture; chosen. */
const NAME_ROOM = 128
/** px: the letters of a table. */
const TABLE_LETTER = 15.5

/** What was picked by day, beside the picture, or under it where names ask for more room than is left there. */
function PickedTable({week: {plantings, asOf, region}}: {week: SeasonWeek}) {
  const isLong = plantings.some(({planting}) => textWidth(planting, TABLE_LETTER) > NAME_ROOM)
  const {unit, text} = shownIn("kg", region)
  const kg = (value: number | null) => (value === null || value === 0 ? "" : text(value, 0))
  const days = Array.from({length: 7}, (_, i) => asOf - 7 + i)
  const sum = (of: (one: PlantingWeek) => number | null) =>
    plantings.reduce((total, one) => total + (of(one) ?? 0), 0)
  const [picked, planned] = [sum((one) => one.picked), sum((one) => one.planned)]
  return (
    <div
      className={isLong ? "scroll wide long" : "scroll"}
      tabIndex={0}
      role="region"
      aria-label="Picked by day, can be scrolled sideways"
    >
      <table>
        <caption className="hide">
          Weight picked in the seven days before {dateText(asOf)}, {unit}
        </caption>
        <thead>
          <tr>
            <th scope="col" className="txt">
              Planting <small>{unit}</small>
            </th>
            {days.map((day) => (
              <th key={day} scope="col">
                {WEEKDAYS[(day - 2) % 7]} <small>{dayText(day).split(" ")[0]}</small>
              </th>
            ))}
            <th scope="col">
              Week <small>{unit}</small>
            </th>
            <th scope="col">
              Plan <small>%</small>
            </th>
          </tr>
        </thead>
        <tbody>
          {plantings.map((one) => (
            <tr key={one.planting}>
              <th scope="row" className="txt">
                {one.planting}
              </th>
              {one.days.map((weight, i) => (
                <td key={i}>{kg(weight)}</td>
              ))}
              <td>{kg(one.picked)}</td>
              <td>
                {one.planned && one.planned >= 0.5
                  ? numberText(((one.picked ?? 0) / one.planned) * 100, 0)
                  : ""}
              </td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" className="txt">
              Farm
            </th>
            {days.map((day, i) => (
              <td key={day}>{kg(sum((one) => one.days[i]!))}</td>
            ))}
            <td>{kg(picked)}</td>
            <td>{planned > 0 ? numberText((picked / planned) * 100, 0) : ""}</td>
          </tr>
        </tfoot>
      </table>
    </div>
  )
}

function GoOnTable({week: {plantings, asOf, region}}: {week: SeasonWeek}) {
  const [sells, worth] = [shownIn("kg/ha", region), shownIn("money/ha", region)]
  const known = plantings.filter(({dayWorth}) => dayWorth !== null)
  if (known.length === 0) return null
  return (
    <div
      className="scroll wide"
      tabIndex={0}
      role="region"
      aria-label="What one more day brings, can be scrolled sideways"
    >
      <table>
        <caption className="hide">What one more day of cutting brings, as of {dateText(asOf)}</caption>
        <thead>
          <tr>
            <th scope="col" className="txt">
              {dayText(asOf)}
            </th>
            <th scope="col">
              a day sells <small>{sells.unit} packed</small>
            </th>
            <th scope="col">
              worth <small>{worth.unit}</small>
            </th>
            <th scope="col">
              the price pays until <small>by the plan</small>
            </th>
            <th scope="col" className="txt">
              closes
            </th>
          </tr>
        </thead>
        <tbody>
          {known.map((one) => (
            <tr key={one.planting}>
              <th scope="row" className="txt">
                {one.planting}
              </th>
              <td>{sells.text(one.daySells ?? 0, 0)}</td>
              <td>{worth.text(one.dayWorth!, 0)}</td>
              <td>{one.paysUntil === null ? "not known" : dayText(one.paysUntil)}</td>
              <td className="txt">{one.close === null ? "" : `${dayText(one.close)}, ${one.heldBy}`}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small q">
        Worth: what it sells for at the pace so far, less picking, hauling and packing, less what it takes
        from next year. The plan has its price pay for the crop it expects, whatever came in.
      </p>
    </div>
  )
}

function ToDo({store, week, planting, onOpen}: Omit<Props, "onGo"> & {planting: PlantingWeek}) {
  const [closes, setCloses] = useState(false)
  const line = useRef<HTMLLIElement>(null)
  const {toDo, why} = planting
  return (
    <li ref={line} tabIndex={-1}>
      <b>{planting.planting}</b>
      <span>
        <b>{toDo}</b> <span className="q">{why}</span>
      </span>
      {/^Close to fern|^Skip/.test(toDo) && (
        <button aria-expanded={closes} onClick={() => setCloses(!closes)}>
          Close to fern…
        </button>
      )}
      {toDo === "Count spears" && <button onClick={() => onOpen("spear day")}>Spear size</button>}
      {closes && (
        <Closing
          store={store}
          planting={planting.planting}
          day={lastDayCut(planting, week.asOf)}
          reason={planting.heldBy}
          onDone={() => {
            setCloses(false)
            line.current?.focus() // what had the focus goes; the line says what was done
          }}
        />
      )}
    </li>
  )
}

function Closing({
  store,
  planting,
  day,
  reason: held,
  onDone,
}: {
  store: Store
  planting: string
  day: number
  reason: string
  onDone: () => void
}) {
  const [on, setOn] = useState(isoOf(day))
  const [reason, setReason] = useState(held)
  const [asked, setAsked] = useState("")
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault()
        const doubt = closeDoubt(store.workbook, planting, dayOf(on)!)
        if (doubt && !asked) return setAsked(`${doubt.told} ${doubt.asks}`)
        store.run(closeToFern(planting, on, reason))
        onDone()
      }}
    >
      <label>
        Last day of cutting{" "}
        <input
          type="date"
          required
          min="1900-01-01"
          max="2200-12-31"
          value={on}
          onChange={({currentTarget}) => {
            setOn(currentTarget.value)
            setAsked("") // another day is another question
          }}
        />
      </label>
      <label>
        because{" "}
        <input value={reason} required onChange={({currentTarget}) => setReason(currentTarget.value)} />
      </label>
      <button className="chief">
        Close {planting} to fern{asked && " all the same"}
      </button>
      <p aria-live="polite">{asked}</p>
    </form>
  )
}
