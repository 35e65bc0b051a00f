import type {CellAddress, Column, Content} from "./document"

/** One change a planner makes. Plain data, so it can be saved, logged and replayed in a test. */
export type Edit =
  | {
      readonly type: "enter"
      readonly cells: readonly Entry[]
      /** What the act is called where it changes several cells: "paste", "fill". */
      readonly as?: string
    }
  | {readonly type: "insertRows"; readonly sheet: number; readonly before: number; readonly count: number}
  | {readonly type: "removeRows"; readonly sheet: number; readonly first: number; readonly count: number}
  | {
      readonly type: "changeColumn"
      readonly sheet: number
      readonly col: number
      readonly change: ColumnChange
    }

/** What can be said anew of a column; `undefined` takes it away. Its formula and its part in the pictures stay. */
export type ColumnChange = Partial<Pick<Column, "heading" | "unit" | "format" | "width" | "rule" | "about">>

/** New content of one cell. A row below the last one is added, with the formulas of its worked-out columns. */
export interface Entry {
  readonly at: CellAddress
  readonly content: Content
}
