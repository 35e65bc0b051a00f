import {isRefusal, type Refusal} from "../../functions/refusal"
import {useState} from "react"
import {enterContent} from "../editor/commands/cells"
import type {Store} from "../editor/store"
import {formerSentence} from "./pictures/formerSamples"
import {ReserveThroughTheYear} from "./pictures/ReserveThroughTheYear"
import {columnWith, type CellAddress} from "../workbook/document"
import {HowSurePanel} from "./HowSurePanel"
import type {HowSure} from "../studies/howSure"
import type {CrownYears, PlantingCrowns} from "../workbook/crowns"
import type {ReserveShown} from "./reserveShown"

/** The picture of the reserve above its sheet, and the choice of the planting that it shows. */
export function ReservePlate({
  store,
  shown: {crowns, year, leftOut},
  onGo,
}: {
  store: Store
  shown: ReserveShown
  /** Goes to a cell and gives it the keyboard. */
  onGo: (at: CellAddress) => void
}) {
  const {plantings, shown} = crowns
  const [studied, setStudied] = useState<Studied | null>(null)
  const [showsSingles, setShowsSingles] = useState(false)
  const found = studied && year && isOf(studied, crowns, year.planting) ? studied.found : null
  return (
    <div className="plate">
      {shown && (
        <label className="choice">
          Planting{" "}
          <select
            value={shown.planting}
            onChange={({target}) => store.run(enterContent(shown.at, target.value))}
          >
            {plantings.every(({planting}) => planting !== shown.planting) && (
              <option value={shown.planting}>{shown.planting || "none chosen"}</option>
            )}
            {plantings.map(({planting}) => (
              <option key={planting}>{planting}</option>
            ))}
          </select>
        </label>
      )}
      {year && (
        <>
          <ReserveThroughTheYear
            year={year}
            bands={found?.store ?? null}
            singles={found && showsSingles ? found.singles : []}
            cellOf={(week) => storeCell(store, week)}
            onGo={onGo}
          />
          {year.former.length > 0 && (
            <p className="small q">
              {formerSentence(year.planting.measured, year.former)} Rings: samples of former years on the same
              date, at this year’s root mass; they take no part in the line.
            </p>
          )}
          {leftOut && <p className="guide">{leftOut}</p>}
          {found && (
            <label className="choice">
              <input
                type="checkbox"
                checked={showsSingles}
                onChange={({target}) => setShowsSingles(target.checked)}
              />{" "}
              Show {found.singles.length} single draws
            </label>
          )}
          <HowSurePanel
            key={year.planting.planting}
            store={store}
            crowns={crowns}
            planting={year.planting}
            found={found}
            onFound={(found) => setStudied(found && {found, of: inputsOf(crowns, year.planting)})}
          />
        </>
      )}
    </div>
  )
}

/** Where the open sheet has the store at the end of a week, by the number in its first column. */
function storeCell(store: Store, week: number): CellAddress | undefined {
  const {document, cell} = store.getState()
  const row = document.sheets[cell.sheet]!.rows.findIndex(([number]) => number === week + 1)
  const col = columnWith(document, cell.sheet, "store through the year")
  return row < 0 || col < 0 ? undefined : {sheet: cell.sheet, row, col}
}

/** A study and what it was run on, so that its bands go when anything under them changes. */
interface Studied {
  readonly found: HowSure
  readonly of: string
}

const inputsOf = ({climate, values}: CrownYears, planting: PlantingCrowns) =>
  JSON.stringify([planting, values, [...climate.air], [...climate.soil], [...climate.sun]])

const isOf = ({of}: Studied, crowns: CrownYears, planting: PlantingCrowns) =>
  of === inputsOf(crowns, planting)

/** Why there is no picture, in a sentence. */
export function noReserve(shown: ReserveShown | Refusal): string {
  if (isRefusal(shown)) return `${shown.refused}.`
  const name = shown.crowns.shown?.planting
  return name
    ? `${name} cannot be run yet: it needs root samples, root mass, a count of plants and an opening.`
    : "No planting is chosen. Once one has been sampled and has an opening, its year stands here."
}
