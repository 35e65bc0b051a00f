import {dayOf} from "../../functions/calendar"
import {
  columnWith,
  contentAt,
  type CellAddress,
  type Content,
  type Document,
  type Part,
} from "../workbook/document"
import type {Edit} from "../workbook/edit"
import {columnAt} from "../workbook/extras"
import {revised} from "../workbook/revised"
import {rowsOf} from "../workbook/season"
import {isSameName} from "../workbook/plantingName"
import {waitOn} from "../workbook/waits"
import type {Workbook} from "../workbook/workbook"
import {dayText} from "./display"

/** What a picking or a close says, and another cell speaks against. */
export interface Doubt {
  /** The cell that is in doubt. */
  readonly at: CellAddress
  /** What speaks against it, a sentence, and the question that this raises. */
  readonly told: string
  readonly asks: string
  /** The cell that speaks against it. */
  readonly link: {readonly at: CellAddress; readonly words: string}
}

/**
 * The doubts that an edit raises: pickings inside a wait after spraying or after the day on which their planting was closed,
 * and closes before a picking or the opening.
 */
export function doubtsIn(workbook: Workbook, edit: Edit): readonly Doubt[] {
  if (edit.type !== "enter" && edit.type !== "moveCells") return []
  const {document} = workbook
  const cells = edit.type === "enter" ? edit.cells.map(({at}) => at) : edit.moves.map(({to}) => to)
  const touched = cells.flatMap((at): {at: CellAddress; part: Part}[] => {
    const part = columnAt(document, at)?.part
    return part === "picking day" || part === "picking planting" || part === "closed" ? [{at, part}] : []
  })
  if (!touched.length) return []
  const after = revised(document, edit)
  const rows = new Map(touched.map(({at, part}) => [`${at.sheet} ${at.row}`, {at, part}]))
  return [...rows.values()].flatMap(({at, part}): Doubt[] => {
    const isClose = part === "closed"
    const planting = String(held(after, at, isClose ? "name of planting" : "picking planting") ?? "")
    const iso = held(after, at, isClose ? "closed" : "picking day")
    const day = typeof iso === "string" ? dayOf(iso) : null
    if (planting === "" || day === null) return []
    const doubt = isClose ? closeDoubt(workbook, planting, day) : pickingDoubt(workbook, planting, day)
    return doubt ? [{at, ...doubt}] : []
  })
}

const held = (document: Document, at: CellAddress, part: Part): Content =>
  contentAt(document, {...at, col: columnWith(document, at.sheet, part)})

/** What speaks against a picking of a planting on a day, or null. */
export function pickingDoubt(workbook: Workbook, planting: string, day: number): Omit<Doubt, "at"> | null {
  const asks = `Was it picked on ${dayText(day)}?`
  const wait = waitOn(workbook, planting, day)
  if (wait) {
    const [was, again] = [wait.from, wait.until].map((one) => dayText(one))
    const told = `${wait.planting} was sprayed on ${was}: by its label it may be picked again from ${again}.`
    return {told, asks, link: {at: wait.at, words: `the wait of ${wait.planting}`}}
  }
  const row = rowsOf(workbook, "name of planting").find((one) =>
    isSameName(one.word("name of planting"), planting),
  )
  const [closed, at] = [row?.number("closed") ?? null, row?.cells.closed]
  if (closed === null || !at || day <= closed) return null
  const told = `${planting} was closed to fern on ${dayText(closed)}.`
  return {told, asks, link: {at, words: `the close of ${planting}`}}
}

/** What speaks against a day as the last of cutting of a planting, or null: its last picking or its opening, where that is later. */
export function closeDoubt(workbook: Workbook, planting: string, day: number): Omit<Doubt, "at"> | null {
  const asks = `Did cutting end on ${dayText(day)}?`
  const later = rowsOf(workbook, "picking planting").flatMap((row) => {
    const [on, at] = [row.number("picking day"), row.cells["picking day"]]
    return on !== null && at && on > day && isSameName(row.word("picking planting"), planting)
      ? [{on, at}]
      : []
  })
  const last = later.toSorted((a, b) => b.on - a.on)[0]
  if (last) {
    const told = `${planting} was picked on ${dayText(last.on)}, later than that.`
    return {told, asks, link: {at: last.at, words: `the picking of ${planting}`}}
  }
  const row = rowsOf(workbook, "open").find((one) => isSameName(one.word("planting"), planting))
  const [opens, at] = [row?.number("open") ?? null, row?.cells.open]
  if (opens === null || !at || day >= opens - 1) return null // the day before is how the plan says that nothing is cut
  const told = `${planting} opens on ${dayText(opens)}, later than that.`
  return {told, asks, link: {at, words: `the opening of ${planting}`}}
}

/** The doubts of a paste together: the first in full, and how many there are beside it. */
export function doubtWords([first, ...others]: readonly Doubt[]): string {
  if (!first) return ""
  const rest = others.length === 1 ? "1 more row is" : `${others.length} more rows are`
  return `${first.told} ${first.asks}${others.length ? ` ${rest} in doubt in the same way.` : ""}`
}
