import {useEffect, useRef, useState} from "react"
import {isRefusal, type Refusal} from "../../functions/refusal"
import {
  askDayCost,
  dayCostOf,
  goesOn,
  keepWeeks,
  lastSeasonWords,
  meanDayCost,
} from "../editor/commands/fieldLife"
import {percentText, shownIn} from "../editor/display"
import type {Region} from "../workbook/document"
import {regionOf} from "../workbook/region"
import type {Store} from "../editor/store"
import type {BestWeeks, PlantingWeeks} from "../studies/bestWeeks"
import type {WaysInput} from "../studies/drawWays"
import {besideReplant} from "../studies/besideReplant"
import {mustLeave} from "../studies/plantingSeason"
import {runBestWeeks} from "../studies/run"
import type {RunningStudy} from "../studies/shareOut"
import {waysAsked} from "../studies/waysAsked"
import {lastAgeWeighed, nearWords, type WeeksStudy} from "../studies/weeksStudy"
import {whyWeeks, whyYear} from "../studies/whyWeeks"
import {DrawnWays} from "./DrawnWays"
import "./replant.css"

const SEED = 1

/** A study, and what it was run on, so that it is told when anything under it has changed. */
interface Studied {
  readonly found: BestWeeks
  /** What was found, to be set beside other ways. */
  readonly ways: WaysInput
  readonly run: number
  readonly season: number
  readonly of: string
}

/** The study of the best weeks above its sheet: run it, stop it, read it, keep it. */
export function FieldLifePlate({store, shown}: {store: Store; shown: WeeksStudy | Refusal}) {
  const [only, setOnly] = useState("")
  const [share, setShare] = useState<number | null>(null)
  const [fault, setFault] = useState("")
  const [studied, setStudied] = useState<Studied | null>(null)
  const running = useRef<RunningStudy<BestWeeks> | null>(null)
  useEffect(() => () => running.current?.stop(), [])
  if (isRefusal(shown))
    return (
      <div className="replant">
        <p className="warn">The study cannot be run: {shown.refused}.</p>
      </div>
    )
  const {input, season} = shown
  const asked = input.plantings.filter(({planting}) => only === "" || planting === only)

  const start = async () => {
    setFault("")
    setShare(0)
    try {
      const own = {...input, plantings: asked}
      running.current = runBestWeeks(own, setShare)
      const found = await running.current.result
      if (found)
        setStudied((before) => ({
          found,
          ways: waysAsked(own, found, season, SEED, shown.asOf),
          run: (before?.run ?? 0) + 1,
          season,
          of: inputsOf(shown),
        }))
    } catch (error) {
      setFault(`The study could not be run: ${error instanceof Error ? error.message : String(error)}`)
    }
    running.current = null
    setShare(null)
  }

  return (
    <div className="replant">
      <div className="ask">
        <label className="choice">
          Planting{" "}
          <select value={only} onChange={({target}) => setOnly(target.value)} disabled={share !== null}>
            <option value="">all that can be run</option>
            {input.plantings.map(({planting}) => (
              <option key={planting}>{planting}</option>
            ))}
          </select>
        </label>
        {share === null ? (
          <button className="chief" onClick={() => void start()}>
            Find the best weeks
          </button>
        ) : (
          <>
            <progress value={share} aria-label="Share of the study done" />
            <button onClick={() => running.current?.stop()}>Stop</button>
          </>
        )}
      </div>
      <div aria-live="polite">
        {fault && <p>{fault}</p>}
        {studied && studied.of !== inputsOf(shown) && (
          <p className="warn">Something under the study has changed since it was run: run it again.</p>
        )}
        {studied && <p className="told">{studyWords(studied, regionOf(store.getState().document))}</p>}
        {studied && <BesideReplant shown={shown} found={studied.found} />}
        {studied && <PastTable shown={shown} found={studied.found} />}
      </div>
      {studied && <Found store={store} shown={shown} studied={studied} />}
      <p className="guide">
        A general guide to judge by: the weeks are found for the same weather every year and no loss of plants
        but the chance you give. In seasons to come a planting cut for the weeks of Yield by age brings what
        the sheet Replant counts on; the daily balance tells what other weeks change. One new planting, the
        one on Life inputs, follows on every field; where the sheet Replant has old ground, it loses of its
        yield what stands there. Fields cut too long fell faster in trials than it says. Ask your extension
        office before you cut longer than is usual near you.
      </p>
    </div>
  )
}

const inputsOf = ({input}: WeeksStudy) =>
  JSON.stringify(input, (_, value: unknown) => (value instanceof Float64Array ? [...value] : value))

/** What the study found of the ground and of a new planting. */
function studyWords(
  {found: {ground, replants, successor, plantings}, ways: {asked}}: Studied,
  region: Region,
): string {
  const {unit, text} = shownIn("money/ha", region)
  const leave = (worth: number, age: number) => text(mustLeave(asked, worth, age), 0)
  if (!replants)
    return (
      `Planting again does not pay: the ground is worth more in its other use, ${text(ground, 0)} ${unit}. ` +
      `A season must leave ${leave(ground, asked.successor.age)} to be kept.`
    )
  const end = successor.isAtEnd ? ", the oldest age allowed, so that longer may be better" : ""
  const own = plantings.flatMap((one, i) => {
    const {rest = asked.money.rest, loss = 0} = asked.plantings[i]!.ground ?? {}
    const seasons =
      rest === 0 ? "it is planted at once" : `it rests ${rest === 1 ? "1 year" : `${rest} years`}`
    const because = [
      ...(loss > 0 ? [`a new planting loses ${percentText(loss)} of its yield`] : []),
      ...(rest === asked.money.rest ? [] : [seasons]),
    ]
    return one.ground === ground
      ? []
      : [
          ` The ground of ${one.planting} is worth ${text(one.ground, 0)}, and a season there must leave ` +
            `${leave(one.ground, one.age)}: ${because.join(" and ")}.`,
        ]
  })
  return (
    `Cleared ground is worth ${text(ground, 0)} ${unit}: a season must leave ` +
    `${leave(ground, asked.successor.age)} to be kept. A new planting is best cleared at age ${successor.replaceAge}${end}.` +
    own.join("")
  )
}

/** Where the sheet Replant would clear a planting in other years: why, and which to go by. */
function BesideReplant({shown: {replanting, season, little}, found}: {shown: WeeksStudy; found: BestWeeks}) {
  const told = found.plantings.flatMap((one) => besideReplant(one, replanting, season, little) ?? [])
  return told.map((sentence) => (
    <p key={sentence} className="warn">
      To look at: {sentence}
    </p>
  ))
}

/** Names the plantings whose answer leans on ages of which no row of the table tells. */
function PastTable({shown, found}: {shown: WeeksStudy; found: BestWeeks}) {
  const past = [
    ...found.plantings.filter((one) => lastAgeWeighed(one, shown.little) > shown.lastAge),
    ...(found.successor.replaceAge - 1 > shown.lastAge ? [{planting: "a new planting"}] : []),
  ].map(({planting}) => planting)
  if (past.length === 0) return null
  return (
    <p className="warn">
      To look at: seasons past age {shown.lastAge} count as that age ({past.join(", ")}); add rows to Yield by
      age.
    </p>
  )
}

function Found({store, shown, studied}: {store: Store; shown: WeeksStudy; studied: Studied}) {
  const {plantings, successor} = studied.found
  const {season} = studied
  const cost = meanDayCost(plantings, shown.areas)
  const going = plantings.filter(goesOn)
  const region = regionOf(store.getState().document)
  const [perKg, perHa] = [shownIn("money/kg", region), shownIn("money/ha", region)]
  return (
    <>
      <div className="blocks">
        <section className="all" aria-labelledby="this-season">
          <h2 id="this-season">This season</h2>
          <div
            className="scroll"
            tabIndex={0}
            role="region"
            aria-label="This season, can be scrolled sideways"
          >
            <table>
              <caption className="hide">Best weeks of this season, and when to replace</caption>
              <thead>
                <tr>
                  <th scope="col" className="txt">
                    Planting
                  </th>
                  <th scope="col">weeks</th>
                  <th scope="col">days</th>
                  <th scope="col">clear after</th>
                  <th scope="col">
                    either can be right{" "}
                    <small>
                      within {perHa.text(shown.little, 0)} {perHa.unit}
                    </small>
                  </th>
                  <th scope="col">
                    reserve worth <small>{perKg.unit} left</small>
                  </th>
                  <th scope="col">
                    stop price <small>{perKg.unit} packed</small>
                  </th>
                  <th scope="col">
                    a day costs later <small>{perHa.unit}</small>
                  </th>
                  <th scope="col">
                    keeping gains <small>{perHa.unit} today</small>
                  </th>
                  <th scope="col" className="txt">
                    Why
                  </th>
                </tr>
              </thead>
              <tbody>
                {plantings.map((one) => (
                  <SeasonRow
                    key={one.planting}
                    one={one}
                    season={season}
                    little={shown.little}
                    region={region}
                  />
                ))}
              </tbody>
            </table>
          </div>
        </section>
        <section className="all" aria-labelledby="weeks-by-age">
          <h2 id="weeks-by-age">Weeks by season, until it is cleared</h2>
          <WeeksByAge plantings={plantings} season={season} />
          <p className="small q">
            A new planting, from age {successor.years[0]?.age ?? "?"}:{" "}
            {successor.years.map(({weeks}) => weeks).join(", ")} weeks, then cleared.
          </p>
        </section>
        <DrawnWays key={studied.run} input={studied.ways} little={shown.little} region={region} />
      </div>
      <div className="ask">
        <button
          onClick={() => {
            if (!store.run(keepWeeks(plantings, shown), "What the study found is kept."))
              store.turn(() => ({said: "What the study found is kept already."}))
          }}
        >
          Keep these in the sheets
        </button>
        {cost !== null && (
          <button
            onClick={() => {
              const ask = askDayCost(store.getState().document, cost, going.length)
              if (ask) store.turn(ask)
            }}
          >
            Use {cost} for Next_year_cost…
          </button>
        )}
      </div>
    </>
  )
}

function SeasonRow({
  one,
  season,
  little,
  region,
}: {
  one: PlantingWeeks
  season: number
  little: number
  region: Region
}) {
  const [perKg, perHa] = [shownIn("money/kg", region), shownIn("money/ha", region)]
  const words = {
    perHa: (sum: number) => `${perHa.text(sum, 0)} ${perHa.unit}`,
    perKg: (sum: number) => `${perKg.text(sum, 2)} ${perKg.unit}`,
  }
  const [first] = one.years
  const dayCost = dayCostOf(one)
  const stop = first?.nextWeek?.stopPrice
  return (
    <tr>
      <th scope="row" className="txt">
        {one.planting}
      </th>
      <td>{first ? first.weeks : ""}</td>
      <td>{one.days}</td>
      <td>{lastSeasonWords(one, season)}</td>
      <td>{nearWords(one, season, little)}</td>
      <td>{first ? perKg.text(first.reserveWorth, 2) : ""}</td>
      <td>{stop !== undefined && Number.isFinite(stop) ? perKg.text(stop, 2) : "none pays"}</td>
      <td>{dayCost === null ? "" : perHa.text(dayCost, 0)}</td>
      <td>{perHa.text(one.worth - one.clearNow, 0)}</td>
      <td className="txt wraps">
        {first
          ? `${whyWeeks(first, words)} ${whyYear(one, season, words)}`
          : "Clearing it now is worth more than any season of it."}
      </td>
    </tr>
  )
}

/** One row a planting, one column a season: the weeks that are best. */
function WeeksByAge({plantings, season}: {plantings: readonly PlantingWeeks[]; season: number}) {
  const most = Math.max(1, ...plantings.map(({years}) => years.length))
  return (
    <div className="scroll" tabIndex={0} role="region" aria-label="Weeks by season, can be scrolled sideways">
      <table>
        <caption className="hide">Best weeks of cutting by season</caption>
        <thead>
          <tr>
            <th scope="col" className="txt">
              Planting
            </th>
            <th scope="col">age now</th>
            {Array.from({length: most}, (_, i) => (
              <th key={i} scope="col">
                {season + i}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {plantings.map(({planting, age, years}) => (
            <tr key={planting}>
              <th scope="row" className="txt">
                {planting}
              </th>
              <td>{age}</td>
              {Array.from({length: most}, (_, i) => (
                <td key={i}>{years[i] ? years[i].weeks : "\u2013"}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}
