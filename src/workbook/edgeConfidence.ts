import {numberNamed} from "./names"
import type {Workbook} from "./workbook"

/** The two-sided confidence of all intervals: Edge_confidence, or that of ROOT.EDGE where it is not a confidence. */
export function edgeConfidence(workbook: Workbook): number {
  const typed = numberNamed(workbook, "Edge_confidence")
  return typed !== null && typed > 0 && typed <= 0.9999 ? typed : 0.8
}
