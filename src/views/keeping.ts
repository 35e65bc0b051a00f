import type {Document} from "../workbook/document"

/** A state of a workbook that was kept on purpose: by whom, when and why. */
export interface KeptVersion {
  readonly id: number
  readonly workbook: string
  readonly name: string
  readonly by: string
  readonly reason: string
  readonly at: Date
}

/** What keeps the workbook: its state in words, and copies in files. */
export interface Keeping {
  subscribe(listener: () => void): () => void
  /** "Saved on this device 14:02" */
  words(): string
  keepFileCopy(): Promise<void>
  /** Keeps a copy in a file that is for reading only, with who made it. */
  keepReadingCopy(madeBy: string): Promise<void>
  openFileCopy(): Promise<void>
  /** Reads days of weather from a table in text, and asks before they go into the sheet. */
  bringInWeather(): Promise<void>
  /** Reads a copy of a workbook from a file, without opening it; null when none was chosen. */
  readFileCopy(): Promise<
    {readonly name: string; readonly document: Document} | {readonly refused: string} | null
  >
  /** The states that were kept on purpose. */
  readonly versions: {
    keep(version: Omit<KeptVersion, "id">, document: Document): Promise<{readonly refused: string} | null>
    of(workbook: string): Promise<readonly KeptVersion[]>
    take(id: number): Promise<{readonly document: Document} | {readonly refused: string}>
    drop(id: number): Promise<void>
  }
  openSample(name: "demonstration" | "blank"): Promise<void>
}
