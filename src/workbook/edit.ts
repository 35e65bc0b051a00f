import type {CellAddress, Content} from "./document"

/** One change a planner makes. Plain data, so it can be saved, logged and replayed in a test. */
export type Edit =
  | {
      readonly type: "enter"
      readonly cells: readonly Entry[]
      /** What the act is called in the history, where the cells alone do not say it. */
      readonly name?: string
    }
  | {readonly type: "insertRows"; readonly sheet: number; readonly before: number; readonly count: number}
  | {readonly type: "removeRows"; readonly sheet: number; readonly first: number; readonly count: number}

/** New content of one cell. A row below the last one is added, with the formulas of its worked-out columns. */
export interface Entry {
  readonly at: CellAddress
  readonly content: Content
}
