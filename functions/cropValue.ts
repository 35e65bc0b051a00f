import type {Limits, Unit} from "./quantity"
import type {Tag} from "./sources"

/** A biological constant of a model: its default, and where that is from. */
export interface CropValue {
  readonly value: number
  readonly label: string
  readonly unit: Unit
  readonly limits: Limits
  /** The range it is likely to lie in, where one is published or known of the kind. */
  readonly likely?: readonly [number, number]
  readonly tag: Tag
  /** Where the default is from, or why it was chosen. */
  readonly from: string
}
