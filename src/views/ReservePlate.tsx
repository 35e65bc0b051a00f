import {isRefusal} from "../../functions/refusal"
import {enterContent} from "../editor/commands/cells"
import type {Store} from "../editor/store"
import {ReserveThroughTheYear} from "./pictures/ReserveThroughTheYear"
import type {ReserveShown} from "./reserveShown"

/** The picture of the reserve above its sheet, and the choice of the planting that it shows. */
export function ReservePlate({store, shown: {crowns, year}}: {store: Store; shown: ReserveShown}) {
  const {plantings, shown} = crowns
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
      {year && <ReserveThroughTheYear year={year} />}
    </div>
  )
}

/** Why there is no picture, in a sentence. */
export function noReserve(shown: ReserveShown | Parameters<typeof isRefusal>[0]): string {
  if (isRefusal(shown)) return `${shown.refused}.`
  const name = (shown as ReserveShown).crowns.shown?.planting
  return name
    ? `${name} cannot be run yet: it needs root samples, root mass, a count of plants and an opening.`
    : "No planting is chosen. Once one has been sampled and has an opening, its year stands here."
}
