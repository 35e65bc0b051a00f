import {shownIn} from "../../editor/display"
import type {PlantingRisk, WayRisk} from "../../studies/waysRisk"
import type {WayName} from "../../studies/waysBeside"
import type {Region} from "../../workbook/document"
import {inARow} from "./weekWords"

export const WAY_WORDS: Readonly<Record<WayName, string>> = {
  "as found": "as found",
  "a week less": "each season a week shorter",
  "a week more": "each season a week longer",
  "cleared sooner": "cleared a year sooner",
  "cleared later": "cleared a year later",
}

/** Chosen: a gain of fewer standard errors than this may come from the draws. */
const ERRORS = 2

/** Whether a way other than the one found comes out better on drawn years by more than a sum that matters, money/ha, and than the draws may be off. */
export function waysWords(plantings: readonly PlantingRisk[], little: number, region: Region): string {
  const {unit, text} = shownIn("money/ha", region)
  const better = plantings.flatMap(({planting, ways}) => {
    const way = bestOther(ways, little)
    return way ? [`${planting} ${WAY_WORDS[way.name]}, by ${text(way.against!.more.mean, 0)} ${unit}`] : []
  })
  const none = `no other way comes out clearly more than ${text(little, 0)} ${unit} better in the mean`
  if (better.length === 0) return `Of those tried ${none}.`
  const rest = better.length < plantings.length ? ` Elsewhere ${none}.` : ""
  return `Better in the mean than as found: ${inARow(better)}.${rest}`
}

function bestOther(ways: readonly WayRisk[], little: number): WayRisk | null {
  const gain = ({against}: WayRisk) => against?.more.mean ?? 0
  const sure = ways.filter(({against}) => {
    if (!against) return false
    const {mean, meanError} = against.more
    return mean > little && mean > ERRORS * meanError
  })
  return sure.length ? sure.reduce((best, one) => (gain(one) > gain(best) ? one : best)) : null
}
