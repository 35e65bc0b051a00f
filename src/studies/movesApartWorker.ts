import type {Document} from "../workbook/document"
import {movesApart} from "./movesApart"

// The engine calculates in here, on a copy: the page stays free.
self.addEventListener("message", ({data}: MessageEvent<Document>) => {
  const page = self as unknown as {postMessage(told: unknown, moved: Transferable[]): void}
  page.postMessage(movesApart(data), [])
})
