import type {NoteDifference} from "../../workbook/compare"
import type {CellAddress, Note} from "../../workbook/document"
import {extraAt} from "../../workbook/extras"
import type {Command} from "../store"

/** Keeps what a person writes about a cell; nothing written takes the note away. `by` is how the person signs. */
export const keepNote =
  (at: CellAddress, written: string, by: string, now = new Date()): Command =>
  ({document}) => {
    const text = written.trim()
    const was = extraAt(document, at)?.note
    if (text === "") return was ? {type: "changeExtras", changes: [{at, note: null}]} : null
    const signed = by.trim()
    if (was?.text === text && (was.by ?? "") === signed) return null
    const note = {text, ...(signed ? {by: signed} : {}), written: now.toISOString()}
    return {type: "changeExtras", changes: [{at, note}]}
  }

/** Says that nothing is left to do about a note, or that something is again. */
export const settleNote =
  (at: CellAddress): Command =>
  ({document}) => {
    const was = extraAt(document, at)?.note
    if (!was) return null
    const {settled, ...open} = was
    return {type: "changeExtras", changes: [{at, note: settled ? open : {...open, settled: true}}]}
  }

/** Puts the notes of another copy beside one's own: on a cell that has one already, theirs stands under it, signed. */
export const bringNotes =
  (notes: readonly NoteDifference[], from: string): Command =>
  () =>
    notes.length === 0
      ? null
      : {
          type: "several",
          name: `${notes.length === 1 ? "note" : `${notes.length} notes`} from ${from}`,
          edits: [
            {
              type: "changeExtras",
              changes: notes.map(({now: at, before, after}) => ({at, note: together(after, before)})),
            },
          ],
        }

function together(own: Note | null, theirs: Note): Note {
  if (!own) return theirs
  const {settled: _, ...open} = own
  const signed = theirs.by ? `${theirs.by}: ` : ""
  return {...open, text: `${own.text}\n${signed}${theirs.text}`}
}
