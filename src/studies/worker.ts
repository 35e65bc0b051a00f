import {drawPart, howSure, type DrawnPart, type HowSureInput} from "./howSure"

/** What the page asks of the worker, and what the worker tells it. */
export type Asked =
  | {readonly ask: "draw"; readonly input: HowSureInput; readonly from: number; readonly to: number}
  | {readonly ask: "gather"; readonly parts: readonly DrawnPart[]}
export type Told =
  | {readonly tell: "share"; readonly share: number}
  | {readonly tell: "part"; readonly part: DrawnPart}
  | {readonly tell: "result"; readonly result: ReturnType<typeof howSure>}

const tell = (told: Told, moved: Transferable[] = []) =>
  (self as unknown as {postMessage(told: Told, moved: Transferable[]): void}).postMessage(told, moved)

self.addEventListener("message", ({data}: MessageEvent<Asked>) => {
  if (data.ask === "gather") return tell({tell: "result", result: howSure(data.parts)})
  const part = drawPart(data.input, data.from, data.to, (share) => tell({tell: "share", share}))
  tell({tell: "part", part}, [
    part.inputs.buffer,
    part.picked.buffer,
    part.nextSugar.buffer,
    part.refill.buffer,
    part.store.buffer,
  ] as ArrayBuffer[])
})
