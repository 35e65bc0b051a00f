import {useEffect, useRef, useState} from "react"
import {numberText} from "../editor/display"
import type {Store} from "../editor/store"
import {lenderRisk, whyNoRisk} from "../studies/lenderRisk"
import type {PlanRisk, Risk} from "../studies/risk"
import {runRisk} from "../studies/run"
import type {RunningStudy} from "../studies/shareOut"
import type {Chance} from "../studies/spreadOf"
import type {LenderPage} from "../workbook/lender"
import {coverOf, coverText, riskWords, runsText, yearsWords} from "./pictures/lenderWords"
import {inARow} from "./pictures/weekWords"
import {SPREADS_ASSUMED, weatherAssumed} from "./pictures/spreadsAssumed"

const DRAWS = 10_000
const SEED = 1

interface Props {
  store: Store
  page: LenderPage
  found: Risk | null
  onFound: (found: Risk | null) => void
}

/** Runs the study of what yields and prices may do to the cover, in workers, and says what it found in plain words. */
export function RiskPanel({store, page, found, onFound}: Props) {
  const [share, setShare] = useState<number | null>(null)
  const [said, setSaid] = useState("")
  const running = useRef<RunningStudy<Risk> | null>(null)
  useEffect(() => () => running.current?.stop(), [])
  const start = async () => {
    const input = lenderRisk(store.workbook, SEED)
    if (!input) return setSaid(whyNoRisk(store.workbook))
    setSaid("")
    setShare(0)
    running.current = runRisk(input, DRAWS, setShare)
    try {
      const result = await running.current.result
      if (result) onFound(result)
    } catch (fault) {
      setSaid(`The study could not be run: ${fault instanceof Error ? fault.message : String(fault)}`)
    }
    running.current = null
    setShare(null)
  }
  return (
    <section className="risk" aria-labelledby="risk">
      <h2 id="risk">
        {found
          ? (riskWords(found, leftOutOf(found, page).length > 0) ??
            "Nothing falls due: there is no cover to study")
          : "What chance may do to the cover"}
      </h2>
      {share === null ? (
        <button onClick={() => void start()}>Work out the risk</button>
      ) : (
        <>
          <progress value={share} aria-label="Draws done" />{" "}
          <button onClick={() => running.current?.stop()}>Stop</button>
        </>
      )}
      <div aria-live="polite">{said && <p>{said}</p>}</div>
      {found && <RiskTable found={found} page={page} />}
      <p className="small q">
        {numberText(DRAWS)} draws, seed {SEED}: the same seed and plan give the same numbers. Each draw has
        ten years of weather, {weatherAssumed(page.region)}; the daily balance carries the crowns of each
        standing planting through them, cut every year as in this plan, so a poor year is felt in the next.
        What is picked of a season under way is in every draw as it came in, at the prices of its weeks: only
        what still comes, at the pace so far, is drawn and put under stress, where the sheet Stress moves the
        whole season. {SPREADS_ASSUMED} Costs, taxes and living stay as planned. ± is the standard error of
        the draws alone.
      </p>
    </section>
  )
}

/** "47 ± 0.5" runs of 100; at the ends no more than the draws can say. */
const chance = ({share, error}: Chance) =>
  share < 0.005 || share > 0.995
    ? runsText(share)
    : `${numberText(share * 100, 0)} ± ${numberText(error * 100, error < 0.01 ? 1 : 0)}`

/** The years after the last one of the study, which it could not reach. */
function leftOutOf({plans}: Risk, {years, unknown}: LenderPage): readonly number[] {
  const last = plans[0]!.years.at(-1)!.year
  return [...years.map(({year}) => year), ...unknown].filter((year) => year > last)
}

function RiskTable({found, page}: {found: Risk; page: LenderPage}) {
  const {years, yields, stress, region} = page
  const [plan, other] = found.plans as [PlanRisk, PlanRisk?]
  const leftOut = leftOutOf(found, page)
  const withoutRecord = yields.filter(({record}) => record.length === 0).map(({planting}) => planting)
  const two = (value: number) => coverText(value, region)
  const plannedIn = (year: number) => {
    const planned = years.find((one) => one.year === year)
    return planned ? two(coverOf(planned)) : ""
  }
  return (
    <div className="scroll" tabIndex={0} role="region" aria-label="Cover by chance, can be scrolled sideways">
      <table>
        <caption className="hide">Cover of each year over all draws</caption>
        <thead>
          <tr>
            <th scope="col">Year</th>
            <th scope="col">as planned</th>
            <th scope="col">1 in 10 below</th>
            <th scope="col">middle</th>
            <th scope="col">1 in 10 above</th>
            <th scope="col">
              below 1 <small>of 100 runs</small>
            </th>
            {other && (
              <th scope="col">
                below 1 <small>of 100, {stress}</small>
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {plan.years.map(({year, cover, below1}, i) =>
            cover && below1 ? (
              <tr key={year}>
                <th scope="row">{year}</th>
                <td>{plannedIn(year)}</td>
                <td>{two(cover.at[0])}</td>
                <td>{two(cover.at[2])}</td>
                <td>{two(cover.at[4])}</td>
                <td>{chance(below1)}</td>
                {other && <td>{other.years[i]!.below1 ? chance(other.years[i]!.below1) : ""}</td>}
              </tr>
            ) : null,
          )}
        </tbody>
      </table>
      {plan.anyBelow1 && plan.lowestCover && (
        <p className="small">
          In any of these years: {chance(plan.anyBelow1)} runs of 100. Lowest cover of these years: one run in
          ten below {two(plan.lowestCover.at[0])}; mean of the worst tenth {two(plan.lowestCover.worstTenth)}.
        </p>
      )}
      {leftOut.length > 0 && (
        <p className="small">
          Not in the study: {yearsWords(leftOut)}. Each year is felt in the next, so it ends before the first
          one that cannot be worked out.
        </p>
      )}
      {withoutRecord.length > 0 && (
        <p className="small">
          No crop on record: {inARow(withoutRecord)}. What the farm’s other plantings bear stands in for it,
          and no more doubt is drawn than for a field with a record.
        </p>
      )}
    </div>
  )
}
