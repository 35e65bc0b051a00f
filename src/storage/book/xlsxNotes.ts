import type {BookNote} from "./book"
import {LIMITS} from "./limits"
import {plainWords} from "./xlsxWords"
import {readXml} from "./xml"

/** The notes of a sheet, by the references of their cells. */
export function notesIn(bytes: Uint8Array | null): ReadonlyMap<string, BookNote> {
  const notes = new Map<string, BookNote>()
  if (!bytes) return notes
  const authors: string[] = []
  let author: string | null = null
  let note: {ref: string; by: string; text: string} | null = null
  let isReading = false
  readXml(bytes, {
    open(element, attribute) {
      if (element === "author") author = ""
      if (element === "comment")
        note = {ref: attribute("ref") ?? "", by: authors[Number(attribute("authorId"))] ?? "", text: ""}
      isReading = element === "t"
    },
    words(text) {
      if (author !== null) author += text
      else if (note && isReading && note.text.length < LIMITS.text) note.text += text
    },
    close(element) {
      if (element === "author") {
        authors.push(plainWords(author ?? ""))
        author = null
      }
      if (element === "comment" && note && notes.size < LIMITS.cells) {
        notes.set(note.ref.toUpperCase(), {text: plainWords(note.text), by: note.by, written: null})
        note = null
      }
      isReading = false
    },
  })
  return notes
}
