import {useEffect, useMemo, useRef, useState, useSyncExternalStore} from "react"
import {dayOf} from "../../functions/calendar"
import {dayText} from "../editor/display"
import {fieldPlantings, fieldRowText, lastDays} from "../editor/field"
import {takeFieldRowBack} from "../editor/commands/season"
import type {Command, Store} from "../editor/store"
import {markAt} from "../storage/ownDevice"
import {isoDate, isoTime} from "../workbook/clock"
import {lastEntered, type FieldMark} from "../workbook/fieldActs"
import {regionOf} from "../workbook/region"
import {FieldPicking} from "./FieldPicking"
import {FieldSample} from "./FieldSample"
import {FieldSpears} from "./FieldSpears"
import {FieldTravel} from "./FieldTravel"
import type {Keeping} from "./keeping"
import {useEditor} from "./useEditor"
import "./field.css"

const JOBS = ["Add picking", "Count spears", "Root sample"] as const
type Job = (typeof JOBS)[number]

/** What is entered in the field, with large buttons, one thumb and no network. Its rows land in the workbook. */
export function FieldPage({store, keeping}: {store: Store; keeping: Keeping}) {
  const [job, setJob] = useState<Job>("Add picking")
  const saving = useSyncExternalStore(keeping.subscribe, keeping.words)
  const state = useEditor(store)
  const plantings = fieldPlantings(store.workbook)
  const [chosen, setChosen] = useState(
    plantings.find(({last}) => last !== null)?.name ?? plantings[0]?.name ?? "",
  )
  const planting = plantings.find(({name}) => name === chosen) ?? plantings[0]
  const today = useSyncExternalStore(onAnotherLook, isoToday)
  const [earlier, setEarlier] = useState<string | null>(null)
  const day = earlier ?? today
  const [moment, setMoment] = useState(() => new Date().toISOString())
  const [tookBack, setTookBack] = useState(false)
  const last = useMemo(() => lastEntered(state.document, moment), [state.document, moment])
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => heading.current?.focus(), [job])

  const act = (command: (mark: FieldMark) => Command, takesBack: boolean) => {
    const mark = markAt(new Date())
    setMoment(mark.entered)
    if (store.run(command(mark))) setTookBack(takesBack)
  }
  const add = (command: (mark: FieldMark) => Command) => act(command, false)
  const takeBack = () => last && act((mark) => takeFieldRowBack(last.id, mark), true)
  const lastWords =
    last && `${isoTime(new Date(last.entered))} ${fieldRowText(last.row, regionOf(state.document))}`
  const body =
    planting &&
    {
      "Add picking": (
        <FieldPicking
          key={`${planting.name} ${day}`}
          store={store}
          planting={planting}
          day={day}
          onAdd={add}
        />
      ),
      "Count spears": <FieldSpears store={store} planting={planting} day={day} onAdd={add} />,
      "Root sample": (
        <FieldSample
          key={`${planting.name} ${day}`}
          store={store}
          planting={planting}
          day={day}
          onAdd={add}
        />
      ),
    }[job]
  return (
    <main className="field">
      <div className="field-head">
        <button className="plain" onClick={() => store.turn(() => ({page: "book"}))}>
          Back
        </button>
        <h1 ref={heading} tabIndex={-1}>
          {job}
        </h1>
        <span />
      </div>
      <div className="field-jobs" role="group" aria-label="Jobs of the field">
        {JOBS.map((one) => (
          <button key={one} aria-pressed={one === job} onClick={() => setJob(one)}>
            {one}
          </button>
        ))}
      </div>
      {planting ? (
        <>
          <div className="field-where">
            <label>
              Planting
              <select value={planting.name} onChange={({currentTarget}) => setChosen(currentTarget.value)}>
                {plantings.map(({name}) => (
                  <option key={name}>{name}</option>
                ))}
              </select>
            </label>
            <label>
              Day
              <select
                value={day}
                onChange={({currentTarget: {value}}) => setEarlier(value === today ? null : value)}
              >
                {lastDays(today).map((one, i) => (
                  <option key={one} value={one}>
                    {i === 0 ? `today, ${dayText(dayOf(one)!)}` : dayText(dayOf(one)!)}
                  </option>
                ))}
              </select>
            </label>
          </div>
          {body}
        </>
      ) : (
        <p>No planting is in this workbook yet: go back, and add one on the sheet Plantings.</p>
      )}
      <div className="field-added">
        <span role="status">
          {tookBack && "Taken back. "}
          {lastWords
            ? `${tookBack ? "Before it" : "Added"} ${lastWords}`
            : !tookBack && "Nothing added of late"}
        </span>
        <button disabled={!last} onClick={takeBack}>
          Take back
        </button>
      </div>
      <p className="field-saved" role="status">
        {saving}. No network needed.
      </p>
      <FieldTravel rows={state.document.field?.length ?? 0} send={keeping.sendFieldRows} />
    </main>
  )
}

const isoToday = () => isoDate(new Date())

/** A page that was left open in the evening shows the next morning's day: when it is seen again, and each minute. */
function onAnotherLook(told: () => void): () => void {
  const timer = setInterval(told, 60_000)
  document.addEventListener("visibilitychange", told)
  return () => {
    clearInterval(timer)
    document.removeEventListener("visibilitychange", told)
  }
}
