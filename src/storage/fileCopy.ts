import type {Document} from "../workbook/document"
import {writeFile} from "../workbook/file"
import {isoDate} from "../workbook/clock"
import type {Refused} from "./deviceStore"

/** The text of a file that a person chose; `readFile` of the workbook checks what it holds. */
export interface ChosenFile {
  readonly text: string
  readonly name: string
}

/** "hollow-brook-farm-2026-05-25.json": the name of the workbook and the day of the copy, safe on every system. */
export function copyName(workbookName: string, on: Date): string {
  const words = workbookName.toLowerCase().match(/[\p{L}\p{M}\p{N}]+/gu) ?? ["workbook"]
  return `${words.join("-")}-${isoDate(on)}.json`
}

/**
 * Writes a copy of the workbook to a file: where the person says, if the browser can ask (File System Access,
 * WICG), or else as a download. Gives the name of the file, or null when the person changed their mind.
 * Has to be called from a click or a key.
 */
export async function keepFileCopy(
  workbook: Document,
  suggestedName: string,
): Promise<{readonly name: string} | Refused | null> {
  const text = writeFile(workbook)
  const {showSaveFilePicker} = globalThis as Pickers
  if (!showSaveFilePicker) return download(text, suggestedName)
  return unlessCancelled("The file could not be written", async () => {
    const file = await showSaveFilePicker({suggestedName, types: FILE_TYPES})
    const writable = await file.createWritable()
    await writable.write(text)
    await writable.close()
    return {name: file.name}
  })
}

/** Asks for a workbook's file and reads its text. Null when the person changed their mind. Has to be called from a click or a key. */
export const openFileCopy = () => openText(FILE_TYPES)

/** Asks for a table in text, such as CSV, likewise. */
export const openTable = () => openText(TABLE_TYPES)

type FileType = {readonly description: string; readonly accept: Readonly<Record<string, readonly string[]>>}

function openText(types: readonly FileType[]): Promise<ChosenFile | Refused | null> {
  const {showOpenFilePicker} = globalThis as Pickers
  return unlessCancelled("The file could not be read", async () => {
    const file = showOpenFilePicker
      ? await (await showOpenFilePicker({types}))[0]!.getFile()
      : await pick(types.flatMap(({accept}) => Object.entries(accept).flat(2)).join(","))
    return file && {text: await file.text(), name: file.name}
  })
}

const FILE_TYPES = [{description: "Workbook", accept: {"application/json": [".json"]}}]
const TABLE_TYPES = [
  {description: "Table in text", accept: {"text/csv": [".csv"], "text/plain": [".txt", ".tsv", ".dat"]}},
]

/** Not all browsers have these, so the compiler's list of the page's functions leaves them out. */
interface Pickers {
  readonly showSaveFilePicker?: (options: object) => Promise<FileSystemFileHandle>
  readonly showOpenFilePicker?: (options: object) => Promise<FileSystemFileHandle[]>
}

async function unlessCancelled<T>(what: string, action: () => Promise<T>): Promise<T | Refused | null> {
  try {
    return await action()
  } catch (fault) {
    if (fault instanceof DOMException && fault.name === "AbortError") return null
    const why = fault instanceof Error ? fault.message : String(fault)
    return {refused: `${what}: ${why.replace(/\.$/, "")}`}
  }
}

/** Browsers read the address after the click, some a good while after. */
const DOWNLOAD_BEGINS_WITHIN = 60_000 // ms, chosen

function download(text: string, name: string): {name: string} {
  const link = document.createElement("a")
  link.href = URL.createObjectURL(new Blob([text], {type: "application/json"}))
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), DOWNLOAD_BEGINS_WITHIN)
  return {name}
}

function pick(accept: string): Promise<File | null> {
  const input = document.createElement("input")
  input.type = "file"
  input.accept = accept
  return new Promise((resolve) => {
    input.addEventListener("change", () => resolve(input.files?.[0] ?? null))
    input.addEventListener("cancel", () => resolve(null))
    input.click()
  })
}
