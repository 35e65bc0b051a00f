import {dateText} from "../editor/display"
import type {Store} from "../editor/store"
import {valueNamed} from "../workbook/names"
import {asOfDay} from "./weekShown"

/**
 * Which state of which sheet a picture or a printed page shows: "Hollow Brook Farm, season 2026. Spear size, version 7, after the
 * frost, as of 25 May 2026". Version and day are those on Named values; where none is typed that is said. What is shown may be
 * named instead of the open sheet.
 */
export function editionWords(store: Store, shown?: string): string {
  const {document, cell} = store.getState()
  const book = document.season ? `${document.name}, ${document.season}` : document.name
  const typed = valueNamed(store.workbook, "Plan_version")
  const version =
    (typeof typed === "number" && typed !== 0) || (typeof typed === "string" && typed.trim() !== "")
      ? `version ${String(typed).trim()}`
      : "no version named"
  const asOf = asOfDay(store)
  const on = asOf === null ? "no day typed on which it stands" : `as of ${dateText(asOf)}`
  return `${book}. ${shown ?? document.sheets[cell.sheet]!.name}, ${version}, ${on}`
}
