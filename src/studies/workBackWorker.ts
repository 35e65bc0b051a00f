import {workBack, type WorkBackInput} from "./workBack"

// The engine calculates in here, on a copy: the page stays free.
self.addEventListener("message", ({data}: MessageEvent<WorkBackInput>) => {
  const page = self as unknown as {postMessage(told: unknown, moved: Transferable[]): void}
  page.postMessage(workBack(data), [])
})
