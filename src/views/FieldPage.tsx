import {useEffect, useMemo, useRef, useState, useSyncExternalStore} from "react"
import {dayOf} from "../../functions/calendar"
import {dayText, numberText, quantityText, shownIn, withDecimal} from "../editor/display"
import {
  addPicking,
  addSample,
  addSpears,
  fieldPlantings,
  fieldRowText,
  lastDays,
  nextPlant,
  pickingLate,
  pickingOdd,
  pickingRefused,
  sampleOdd,
  spearsCounted,
  spearSizes,
  spearSizeText,
  type FieldPlanting,
  type SpearCounts,
} from "../editor/field"
import {measureOf, storedNumber} from "../editor/measures"
import {takeFieldRowBack} from "../editor/commands/season"
import type {Command, Store} from "../editor/store"
import {deviceName, markAt, nameDevice} from "../storage/ownDevice"
import {isoDate, isoTime} from "../workbook/clock"
import {LONGEST_DEVICE} from "../workbook/document"
import {lastEntered, type FieldMark} from "../workbook/fieldActs"
import {namesIn} from "../workbook/names"
import {regionOf, type Decimal} from "../workbook/region"
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
        <Picking key={`${planting.name} ${day}`} store={store} planting={planting} day={day} onAdd={add} />
      ),
      "Count spears": <Spears store={store} planting={planting} day={day} onAdd={add} />,
      "Root sample": (
        <Sample key={`${planting.name} ${day}`} store={store} planting={planting} day={day} onAdd={add} />
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
      <Travel rows={state.document.field?.length ?? 0} send={keeping.sendFieldRows} />
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

/** How what was entered here comes to another device. */
function Travel({rows, send}: {rows: number; send: Keeping["sendFieldRows"]}) {
  const [name, setName] = useState(deviceName)
  const [said, setSaid] = useState("")
  return (
    <details className="field-travel">
      <summary>To another device</summary>
      <label>
        This device is called
        <input
          value={name}
          maxLength={LONGEST_DEVICE}
          onChange={({currentTarget}) => setName(currentTarget.value)}
          onBlur={() => {
            nameDevice(name)
            setName(deviceName())
          }}
        />
      </label>
      <button disabled={rows === 0} onClick={() => void send().then((words) => setSaid(words ?? ""))}>
        {rows === 0 ? "Nothing to send yet" : "Send all that was entered"}
      </button>
      <p role="status">{said}</p>
      <p>On the other device “Bring in…” adds each row once, however often and in whatever order.</p>
    </details>
  )
}

interface JobProps {
  store: Store
  planting: FieldPlanting
  day: string
  onAdd: (command: (mark: FieldMark) => Command) => void
}

function Picking({store, planting, day, onAdd}: JobProps) {
  const [digits, setDigits] = useState("")
  const [asked, setAsked] = useState("")
  const refused = pickingRefused(store.workbook, planting.name, day)
  const region = regionOf(store.getState().document)
  const measure = measureOf("kg", region)
  const kg = storedNumber(Number(digits), measure)
  const perHectare = planting.area && kg > 0 ? quantityText(kg / planting.area, 0, "kg/ha", region) : ""
  const last = planting.last
    ? `last ${quantityText(planting.last.kg, 0, "kg", region)} on ${dayText(planting.last.day)}`
    : ""
  const add = () => {
    const late = pickingLate(store.workbook, planting.name, day)
    const odd = [late, pickingOdd(planting, kg, region)].filter(Boolean).join(" ")
    if (odd && asked !== odd) return setAsked(odd)
    onAdd((mark) => addPicking(planting.name, day, kg, mark))
    setDigits("")
    setAsked("")
  }
  return (
    <>
      {refused && (
        <p className="field-wait" role="alert">
          {refused}.
        </p>
      )}
      <Amount digits={digits} unit={measure.unit} decimal={region.decimal} beside={[perHectare, last]} />
      <Pad
        digits={digits}
        decimal={region.decimal}
        onChange={(next) => {
          setDigits(next)
          setAsked("") // another weight is another question
        }}
      />
      {asked && (
        <p className="field-wait" role="alert">
          {asked}
        </p>
      )}
      <button className="chief field-do" disabled={refused !== null || !(kg > 0)} onClick={add}>
        {asked ? "Add it all the same" : "Add picking"}
      </button>
    </>
  )
}

const KEPT = "fernledger.spears" // a count in hand outlives a locked screen

function Spears({store, planting, day, onAdd}: JobProps) {
  const [taps, setTaps] = useState<readonly number[]>(keptTaps)
  const counts = countsOf(taps)
  const limit = spearLimit(store)
  const region = regionOf(store.getState().document)
  const {unit, text} = shownIn("mm", region)
  const {count, mean, thinner} = spearsCounted(counts, limit)
  const change = (next: readonly number[]) => {
    setTaps(next)
    localStorage.setItem(KEPT, JSON.stringify(next))
  }
  return (
    <>
      <p className="field-sums" aria-live="polite">
        <span>
          <b>{count}</b> spears
        </span>
        <span>
          <b>{mean === null ? "\u2013" : text(mean, 1)}</b> {unit} mean
        </span>
        {limit !== null && (
          <span>
            <b>{thinner}</b> under {text(limit)} {unit}
          </span>
        )}
      </p>
      <div className="field-sizes" role="group" aria-label={`Tap the diameter of each spear, ${unit}`}>
        {spearSizes(region).map((size) => (
          <button
            key={size}
            className={limit !== null && size < limit ? "thin" : ""}
            aria-label={`${spearSizeText(size, region)} ${unit}, ${counts[size] ?? 0} counted`}
            onClick={() => change([...taps, size])}
          >
            {spearSizeText(size, region)}
            <span className="tally">{tally(counts[size] ?? 0)}</span>
          </button>
        ))}
      </div>
      <div className="field-keep">
        <div className="field-added">
          <span>
            {taps.length
              ? `Last: ${spearSizeText(taps.at(-1)!, region)} ${unit}`
              : "Measure at the butt, culls included"}
          </span>
          <button disabled={taps.length === 0} onClick={() => change(taps.slice(0, -1))}>
            Take back one
          </button>
        </div>
        <button
          className="chief field-do"
          disabled={count === 0}
          onClick={() => {
            onAdd((mark) => addSpears(planting.name, day, counts, mark))
            change([])
          }}
        >
          Keep this count
        </button>
      </div>
    </>
  )
}

function Sample({store, planting, day, onAdd}: JobProps) {
  const [digits, setDigits] = useState("")
  const [measured, setMeasured] = useState<"sample reading" | "sample sugar">("sample reading")
  const [asked, setAsked] = useState("")
  const {document} = store.getState()
  const {decimal} = regionOf(document)
  const plant = nextPlant(store.workbook, planting.name, day)
  const isReading = measured === "sample reading"
  const value = Number(digits)
  const [most, unit] = isReading ? [50, "°Brix"] : [999, "mg/g"]
  const tooMuch =
    value > most ? `${numberText(value, undefined, decimal)} ${unit} is above ${most} ${unit}.` : ""
  const measure = (part: typeof measured) => {
    setMeasured(part)
    setAsked("")
  }
  const add = () => {
    const odd = sampleOdd(document, measured, value)
    if (odd && asked !== odd) return setAsked(odd)
    onAdd((mark) => addSample(planting.name, day, plant, measured, value, mark))
    setDigits("")
    setAsked("")
  }
  return (
    <>
      <div className="field-jobs" role="group" aria-label="What is measured">
        <button aria-pressed={isReading} onClick={() => measure("sample reading")}>
          Reading, °Brix
        </button>
        <button aria-pressed={!isReading} onClick={() => measure("sample sugar")}>
          Laboratory, mg/g
        </button>
      </div>
      <Amount digits={digits} unit={unit} decimal={decimal} beside={[`plant ${plant}`, tooMuch]} />
      <Pad
        digits={digits}
        decimal={decimal}
        onChange={(next) => {
          setDigits(next)
          setAsked("")
        }}
      />
      {asked && (
        <p className="field-wait" role="alert">
          {asked}
        </p>
      )}
      <button className="chief field-do" disabled={!(value > 0) || tooMuch !== ""} onClick={add}>
        {asked ? "Add it all the same" : `Add plant ${plant}`}
      </button>
    </>
  )
}

interface AmountProps {
  /** What is typed, with a point. */
  digits: string
  unit: string
  decimal: Decimal | undefined
  beside: readonly string[]
}

function Amount({digits, unit, decimal = ".", beside}: AmountProps) {
  return (
    <div className="field-amount">
      <span className="q">
        {beside.filter(Boolean).map((words) => (
          <span key={words}>{words}</span>
        ))}
      </span>
      <output aria-label="Typed so far">
        {digits === ""
          ? "0"
          : digits.endsWith(".")
            ? withDecimal(digits, decimal)
            : numberText(Number(digits), undefined, decimal)}{" "}
        <small>{unit}</small>
      </output>
    </div>
  )
}

/** The keys of a number; the keyboard's own digits work too. */
function Pad({
  digits,
  decimal = ".",
  onChange,
}: {
  digits: string
  decimal: Decimal | undefined
  onChange: (digits: string) => void
}) {
  const press = (key: string) => {
    if (key === "Clear") return onChange("")
    if (key === "." && digits.includes(".")) return
    const next = digits === "0" && key !== "." ? key : digits === "" && key === "." ? "0." : digits + key
    if (next.replace(".", "").length <= 6) onChange(next)
  }
  return (
    <div
      className="field-pad"
      role="group"
      aria-label="Digits"
      onKeyDown={({key}) => {
        if (/^[0-9]$/.test(key)) press(key)
        if (key === "." || key === ",") press(".") // whichever the keyboard has
        if (key === "Backspace") onChange(digits.slice(0, -1))
      }}
    >
      {["1", "2", "3", "4", "5", "6", "7", "8", "9", ".", "0", "Clear"].map((key) => (
        <button key={key} onClick={() => press(key)}>
          {withDecimal(key, decimal)}
        </button>
      ))}
    </div>
  )
}

/** Strokes in fives, as on paper; a number where they would not fit. */
function tally(count: number): string {
  if (count === 0) return ""
  if (count > 14) return `\u00d7 ${count}`
  const fives = Array.from({length: Math.floor(count / 5)}, () => "||||\u0338")
  return [...fives, "|".repeat(count % 5)].join(" ")
}

function countsOf(taps: readonly number[]): SpearCounts {
  const counts: Record<number, number> = {}
  for (const size of taps) counts[size] = (counts[size] ?? 0) + 1
  return counts
}

/** The diameters that were tapped, mm, in their order. */
function keptTaps(): readonly number[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEPT) ?? "[]")
    return Array.isArray(kept) ? kept.filter((one) => typeof one === "number") : []
  } catch {
    return []
  }
}

function spearLimit({workbook}: Store): number | null {
  const at = namesIn(workbook.document).find(({name}) => name.toLowerCase() === "spear_limit")?.at
  const value = at ? workbook.valueAt(at) : null
  return typeof value === "number" ? value : null
}
