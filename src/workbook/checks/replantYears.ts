import {replantingOf} from "../replant"
import {rowsOf} from "../season"
import type {Checked} from "./checked"
import type {Finding} from "./finding"

/**
 * Stands whose last season in the cash of the years to come lies outside the years that Replant finds as good as the best: one
 * of the two was not brought up to date, or is meant otherwise.
 */
export function replantYears({workbook}: Checked): Finding[] {
  const fields = replantingOf(workbook)?.fields ?? []
  const years = rowsOf(workbook, "cash year").flatMap((row) => row.number("cash year") ?? [])
  const end = Math.max(...years)
  const stands = rowsOf(workbook, "stand ground").filter((row) => row.number("stand replanted") === null)
  return stands.flatMap((row): Finding[] => {
    const ground = row.word("stand ground")
    const field = fields.find((one) => one.field === ground)
    const at = row.cells["stand last season"]
    if (!field || !at || !field.seasons.length) return []
    const [least, most] = [field.keepLeast, field.keepMost].map((seasons) => field.first + seasons - 1) as [
      number,
      number,
    ]
    const last = row.number("stand last season")
    const isOpen = most >= field.first + field.seasons.length - 1 // longer may be as good
    if (last === null ? isOpen || most >= end : last >= least && (last <= most || isOpen)) return []
    const ends = last === null ? `go on through ${end}` : `end after ${last}`
    const span = isOpen ? `${least} or later` : most === least ? `${least}` : `${least} to ${most}`
    return [
      {
        rule: "replanting",
        cells: [at],
        sentence: `The cash of the years to come lets ${ground} ${ends}; by Replant its last season is best ${span}`,
      },
    ]
  })
}
