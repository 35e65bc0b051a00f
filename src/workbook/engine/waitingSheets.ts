import type {HyperFormula} from "hyperformula"
import {contentAt, isFormula, type CellAddress, type Document} from "../document"
import {sheetsBehind} from "../sheetsBehind"
import {recalculationOf} from "./recalculation"

/** The sheets whose values are owed until they are asked for. */
export interface WaitingSheets {
  /** Whether a sheet is left for later. */
  has(sheet: number): boolean
  readonly isWaiting: boolean
  /** Whether something is left to work out. */
  readonly isOwing: boolean
  /** Whether the value of a cell has to be worked out before it is told. */
  isOwedAt(document: Document, at: CellAddress): boolean
  /** Whether all sheets but these wait already. */
  isAllBeside(document: Document, behind: ReadonlySet<number>): boolean
  /** Leaves all sheets but these for later. */
  letWait(document: Document, behind: ReadonlySet<number>): void
  /** Has the engine's next batch work out what is owed, for about so long, ms. */
  settle(time: number): void
  /** Nothing waits any more where nothing is owed. */
  waitNoMoreThanOwed(): void
}

/** Which sheets of an engine wait; `idOf` gives the engine's number of a sheet. */
export function waitingSheetsOf(engine: HyperFormula, idOf: (sheet: number) => number): WaitingSheets {
  const recalculation = recalculationOf(engine)
  let waiting: ReadonlySet<number> = new Set()
  // Sheets of names that do not wait, of which some formulas rest on what waits.
  let partly: ReadonlySet<number> = new Set()
  const asked = new Map<number, boolean>()

  /** What waits keeps its value where nothing that it rests on has changed. */
  const restsOnOwing = (document: Document, sheet: number) => {
    const held = asked.get(sheet)
    if (held !== undefined) return held
    const rests = [...sheetsBehind(document, sheet)].some((one) => recalculation.owing.has(idOf(one)))
    asked.set(sheet, rests)
    return rests
  }

  return {
    has: (sheet) => waiting.has(sheet),
    get isWaiting() {
      return waiting.size > 0
    },
    get isOwing() {
      return recalculation.owing.size > 0
    },
    isOwedAt: (document, at) =>
      (waiting.has(at.sheet) || (partly.has(at.sheet) && isFormula(contentAt(document, at)))) &&
      restsOnOwing(document, at.sheet),
    isAllBeside: ({sheets}, behind) =>
      waiting.size === sheets.length - behind.size && [...waiting].every((sheet) => !behind.has(sheet)),
    letWait(document, behind) {
      const {sheets} = document
      waiting = new Set([...sheets.keys()].filter((sheet) => !behind.has(sheet)))
      partly = new Set(
        [...behind].filter(
          (sheet) =>
            sheets[sheet]!.names && [...sheetsBehind(document, sheet)].some((one) => !behind.has(one)),
        ),
      )
      recalculation.letWait(new Set([...waiting].map(idOf)))
    },
    settle: (time) => recalculation.settle(time),
    waitNoMoreThanOwed() {
      asked.clear()
      if (recalculation.owing.size === 0) waiting = partly = new Set()
    },
  }
}
