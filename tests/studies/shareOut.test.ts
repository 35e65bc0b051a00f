import {afterEach, describe, expect, it, vi} from "vitest"
import {answerFor, shareOut, type Asked, type Study, type Told} from "../../src/studies/shareOut"

/** Adds up numbers times a factor; fails at a factor of 13. */
const study: Study<number, number[], number> = {
  draw(factor, from, to, done) {
    if (factor === 13) throw new Error("thirteen")
    const part = Array.from({length: to - from}, (_, i) => factor * (from + i))
    done(1)
    return part
  },
  gather: (_, parts) => parts.flat().reduce((sum, value) => sum + value, 0),
  buffers: () => [],
}

const started: FakeWorker[] = []

/** A worker in the same thread, that answers in a later turn. */
class FakeWorker {
  readonly asked: Asked<number, number[]>[] = []
  private readonly heard: Record<string, (event: object) => void> = {}
  ended = false
  constructor(private readonly silent: boolean) {
    started.push(this)
  }
  addEventListener(type: string, heard: (event: object) => void) {
    this.heard[type] = heard
  }
  postMessage(given: Asked<number, number[]>) {
    const asked = structuredClone(given)
    this.asked.push(asked)
    if (this.silent) return
    setTimeout(() => {
      if (this.ended) return
      let answer: ((event: object) => void) | undefined
      vi.stubGlobal("self", {
        addEventListener(type: string, heard: (event: object) => void) {
          if (type === "message") answer = heard
        },
        postMessage: (data: Told<number[], number>) => this.heard["message"]!({data}),
      })
      answerFor(study)
      try {
        answer!({data: asked})
      } catch (fault) {
        this.heard["error"]!({message: (fault as Error).message})
      }
    })
  }
  terminate() {
    this.ended = true
  }
}

const run = (
  factor: number,
  draws: number,
  cores: number,
  silent = false,
  progress: (share: number) => void = () => {},
) => {
  vi.stubGlobal("navigator", {hardwareConcurrency: cores})
  return shareOut<number, number[], number>(
    () => new FakeWorker(silent) as unknown as Worker,
    factor,
    draws,
    progress,
  )
}

afterEach(() => {
  started.length = 0
  vi.unstubAllGlobals()
})

describe("sharing a study out", () => {
  it.each([1, 2, 3, 16])("gives the same on %s cores, on four workers at most", async (cores) => {
    expect(await run(2, 101, cores).result).toBe(10100) // 2·(0 + ... + 100)
    expect(started).toHaveLength(Math.min(4, cores))
    expect(started.every(({ended}) => ended)).toBe(true)
  })
  it("hands each draw to one worker", async () => {
    await run(2, 10, 3).result
    const shares = started.map(({asked: [first]}) => first as {from: number; to: number})
    expect(shares.map(({from, to}) => [from, to])).toEqual([
      [0, 3],
      [3, 7],
      [7, 10],
    ])
  })
  it("tells progress over all workers", async () => {
    const told: number[] = []
    await run(2, 10, 2, false, (share) => told.push(share)).result
    expect(told).toEqual([0.5, 1])
  })
  it("gives nothing when it is stopped, and ends its workers", async () => {
    const running = run(2, 10, 2, true)
    running.stop()
    expect(await running.result).toBeNull()
    expect(started.every(({ended}) => ended)).toBe(true)
  })
  it("fails with what a worker says", async () => {
    await expect(run(13, 10, 2).result).rejects.toThrow("thirteen")
    expect(started.every(({ended}) => ended)).toBe(true)
  })
})
