import {defineFunction, type Refusal} from "../define"
import {everyDay, everyWord} from "../parameters"
import {isRefusal, wrongKind} from "../refusal"
import {isWaiting, waitRanges, waitsFrom, type WaitRanges} from "./waits"

/** Pickings on a day of a wait after spraying of their planting: from the day of spraying up to the first day allowed again. */
export function waiting(
  planting: readonly string[],
  days: readonly (number | null)[],
  ranges: Omit<WaitRanges, "planting">,
): number | Refusal {
  if (planting.length !== days.length)
    return wrongKind(
      `The ranges of the pickings have ${planting.length} and ${days.length} cells: sizes differ`,
    )
  const waits = waitsFrom({...ranges, planting}, planting.length)
  if (isRefusal(waits)) return waits
  return days.filter((day, row) => day !== null && isWaiting(waits[row] ?? [], day)).length
}

const {sprayed_planting, sprayed, pick_again} = waitRanges

export const SEASON_WAITING = defineFunction({
  name: "SEASON.WAITING",
  summary: "How many pickings lie in a wait after spraying",
  about:
    "From the day of spraying up to the first day on which picking is allowed again, by the wait on the product's label. The crop " +
    "of such a picking has to be kept back.",
  parameters: {
    planting: everyWord("Plantings picked"),
    days: everyDay("Days of the pickings"),
    sprayed_planting,
    sprayed,
    pick_again,
  },
  returns: {label: "Pickings in a wait", unit: "count"},
  refuses: ["ranges of different sizes"],
  sources: ["identity"],
  example: {
    formula:
      '=SEASON.WAITING({"Long Acre","Long Acre","Sand Piece"},{"2026-05-04","2026-05-08","2026-05-04"},{"Long Acre"},{"2026-05-01"},{"2026-05-08"})',
    gives: 1,
  },
  calculate: ({planting, days, ...ranges}) => waiting(planting, days, ranges),
})
