/** A study whose draws can be shared out: it runs some of them, and puts the parts together. */
export interface Study<Input, Part, Result> {
  draw(input: Input, from: number, to: number, done: (share: number) => void): Part
  gather(input: Input, parts: readonly Part[]): Result
  /** What a part holds that may be handed over without a copy. */
  buffers(part: Part): ArrayBufferLike[]
}

/** What the page asks of a worker, and what the worker tells it. */
export type Asked<Input, Part> =
  | {readonly ask: "draw"; readonly input: Input; readonly from: number; readonly to: number}
  | {readonly ask: "gather"; readonly input: Input; readonly parts: readonly Part[]}
export type Told<Part, Result> =
  | {readonly tell: "share"; readonly share: number}
  | {readonly tell: "part"; readonly part: Part}
  | {readonly tell: "result"; readonly result: Result}

/** A study that is being run: its result, and how to stop it. */
export interface RunningStudy<Result> {
  /** Null when it was stopped. */
  readonly result: Promise<Result | null>
  stop(): void
}

/** Chosen: more workers than this gain little, and the page needs a core. */
const MOST_WORKERS = 4

/** Shares the draws of a study out among workers, so that the page goes on; `progress` is told the share of the draws done. */
export function shareOut<Input, Part, Result>(
  startWorker: () => Worker,
  input: Input,
  draws: number,
  progress: (share: number) => void,
): RunningStudy<Result> {
  const count = Math.max(1, Math.min(MOST_WORKERS, navigator.hardwareConcurrency || 1))
  const workers = Array.from({length: count}, startWorker)
  const end = () => workers.forEach((worker) => worker.terminate())
  const shares = workers.map(() => 0)
  let stop = end
  const result = new Promise<Result | null>((done, fail) => {
    stop = () => {
      end()
      done(null)
    }
    const parts: Part[] = []
    for (const [i, worker] of workers.entries()) {
      const ask = (asked: Asked<Input, Part>) => worker.postMessage(asked, [])
      worker.addEventListener("error", ({message}) => {
        end()
        fail(new Error(message))
      })
      worker.addEventListener("message", ({data}: MessageEvent<Told<Part, Result>>) => {
        if (data.tell === "share") {
          shares[i] = data.share
          progress(shares.reduce((sum, share) => sum + share, 0) / count)
        } else if (data.tell === "part") {
          parts.push(data.part)
          if (parts.length === count) ask({ask: "gather", input, parts})
        } else {
          end()
          done(data.result)
        }
      })
      ask({
        ask: "draw",
        input,
        from: Math.round((i * draws) / count),
        to: Math.round(((i + 1) * draws) / count),
      })
    }
  })
  return {result, stop: () => stop()}
}

/** Makes the worker this is called in answer for a study. */
export function answerFor<Input, Part, Result>({draw, gather, buffers}: Study<Input, Part, Result>) {
  const tell = (told: Told<Part, Result>, moved: Transferable[] = []) =>
    (self as unknown as {postMessage(told: Told<Part, Result>, moved: Transferable[]): void}).postMessage(
      told,
      moved,
    )
  self.addEventListener("message", ({data}: MessageEvent<Asked<Input, Part>>) => {
    if (data.ask === "gather") return tell({tell: "result", result: gather(data.input, data.parts)})
    const part = draw(data.input, data.from, data.to, (share) => tell({tell: "share", share}))
    tell({tell: "part", part}, buffers(part) as ArrayBuffer[])
  })
}
