import {useEffect, useRef, useState} from "react"
import {dayText, shownIn} from "../editor/display"
import {choose} from "../editor/selection"
import type {Store} from "../editor/store"
import type {Move, MovesApart as Found, Needs} from "../studies/movesApart"
import {startWorker} from "../studies/startWorker"
import type {Document, Region} from "../workbook/document"
import {weightText} from "./pictures/calendarWords"
import {useEditor} from "./useEditor"
import {inARow} from "./pictures/weekWords"

/** What moving one opening or close does, where plantings that are picked together make the worst day. Tried when asked. */
export function MovesApart({
  store,
  region,
  unknown,
}: {
  store: Store
  region: Region
  /** What of the days to come is not known, in sentences; "" where all is. */
  unknown: string
}) {
  const {document} = useEditor(store)
  const [done, setDone] = useState<{of: Document; found: Found | null} | null>(null)
  const [fault, setFault] = useState("")
  const [trying, setTrying] = useState<Document | null>(null)
  const worker = useRef<Worker | null>(null)
  const stop = () => {
    worker.current?.terminate()
    worker.current = null
    setTrying(null)
  }
  useEffect(() => stop, [document])

  const start = () => {
    stop()
    setFault("")
    setTrying(document)
    const started = (worker.current = startWorker("moves apart"))
    started.addEventListener("message", ({data}: MessageEvent<Found | null>) => {
      stop()
      setDone({of: document, found: data})
    })
    started.addEventListener("error", ({message}) => {
      stop()
      setFault(`The moves could not be tried: ${message}.`)
    })
    started.postMessage(document, [])
  }
  const found = done?.of === document ? done.found : undefined
  return (
    <div className="moves-apart">
      <p>
        <button onClick={start} disabled={trying !== null}>
          Try moving plantings apart
        </button>{" "}
        <span role="status">
          {trying ? "Trying each in a copy of the workbook …" : fault || apartWords(found, region, unknown)}
        </span>
      </p>
      {found && found.moves.length > 0 && (
        <p className="small q">
          The worst of the days to come, as planned and with one date moved. Nothing is changed until you type
          it. To put off a single picking by a day is not tried: the plan picks as often as the warmth asks.
        </p>
      )}
      {found && found.moves.length > 0 && (
        <MovesTable found={found} region={region} onGo={({at}) => store.turn(choose(at))} />
      )}
    </div>
  )
}

function MovesTable({found, region, onGo}: {found: Found; region: Region; onGo: (move: Move) => void}) {
  const heat = shownIn("kW", region)
  const row = (needs: Needs) => (
    <>
      <td>
        {needs.short ?? "not known"}
        {needs.shortOn !== null && <span className="q"> on {dayText(needs.shortOn)}</span>}
      </td>
      <td>
        {needs.over === null ? "not known" : heat.text(needs.over, 1)}
        {needs.overOn !== null && <span className="q"> on {dayText(needs.overOn)}</span>}
      </td>
    </>
  )
  return (
    <div
      className="scroll"
      tabIndex={0}
      role="region"
      aria-label="What moving one date does, can be scrolled sideways"
    >
      <table>
        <thead>
          <tr>
            <th scope="col" className="txt">
              Move
            </th>
            <th scope="col">Cutters short</th>
            <th scope="col">kW over</th>
            <th scope="col">Crop</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row" className="txt">
              As planned
            </th>
            {row(found.asPlanned)}
            <td>{weightText(found.asPlanned.crop, region)}</td>
          </tr>
          {found.moves.map((move) => (
            <tr key={`${move.planting} ${move.what} ${move.to}`}>
              <th scope="row" className="txt">
                <button className="link" onClick={() => onGo(move)}>
                  {moveWords(move)}
                </button>
              </th>
              {row(move)}
              <td>{gained(move.crop - found.asPlanned.crop, region)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  )
}

/** "Well Field closes 14 Jun, not 16 Jun" */
export const moveWords = ({planting, what, was, to}: Move) =>
  `${planting} ${what === "open" ? "opens" : "closes"} ${dayText(to)}, not ${dayText(was)}`

/** What was found, in a sentence or two; nothing before it was asked for. */
export function apartWords(found: Found | null | undefined, region: Region, unknown = ""): string {
  if (found === undefined) return ""
  if (found === null)
    return unknown || "No day to come is short of cutters or of cold: there is nothing to move apart."
  const {day, together, asPlanned, moves} = found
  const who = inARow(together.map(({planting, kg}) => `${planting} (${weightText(kg, region)})`))
  const peak =
    together.length > 1
      ? `On ${dayText(day)}, the worst day to come, ${who} are picked together.`
      : `On ${dayText(day)}, the worst day to come, ${who || "what comes in"} is picked alone.`
  const [best] = moves
  if (!best || !isBetter(best, asPlanned)) return `${peak} No move of one date makes it better.`
  const heat = shownIn("kW", region)
  const left =
    (best.short ?? 0) < (asPlanned.short ?? 0)
      ? `the worst day lacks ${best.short || "no"} cutters instead of ${asPlanned.short}`
      : `the worst day is ${heat.text(best.over ?? 0, 1)} kW over instead of ${heat.text(asPlanned.over ?? 0, 1)}`
  const crop = best.crop - asPlanned.crop
  return `${peak} If ${moveWords(best)}, ${left}${Math.abs(crop) < 0.5 ? "" : `, at ${weightText(Math.abs(crop), region)} ${crop < 0 ? "less" : "more"} crop`}.`
}

const isBetter = (move: Needs, planned: Needs) =>
  (move.short ?? 0) < (planned.short ?? 0) ||
  (move.short === planned.short && (move.over ?? 0) < (planned.over ?? 0) - 0.05)

const gained = (kg: number, region: Region) =>
  Math.abs(kg) < 0.5 ? "the same" : `${kg < 0 ? "\u2212" : "+"}${weightText(Math.abs(kg), region)}`
