import type {Document, Region} from "../workbook/document"
import type {Edit} from "../workbook/edit"
import {regionOf} from "../workbook/region"
import {dateText} from "./display"
import type {TwoDays} from "./entry"
import type {Question, Store} from "./store"

/**
 * The question which day a date such as 3/4 is. The workbook keeps the answer, so it is asked once; `again` then reads
 * anew what was typed or pasted.
 */
export function whichDay(
  document: Document,
  {written, dayFirst, monthFirst}: TwoDays,
  again: (store: Store) => void,
): Question {
  const keeping = (dates: Region["dates"]): Edit => ({
    type: "setRegion",
    region: {...regionOf(document), ...(dates && {dates})},
  })
  return {
    asks: `Is “${written}” ${dateText(dayFirst)} or ${dateText(monthFirst)}? The workbook keeps the answer for other dates; “Region and units” changes it.`,
    rather: {words: dateText(dayFirst), edit: keeping("day first")},
    yes: dateText(monthFirst),
    edit: keeping("month first"),
    again,
  }
}
