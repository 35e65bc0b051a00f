import type {CellAddress} from "../document"
import {soughtAs} from "../plantingName"
import {rowsOf} from "../season"
import type {Workbook} from "../workbook"

/** The days with a picking, and the cells that hold them, of each planting by its name as it is sought. */
export function pickingsByName(workbook: Workbook) {
  const pickings = new Map<string, {readonly day: number; readonly at: CellAddress}[]>()
  for (const row of rowsOf(workbook, "picking planting")) {
    const [day, at] = [row.number("picking day"), row.cells["picking day"]]
    if (day === null || !at) continue
    const name = soughtAs(row.word("picking planting"))
    const known = pickings.get(name)
    if (known) known.push({day, at})
    else pickings.set(name, [{day, at}])
  }
  return pickings
}
