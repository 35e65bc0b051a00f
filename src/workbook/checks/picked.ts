import {columnWith, sheetWith, type CellAddress} from "../document"
import {planOf} from "../plan"
import type {Checked} from "./checked"
import type {Finding} from "./finding"

/** Plantings from which more was picked than the most that their plan expects: a picking, the area or the plan is off. */
export function pickedTooMuch(checked: Checked): Finding[] {
  const picked = pickedBy(checked)
  const plan = picked.size ? planOf(checked.workbook) : null
  return (plan?.rows ?? []).flatMap(({planting, cropHigh}): Finding[] => {
    const {kg, last} = picked.get(planting.toLowerCase()) ?? {kg: 0, last: null}
    if (cropHigh === null || last === null || kg <= cropHigh) return []
    const [was, most] = [kg, cropHigh].map((one) => checked.words.shown(last, one))
    return [
      {
        rule: "picked too much",
        cells: [last],
        sentence: `${was} were picked from ${planting}, and its plan expects ${most} at most: look at its pickings, its area and its plan`,
      },
    ]
  })
}

interface Picked {
  readonly kg: number
  /** The weight of the last of its pickings. */
  readonly last: CellAddress | null
}

/** By planting in lower case. */
function pickedBy({document, workbook}: Checked): ReadonlyMap<string, Picked> {
  const sheet = sheetWith(document, "picking weight")
  const picked = new Map<string, Picked>()
  if (sheet < 0) return picked
  const [planting, weight] = [
    columnWith(document, sheet, "picking planting"),
    columnWith(document, sheet, "picking weight"),
  ]
  if (planting < 0 || document.sheets[sheet]!.columns[weight]!.unit !== "kg") return picked
  for (const row of document.sheets[sheet]!.rows.keys()) {
    const kg = workbook.valueAt({sheet, row, col: weight})
    const name = String(workbook.valueAt({sheet, row, col: planting}) ?? "").toLowerCase()
    if (typeof kg !== "number" || name === "") continue
    picked.set(name, {kg: (picked.get(name)?.kg ?? 0) + kg, last: {sheet, row, col: weight}})
  }
  return picked
}
