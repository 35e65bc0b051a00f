import type {HyperFormula, SimpleRangeValue} from "hyperformula"

// Parts of the engine (3.5.0) that are not public. What uses them does without where they are missing.

/** A formula as the engine holds it. */
export interface FormulaNode {
  readonly idInGraph?: number
  readonly array?: object
  readonly cellAddress?: {readonly sheet: number}
  isComputed(): boolean
  getCellValue(): unknown
  setCellValue(value: unknown): unknown
}

/** A range as the engine holds it. It forgets what is kept with it as soon as a cell in it changes. */
export interface RangeNode {
  readonly idInGraph?: number
  /** Its last row is Infinity where it is whole columns. */
  readonly range?: {readonly end: {readonly row: number}}
  getFunctionValue(name: string): unknown
  setFunctionValue(name: string, value: unknown): void
}

export const isRangeNode = (node: object): node is RangeNode => "getFunctionValue" in node

/** The engine's nodes by their numbers, and those of the nodes that rest on each. A number whose node went has none. */
export interface Graph {
  readonly nodesSparseArray: readonly (FormulaNode | undefined)[]
  readonly edgesSparseArray: readonly (number[] | undefined)[]
  markNodeAsDirty(node: FormulaNode): void
  /** All nodes in the order in which they are worked out, and apart those that rest on themselves. */
  topSortWithScc?(): {readonly sorted: readonly FormulaNode[]; readonly cycled: readonly FormulaNode[]}
  getTopSortedWithSccSubgraphFrom?(
    from: readonly FormulaNode[],
    operate: (node: FormulaNode) => boolean,
    onCycle: (node: FormulaNode) => void,
  ): {readonly sorted: readonly FormulaNode[]; readonly cycled: readonly FormulaNode[]}
}

/** What depends on what. */
export interface Dependencies {
  readonly graph: Graph
  readonly addressMapping?: {
    readonly mapping?: ReadonlyMap<number, {height: number; readonly width: number}>
    getCell?(at: unknown): FormulaNode | undefined
  }
  getRange(start: unknown, end: unknown): RangeNode | undefined
  /** The formula that fills a range, and no more than it. */
  getArray?(range: unknown): FormulaNode | undefined
  clearDirtyVertices?(): void
  processCellDependencies?(on: readonly unknown[], user: FormulaNode): void
}

/** What the engine could take back and do again. */
export interface History {
  readonly redoStack: readonly unknown[]
  clearRedoStack?(): void
}

/** How a thing is looked up in a range. */
export interface Search {
  find?(key: unknown, range: SimpleRangeValue, options: Readonly<Record<string, string>>): number
}

/** How two values are put in order: below 0, 0, or above. */
export interface Comparing {
  compare?(left: unknown, right: unknown): number
  stringCmp?(left: string, right: string): number
  /** A word without its accents and capitals. */
  normalizeString?(word: string): string
}

/** A formula as the engine reads it. */
export interface ReadFormula {
  readonly ast: unknown
  readonly errors: readonly unknown[]
}

/** What reads formulas. */
export interface Reader {
  /** The number of a sheet, which is given one where there is none of that name. */
  resolveSheetReference(name: string): number
  parse?(
    formula: string,
    at: {readonly sheet: number; readonly row: number; readonly col: number},
  ): ReadFormula
}

export interface Insides {
  readonly _parser?: Reader
  readonly _evaluator?: {
    recomputeFormulaVertexValue(node: FormulaNode): unknown
    readonly interpreter?: {readonly arithmeticHelper?: Comparing}
  }
  readonly _dependencyGraph?: Dependencies
  readonly _columnSearch?: Search
  readonly _crudOperations?: {readonly undoRedo?: History}
}

export const insidesOf = (engine: HyperFormula) => engine as unknown as Insides

/** The values of a range, as a formula sees them. */
export interface RangeValues {
  _data?: SimpleRangeValue["data"]
  _hasOnlyNumbers?: boolean
  readonly range?: {readonly start: unknown; readonly end: unknown}
  readonly dependencyGraph?: Dependencies
  ensureThatComputed?(this: SimpleRangeValue): void
}

export const insidesOfRange = (values: SimpleRangeValue) => values as unknown as RangeValues

/** The engine's node of a range of cells; none where values are held that stand nowhere. */
export function nodeOf(values: SimpleRangeValue): RangeNode | undefined {
  const {range, dependencyGraph} = insidesOfRange(values)
  return range && dependencyGraph?.getRange(range.start, range.end)
}
