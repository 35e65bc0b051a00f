import {mending, type MendingInput} from "./mending"

// The engine calculates in here, on a copy: the page stays free.
self.addEventListener("message", ({data}: MessageEvent<MendingInput>) => {
  const page = self as unknown as {postMessage(told: unknown, moved: Transferable[]): void}
  page.postMessage(mending(data), [])
})
