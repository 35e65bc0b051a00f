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
export function copyName(workbookName: string, on: Date, ending = "json"): string {
  const words = workbookName.toLowerCase().match(/[\p{L}\p{M}\p{N}]+/gu) ?? ["workbook"]
  return `${words.join("-")}-${isoDate(on)}.${ending}`
}

/** As `keep`, for a copy of the workbook. */
export const keepFileCopy = (workbook: Document, suggestedName: string) =>
  keep(writeFile(workbook), suggestedName, WORKBOOK)

/** As `keep`, for a page that opens in any browser. */
export const keepPage = (page: string, suggestedName: string) => keep(page, suggestedName, PAGE)

/** As `keep`, for a copy that other programs read; its ending says of which form. */
export const sendFile = (data: string | Uint8Array, suggestedName: string) =>
  keep(
    data,
    suggestedName,
    FOREIGN.find(({ending}) => suggestedName.endsWith(ending))!,
  )

/**
 * Gives a table in text to another device: by what the device shares with, where it can, or as `keep`. Has to be called from
 * a click or a key.
 */
export async function shareTable(
  text: string,
  name: string,
): Promise<{readonly name: string} | Refused | null> {
  const file = new File([text], name, {type: "text/csv"})
  const isHeld = globalThis.matchMedia?.("(pointer: coarse)").matches
  if (!isHeld || !navigator.canShare?.({files: [file]})) return sendFile(text, name)
  return unlessCancelled("The file could not be shared", async () => {
    await navigator.share({files: [file], title: name})
    return {name}
  })
}

/**
 * Writes a file: where the person says, if the browser can ask (File System Access, WICG), or else as a download. Gives the
 * name of the file, or null when the person changed their mind. Has to be called from a click or a key.
 */
async function keep(
  data: string | Uint8Array,
  suggestedName: string,
  {description, mime, ending}: Form,
): Promise<{readonly name: string} | Refused | null> {
  const blob = new Blob([data as BlobPart], {type: mime})
  const {showSaveFilePicker} = globalThis as Pickers
  if (!showSaveFilePicker) return download(blob, suggestedName)
  return unlessCancelled("The file could not be written", async () => {
    const file = await showSaveFilePicker({
      suggestedName,
      types: [{description, accept: {[mime]: [ending]}}],
    })
    const writable = await file.createWritable()
    await writable.write(data as FileSystemWriteChunkType)
    await writable.close()
    return {name: file.name}
  })
}

interface Form {
  readonly description: string
  readonly mime: string
  readonly ending: string
}

const WORKBOOK: Form = {description: "Workbook", mime: "application/json", ending: ".json"}
const PAGE: Form = {description: "Page to read in a browser", mime: "text/html", ending: ".html"}

/** The forms that other programs read. */
const FOREIGN: readonly Form[] = [
  {description: "Table in text", mime: "text/csv", ending: ".csv"},
  {
    description: "Workbook of ECMA-376",
    mime: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    ending: ".xlsx",
  },
  {
    description: "Workbook of ISO/IEC 26300",
    mime: "application/vnd.oasis.opendocument.spreadsheet",
    ending: ".ods",
  },
]

/** Asks for a workbook's file and reads its text. Null when the person changed their mind. Has to be called from a click or a key. */
export const openFileCopy = () => openText(FILE_TYPES)

/** Asks for a table in text, such as CSV, likewise. */
export const openTable = () => openText(TABLE_TYPES)

/** The bytes of a file of another program. */
export interface ForeignFile {
  readonly bytes: Uint8Array
  readonly name: string
}

/** Asks for a file of another program likewise; one of more bytes than `most` is refused before it is read. */
export const openForeign = (most: number): Promise<ForeignFile | Refused | null> =>
  open(FOREIGN_TYPES, most, async (file) => ({
    bytes: new Uint8Array(await file.arrayBuffer()),
    name: file.name,
  }))

const megabytes = (bytes: number) => `${Math.ceil(bytes / 100_000) / 10} MB`

type FileType = {readonly description: string; readonly accept: Readonly<Record<string, readonly string[]>>}

const openText = (types: readonly FileType[]): Promise<ChosenFile | Refused | null> =>
  open(types, MOST_TEXT, async (file) => ({text: await file.text(), name: file.name}))

/** Bytes. Chosen: a farm's workbook has a quarter of a megabyte, a record of many years some more. */
const MOST_TEXT = 50_000_000

/** A file of more bytes than `most` is refused before it is read. */
function open<T>(
  types: readonly FileType[],
  most: number,
  read: (file: File) => Promise<T>,
): Promise<T | Refused | null> {
  const {showOpenFilePicker} = globalThis as Pickers
  return unlessCancelled("The file could not be read", async () => {
    const file = showOpenFilePicker
      ? await (await showOpenFilePicker({types}))[0]!.getFile()
      : await pick(types.flatMap(({accept}) => Object.entries(accept).flat(2)).join(","))
    if (!file) return null
    if (file.size > most) throw new Error(`it is ${megabytes(file.size)}; the most is ${megabytes(most)}`)
    return read(file)
  })
}

const FILE_TYPES = [
  {description: "Workbook", accept: {[WORKBOOK.mime]: [WORKBOOK.ending], [PAGE.mime]: [PAGE.ending]}},
]
const TABLE_TYPES = [
  {description: "Table in text", accept: {"text/csv": [".csv"], "text/plain": [".txt", ".tsv", ".dat"]}},
]
const FOREIGN_TYPES = [
  {
    description: "Table or workbook",
    accept: {
      ...Object.fromEntries(FOREIGN.map(({mime, ending}) => [mime, [ending]])),
      "text/plain": [".txt", ".tsv"],
    },
  },
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

function download(blob: Blob, name: string): {name: string} {
  const link = document.createElement("a")
  link.href = URL.createObjectURL(blob)
  link.download = name
  link.click()
  setTimeout(() => URL.revokeObjectURL(link.href), DOWNLOAD_BEGINS_WITHIN)
  return {name}
}

/** The field is in the page while it is asked: out of it, some browsers never tell what was chosen. */
function pick(accept: string): Promise<File | null> {
  const input = document.createElement("input")
  input.type = "file"
  input.accept = accept
  input.hidden = true
  document.body.append(input)
  return new Promise<File | null>((resolve) => {
    input.addEventListener("change", () => resolve(input.files?.[0] ?? null))
    input.addEventListener("cancel", () => resolve(null))
    input.click()
  }).finally(() => input.remove())
}
