import {useEffect, useRef, useState} from "react"
import {numberText, shownIn} from "../editor/display"
import type {WaysInput} from "../studies/drawWays"
import {runWays} from "../studies/run"
import type {RunningStudy} from "../studies/shareOut"
import type {PlantingRisk, WaysRisk} from "../studies/waysRisk"
import type {Region} from "../workbook/document"
import {SPREADS_ASSUMED, weatherAssumed} from "./pictures/spreadsAssumed"
import {WAY_WORDS, waysWords} from "./pictures/waysWords"

const DRAWS = 1000

interface Props {
  input: WaysInput
  /** A sum today that does not matter, money/ha. */
  little: number
  region: Region
}

/** Sets the weeks found beside other ways on the same drawn years; begins by itself once the weeks are shown. Each input has its own key. */
export function DrawnWays({input, little, region}: Props) {
  const [share, setShare] = useState<number | null>(0)
  const [fault, setFault] = useState("")
  const [found, setFound] = useState<WaysRisk | null>(null)
  const [attempt, setAttempt] = useState(1)
  const running = useRef<RunningStudy<WaysRisk> | null>(null)
  useEffect(() => {
    const own = runWays(input, DRAWS, setShare)
    running.current = own
    own.result
      .then(setFound, (error: Error) => setFault(`The years could not be drawn: ${error.message}`))
      .finally(() => setShare(null))
    return () => own.stop()
  }, [input, attempt])
  const again = () => {
    setFault("")
    setShare(0)
    setAttempt(attempt + 1)
  }
  return (
    <section className="all" aria-labelledby="drawn-ways">
      <h2 id="drawn-ways">On drawn years of weather and prices</h2>
      <div aria-live="polite">
        {fault && <p>{fault}</p>}
        {found && <p>{waysWords(found.plantings, little, region)}</p>}
      </div>
      {!found && (
        <div className="ask">
          {share === null ? (
            <button onClick={again}>Draw the years</button>
          ) : (
            <>
              <progress value={share} aria-label="Draws done" />
              <button onClick={() => running.current?.stop()}>Stop the draws</button>
            </>
          )}
        </div>
      )}
      {found && (
        <div className="blocks">
          {found.plantings.map((one) => (
            <Ways key={one.planting} one={one} region={region} />
          ))}
        </div>
      )}
      <p className="small q">
        {numberText(DRAWS)} draws, seed {input.seed}, the same for all ways and plantings: the same seed and
        workbook give the same numbers. Each draw has years of weather, {weatherAssumed(region)}; the daily
        balance carries the crowns through them, so a poor year is felt in the next. {SPREADS_ASSUMED} What
        this season has brought before As_of counts as planned in all ways alike, so that their differences do
        not hold it. Every season is cut as the way has it, whatever the year brings; a week longer stays
        within your table and the weeks of a last season, and clearing a year sooner or later has the weeks
        that are best for it. Costs stay as they are, a loss of plants counts by its chance, and cleared
        ground as found. ± is the standard error of the draws alone.
      </p>
    </section>
  )
}

/** One planting: each way with its worth, how low one draw in ten falls, and how it stands against the way found. */
function Ways({one: {planting, ways}, region}: {one: PlantingRisk; region: Region}) {
  const {unit, text} = shownIn("money/ha", region)
  const whole = (sum: number) => text(sum, 0)
  return (
    <section>
      <table className="ways">
        <caption>{planting}</caption>
        <thead>
          <tr>
            <th scope="col">
              <span className="hide">Way</span>
            </th>
            <th scope="col">
              worth <small>{unit}</small>
            </th>
            <th scope="col">
              1 in 10 <small>worse than</small>
            </th>
            <th scope="col">
              against found <small>better in</small>
            </th>
          </tr>
        </thead>
        <tbody>
          {ways.map(({name, worth, against}) => (
            <tr key={name}>
              <th scope="row">{WAY_WORDS[name]}</th>
              <td>
                {whole(worth.mean)} <small>± {whole(worth.meanError)}</small>
              </td>
              <td>
                {whole(worth.at[0])} <small>± {whole(worth.lowError)}</small>
              </td>
              <td>
                {against && (
                  <>
                    {against.more.mean > 0 && "+"}
                    {whole(against.more.mean)} ± {whole(against.more.meanError)}{" "}
                    <small>{numberText(10 * against.better.share, 1, region.decimal)} of 10</small>
                  </>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
