import {useEffect, useRef, useState} from "react"
import {isoOf, modelYearOf} from "../../functions/calendar"
import {keepRanges} from "../editor/commands/ranges"
import {dayText, numberText} from "../editor/display"
import type {Store} from "../editor/store"
import type {HowSure} from "../studies/howSure"
import {measureNext, widthFrom} from "../studies/measureNext"
import {plantingStudy, sugarErrorOf} from "../studies/plantingStudy"
import {runHowSure, type Running} from "../studies/run"
import {regionOf} from "../workbook/region"
import {runsText} from "./pictures/lenderWords"
import {storeWords} from "./pictures/reserveLayout"
import {warmthAssumed} from "./pictures/spreadsAssumed"
import {planOf} from "../workbook/plan"
import type {CrownYears, PlantingCrowns} from "../workbook/crowns"

const DRAWS = 10_000
const SEED = 1

/** The row of the sheet How sure, in the order of its columns. */
function rowOf(
  planting: PlantingCrowns,
  first: number,
  asOf: number | null,
  found: HowSure,
  next: string,
  planned: number | null,
) {
  const whole = (value: number) => Math.round(value)
  const {picked, refill, noRefill, nextSugar} = found
  return [
    planting.planting,
    asOf === null ? null : isoOf(asOf),
    found.draws,
    String(SEED),
    ...picked.map(whole),
    refill ? isoOf(first + whole(refill[2])) : null,
    refill && noRefill < 0.1 ? isoOf(first + whole(refill[4])) : null,
    Math.round(noRefill * 1000) / 1000,
    whole(nextSugar[0]),
    whole(nextSugar[2]),
    whole(nextSugar[4]),
    widthFrom(found),
    next,
    planned,
  ] as const
}

interface Props {
  store: Store
  crowns: CrownYears
  planting: PlantingCrowns
  found: HowSure | null
  onFound: (found: HowSure | null) => void
}

/** Runs the study of how sure the year of one planting is, and says what it found. */
export function HowSurePanel({store, crowns, planting, found, onFound}: Props) {
  const [share, setShare] = useState<number | null>(null)
  const [fault, setFault] = useState("")
  const running = useRef<Running | null>(null)
  useEffect(() => () => running.current?.stop(), [])

  const region = regionOf(store.getState().document)
  const {unit, text: kg} = storeWords(region)
  const {first} = modelYearOf(planting.open, crowns.values.Year_start)
  const next = found ? measureNext(found, sugarErrorOf(planting), planting.samplesUsed) : ""
  const start = async () => {
    setFault("")
    setShare(0)
    running.current = runHowSure(plantingStudy(planting, crowns, SEED), DRAWS, setShare)
    try {
      const result = await running.current.result
      if (result) {
        onFound(result)
        await new Promise((drawn) => setTimeout(drawn)) // what was found is drawn before it is kept
        const words = measureNext(result, sugarErrorOf(planting), planting.samplesUsed)
        const planned = plannedCrop(store, planting.planting)
        store.run(keepRanges(rowOf(planting, first, crowns.asOf, result, words, planned)))
      }
    } catch (error) {
      setFault(`The study could not be run: ${error instanceof Error ? error.message : String(error)}`)
    }
    running.current = null
    setShare(null)
  }

  return (
    <div className="how-sure">
      {share === null ? (
        <>
          <button onClick={() => void start()}>Work out how sure</button>
          {!found && (
            <p className="small q">
              The line alone does not say how sure it is: this draws the bands about it that hold 5 and 8 of
              10.
            </p>
          )}
        </>
      ) : (
        <>
          <progress value={share} aria-label="Draws done" />
          <button onClick={() => running.current?.stop()}>Stop</button>
        </>
      )}
      <div aria-live="polite">
        {fault && <p>{fault}</p>}
        {found && (
          <>
            <p>{lowestWords(found, kg, unit)}</p>
            <p>
              Crop {kg(found.picked[0])} to {kg(found.picked[4])} {unit} in 8 draws of 10, half of them{" "}
              {kg(found.picked[1])} to {kg(found.picked[3])}. {refillWords(found, first)} Next year starts at{" "}
              {numberText(found.nextSugar[0], 0)} to {numberText(found.nextSugar[4], 0)} mg/g.
            </p>
            <p>The width comes from {widthFrom(found)}.</p>
            <p>To narrow it: {next}</p>
            <p className="small q">
              {numberText(found.draws, 0)} draws of the sample’s error, root mass (10 %, assumed), the year’s
              warmth ({warmthAssumed(region)}) and sun (5 %), the record’s factor and each crop value (its
              likely range on the sheet Crop values, or else 20 % either way, assumed). Shares are squared
              correlations: how inputs work on each other is left out. Kept on the sheet How sure, and in the
              plan’s range.
            </p>
          </>
        )}
      </div>
    </div>
  )
}

/** The crop in the plan, t. */
function plannedCrop(store: Store, planting: string): number | null {
  const crop = planOf(store.workbook)?.rows.find((row) => row.planting === planting)?.crop ?? null
  return crop === null ? null : Number((crop / 1000).toPrecision(6))
}

/** "At its lowest 1 107 to 2 213 kg/ha are left in 8 draws of 10; in 49 of 100 less than your floor." */
export function lowestWords(
  {lowest, underFloor}: Pick<HowSure, "lowest" | "underFloor">,
  kg: (mass: number) => string,
  unit: string,
): string {
  const within = `At its lowest ${kg(lowest[0])} to ${kg(lowest[4])} ${unit} are left in 8 draws of 10`
  if (underFloor === null) return `${within}.`
  return `${within}; in ${runsText(underFloor)} of 100 less than your floor.`
}

function refillWords({refill, noRefill}: HowSure, first: number): string {
  if (!refill) return "None of them is full again this year."
  const middle = dayText(first + Math.round(refill[2]))
  const never = noRefill > 0.005 ? `, ${Math.round(100 * noRefill)} % are not this year` : ""
  return `Half of those that fill are full again by ${middle}${never}.`
}
