import type {Store} from "../editor/store"
import type {Document} from "../workbook/document"
import {sheetWith} from "../workbook/document"
import {replantingOf, type ReplantField, type Replanting} from "../workbook/replant"

/** What the page on keeping or replanting shows: the field of the chosen row, else the first. */
export interface ReplantShown {
  readonly replanting: Replanting
  readonly field: ReplantField
}

/** What the page shows when its sheet is open, read once for each document; null on other sheets and without fields. */
export function replantShown(store: Store): ReplantShown | null {
  const {document, cell} = store.getState()
  if (cell.sheet !== sheetWith(document, "replant field")) return null
  if (!held.has(document)) held.set(document, replantingOf(store.workbook))
  const replanting = held.get(document)
  if (!replanting) return null
  const field = replanting.fields.find(({row}) => row === cell.row) ?? replanting.fields[0]
  return field ? {replanting, field} : null
}

const held = new WeakMap<Document, Replanting | null>()
