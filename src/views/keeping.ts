import type {CsvTable} from "../editor/csvIn"
import type {FieldFile} from "../editor/fieldFile"
import type {Taken} from "../storage/book/documentOf"
import type {Document} from "../workbook/document"

/** A state of a workbook that stays under a name: by whom, when and why. */
export interface KeptVersion {
  readonly id: number
  readonly workbook: string
  readonly name: string
  readonly by: string
  readonly reason: string
  readonly at: Date
  /** It is a file copy that was kept or opened here: the id of its mark. */
  readonly copy?: string
  /** The planner kept it, before an act or for a file copy; nobody asked for it. */
  readonly byItself?: true
}

/** What a file copy of the same workbook took the place of, where the two differ. */
export interface Replaced {
  /** The name of the file, and what it holds. */
  readonly file: string
  readonly opened: Document
  readonly document: Document
  /** When it was changed last, as far as is known. */
  readonly changed: Date
}

/** A copy for other programs: the open sheet as CSV, or the workbook with its formulas or its values alone. */
export type OutCopy =
  {readonly form: "csv"} | {readonly form: "xlsx" | "ods"; readonly holds: "formulas" | "values"}

/** What a file of another program holds, or why it cannot be read. */
export type Foreign = {readonly name: string} & (
  | {readonly table: CsvTable}
  | {readonly field: FieldFile}
  | {readonly workbook: Taken}
  | {readonly refused: string}
)

/** What keeps the workbook: its state in words, and copies in files. */
export interface Keeping {
  subscribe(listener: () => void): () => void
  /** "Saved on this device 14:02" */
  words(): string
  keepFileCopy(): Promise<void>
  /** Keeps a copy in a file that is for reading only, with who made it. */
  keepReadingCopy(madeBy: string): Promise<void>
  /** What stood here and differs from the copy of it that is opened stays as a version, and `replaced` tells of it. */
  openFileCopy(): Promise<void>
  replaced(): Replaced | null
  /** The person has settled what `replaced` told of. */
  settleReplaced(): void
  /** What of the workbook such a copy does not hold, in sentences without a full stop. */
  leftOut(copy: OutCopy): Promise<readonly string[]>
  /** Writes what is open for other programs. */
  sendOut(copy: OutCopy): Promise<void>
  /** Gives all that was entered in the field to another device, in a file. Says what came of it; null when the person changed their mind. */
  sendFieldRows(): Promise<string | null>
  /** Asks for a file of another program, or of field rows, and reads it; nothing of it is open yet. Null when none was chosen. */
  readForeign(): Promise<Foreign | null>
  /** Opens a workbook that was read. What was open is one undo away; it stays where the engine cannot open the other. */
  openRead(workbook: Document): void
  /** Reads days of weather from a table in text, and asks before they go into the sheet. */
  bringInWeather(): Promise<void>
  /** Reads a copy of a workbook from a file, without opening it; null when none was chosen. */
  readFileCopy(): Promise<
    {readonly name: string; readonly document: Document} | {readonly refused: string} | null
  >
  /** The states that stay under a name. */
  readonly versions: {
    /** So many of those that the planner kept by itself stay, of each workbook. */
    readonly keptByItself: number
    keep(version: Omit<KeptVersion, "id">, document: Document): Promise<{readonly refused: string} | null>
    of(workbook: string): Promise<readonly KeptVersion[]>
    take(id: number): Promise<{readonly document: Document} | {readonly refused: string}>
    drop(id: number): Promise<{readonly refused: string} | null>
  }
  openSample(name: "demonstration" | "blank"): Promise<void>
  /** Whether the page explains the workbook to somebody who is here for the first time, or asked for the demonstration. */
  greets(document: Document): boolean
}
