import type {FieldPlanting} from "../editor/field"
import type {Command, Store} from "../editor/store"
import type {FieldMark} from "../workbook/fieldActs"

/** What each job of the field page is given. */
export interface FieldJob {
  store: Store
  planting: FieldPlanting
  day: string
  /** Runs the command with the mark of this moment. */
  onAdd: (command: (mark: FieldMark) => Command) => void
}
