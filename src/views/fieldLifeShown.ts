import {isRefusal, type Refusal} from "../../functions/refusal"
import {OR_LATER} from "../editor/commands/fieldLife"
import type {Store} from "../editor/store"
import {weeksStudy, type WeeksStudy} from "../studies/weeksStudy"
import {sheetWith, type Document} from "../workbook/document"
import {rowsOf} from "../workbook/season"
import {inARow} from "./pictures/weekWords"

/** What the study of the best weeks would run on, read once for each document, when its sheet is open; null on other sheets. */
export function fieldLifeShown(store: Store): WeeksStudy | Refusal | null {
  const {document, cell} = store.getState()
  if (cell.sheet !== sheetWith(document, "life planting")) return null
  if (!held.has(document)) held.set(document, weeksStudy(store.workbook))
  return held.get(document)!
}

const held = new WeakMap<Document, WeeksStudy | Refusal | null>()

/** What the study found when it was last kept, or what it still needs. */
export function fieldLifeFinding({workbook}: Pick<Store, "workbook">, shown: WeeksStudy | Refusal): string {
  const kept = rowsOf(workbook, "life planting").flatMap((row) => {
    const [planting, last] = [row.word("life planting"), row.word("life last season")]
    if (planting === "" || last === "") return []
    const near = row.word("life near")
    const isSame = near.replace(OR_LATER, "") === last.replace(OR_LATER, "")
    const also = near === "" || isSame ? "" : ` (${near.replace(OR_LATER, " and later")} come near)`
    const weeks = row.number("life weeks") ?? 0
    return [
      last === "now"
        ? `${planting}: clear now${also}`
        : `${planting} ${weeks} ${weeks === 1 ? "week" : "weeks"}, clear after ${last}${also}`,
    ]
  })
  if (kept.length) return `As last run: ${kept.join("; ")}.`
  if (isRefusal(shown)) return `${shown.refused}.`
  const names = shown.input.plantings.map(({planting}) => planting)
  return `Nothing is kept here yet of how long to cut and when to replace. ${inARow(names)} can be run.`
}
