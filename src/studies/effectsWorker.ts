import type {Difference} from "../workbook/compare"
import type {Document} from "../workbook/document"
import {effectsOf} from "./effects"

/** What the page asks of the worker. */
export interface EffectsInput {
  readonly before: Document
  readonly after: Document
  readonly differences: readonly Difference[]
}

// The engine calculates in here, on copies: the page stays free.
self.addEventListener("message", ({data}: MessageEvent<EffectsInput>) => {
  const page = self as unknown as {postMessage(told: unknown, moved: Transferable[]): void}
  page.postMessage(effectsOf(data.before, data.after, data.differences), [])
})
