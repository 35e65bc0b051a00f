import type {CellAddress, Document} from "../workbook/document"
import {Workbook} from "../workbook/workbook"

/** What is worked back: the input that is changed, the result that is wanted to be a number, and between which numbers. */
export interface WorkBackInput {
  readonly document: Document
  readonly input: CellAddress
  readonly result: CellAddress
  readonly wanted: number
  readonly least: number | null
  readonly most: number | null
}

/** The input found, what it gives, and whether that is the wanted number or only the nearest that was found. */
export interface WorkedBack {
  readonly input: number
  readonly gives: number
  readonly isReached: boolean
  readonly tries: number
}

/** Relative nearness at which a wanted number counts as reached. */
const NEAR = 1e-7
const MOST_TRIES = 120
const MOST_ROUNDS = 30

/** Finds the input by trying it in a copy of the workbook, so that the open one is not touched. */
export function workBack({document, input, result, wanted, least, most}: WorkBackInput): WorkedBack | null {
  const workbook = new Workbook(document)
  const from = workbook.valueAt(input)
  if (typeof from !== "number") return null
  const isDate = workbook.isDateAt(input)
  const give = (content: number) => {
    const at = isDate ? Math.round(content) : content
    workbook.revise({type: "enter", cells: [{at: input, content: at}]}, result.sheet)
    const value = workbook.valueAt(result)
    return typeof value === "number" ? value : null
  }
  return findInput(give, from, wanted, least ?? -Infinity, most ?? Infinity)
}

interface Try {
  readonly x: number
  readonly gives: number
}

/**
 * The x between `least` and `most` at which `give` comes to `wanted`: looks outwards from where it is until two tries lie on
 * either side, then halves and draws lines between them (the Illinois form of false position, Dowell and Jarratt 1971).
 * Where the result moves in steps, or never gets there, the nearest try is given. Null where nothing can be tried.
 */
export function findInput(
  give: (x: number) => number | null,
  from: number,
  wanted: number,
  least = -Infinity,
  most = Infinity,
): WorkedBack | null {
  let tries = 0
  let best: Try | null = null
  const near = (gives: number) => Math.abs(gives - wanted) <= NEAR * Math.max(1, Math.abs(wanted))
  const attempt = (x: number): Try | null => {
    tries++
    const gives = give(x)
    if (gives === null || !Number.isFinite(gives)) return null
    const one = {x, gives}
    if (!best || Math.abs(gives - wanted) < Math.abs(best.gives - wanted)) best = one
    return one
  }
  const found = (): WorkedBack | null =>
    best && {input: best.x, gives: best.gives, isReached: near(best.gives), tries}

  const start = attempt(from)
  if (start && near(start.gives)) return found()
  const sides: [Try | null, Try | null] = [start, start]
  let pair: [Try, Try] | null = null
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const step = Math.max(Math.abs(from) * 0.05, 0.01) * 2 ** round
    const [low, high] = [Math.max(least, from - step), Math.min(most, from + step)]
    // Away from nought first: of a square's two roots the one on the same side is meant.
    for (const i of from < 0 ? ([0, 1] as const) : ([1, 0] as const)) {
      const x = i === 0 ? low : high
      const before = sides[i]
      if (before?.x === x) continue
      const now = attempt(x)
      if (now && near(now.gives)) return found()
      if (before && now && before.gives > wanted !== now.gives > wanted) pair = [before, now]
      if (now) sides[i] = now
      if (pair) break
    }
    if (pair || (low === least && high === most)) break
  }
  if (!pair) return found()
  narrow(pair, wanted, (x) => {
    const one = tries < MOST_TRIES ? attempt(x) : null
    return one && !near(one.gives) ? one : null
  })
  return found()
}

function narrow([a, b]: [Try, Try], wanted: number, attempt: (x: number) => Try | null) {
  let [one, other] = [a, b]
  let [ga, gb] = [a.gives - wanted, b.gives - wanted]
  for (let i = 0; Math.abs(other.x - one.x) > 1e-12 * Math.max(1, Math.abs(one.x)); i++) {
    const line = (one.x * gb - other.x * ga) / (gb - ga)
    const middle = (one.x + other.x) / 2
    // Every third try halves: where the result moves in steps a line goes nowhere.
    const next = attempt(i % 3 === 2 || !Number.isFinite(line) ? middle : line)
    if (!next) return
    const g = next.gives - wanted
    if (g > 0 === gb > 0) ga /= 2
    else {
      one = other
      ga = gb
    }
    other = next
    gb = g
  }
}
