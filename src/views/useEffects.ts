import {useEffect, useState} from "react"
import type {Effects} from "../studies/effects"
import type {EffectsInput} from "../studies/effectsWorker"
import {startWorker} from "../studies/startWorker"
import type {Difference} from "../workbook/compare"
import type {Document} from "../workbook/document"

/** What moved between two states, from a worker that is let go when either changes. */
export function useEffects(
  before: Document,
  after: Document,
  differences: readonly Difference[],
): Effects | null {
  const [done, setDone] = useState<{readonly of: Document; readonly found: Effects} | null>(null)
  useEffect(() => {
    const worker = startWorker("effects")
    worker.addEventListener("message", ({data}: MessageEvent<Effects>) => setDone({of: after, found: data}))
    const input: EffectsInput = {before, after, differences}
    worker.postMessage(input, [])
    return () => worker.terminate()
  }, [before, after, differences])
  if (done?.of !== after) return null
  // The worker gives copies of the differences: the very ones are put back, so that they can be found again.
  const own = new Map(differences.map((one) => [placeOf(one), one]))
  return {
    ...done.found,
    effects: done.found.effects.map((one) => ({
      ...one,
      difference: own.get(placeOf(one.difference)) ?? one.difference,
    })),
  }
}

/** The cell of a difference, in words that tell it from others. */
export const placeOf = ({now, was}: Difference) => JSON.stringify(now ?? was)
