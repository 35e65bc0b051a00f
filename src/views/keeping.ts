/** What keeps the workbook: its state in words, and copies in files. */
export interface Keeping {
  subscribe(listener: () => void): () => void
  /** "Saved on this device 14:02" */
  words(): string
  keepFileCopy(): Promise<void>
  openFileCopy(): Promise<void>
  /** Reads days of weather from a table in text, and asks before they go into the sheet. */
  bringInWeather(): Promise<void>
  openSample(name: "demonstration" | "blank"): Promise<void>
}
