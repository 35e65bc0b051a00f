import type {Document} from "../workbook/document"
import {compareCases} from "./cases"

// The engine calculates in here, on a copy: the page stays free.
self.addEventListener("message", ({data}: MessageEvent<Document>) => {
  const page = self as unknown as {postMessage(told: unknown, moved: Transferable[]): void}
  page.postMessage(compareCases(data), [])
})
