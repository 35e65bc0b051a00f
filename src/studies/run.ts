import type {DrawnPart, HowSure, HowSureInput} from "./howSure"
import type {Asked, Told} from "./worker"

/** A study that is being run: its result, and how to stop it. */
export interface Running {
  /** Null when it was stopped. */
  readonly result: Promise<HowSure | null>
  stop(): void
}

/** Chosen: more workers than this gain little, and the page needs a core. */
const MOST_WORKERS = 4

/** Runs a study in workers, so that the page goes on; `progress` is told the share of the draws done. */
export function runHowSure(input: HowSureInput, draws: number, progress: (share: number) => void): Running {
  const count = Math.max(1, Math.min(MOST_WORKERS, navigator.hardwareConcurrency || 1))
  const workers = Array.from(
    {length: count},
    () => new Worker(new URL("./worker.ts", import.meta.url), {type: "module"}),
  )
  const end = () => workers.forEach((worker) => worker.terminate())
  const shares = workers.map(() => 0)
  let stop = end
  const result = new Promise<HowSure | null>((done, fail) => {
    stop = () => {
      end()
      done(null)
    }
    const parts: DrawnPart[] = []
    for (const [i, worker] of workers.entries()) {
      const ask = (asked: Asked) => worker.postMessage(asked, [])
      worker.addEventListener("error", ({message}) => {
        end()
        fail(new Error(message))
      })
      worker.addEventListener("message", ({data}: MessageEvent<Told>) => {
        if (data.tell === "share") {
          shares[i] = data.share
          progress(shares.reduce((sum, share) => sum + share, 0) / count)
        } else if (data.tell === "part") {
          parts.push(data.part)
          if (parts.length === count) ask({ask: "gather", parts})
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
