import type {Checked} from "./checked"
import type {Finding} from "./finding"

const STORES = new Set(["store at start", "store through the year"])

/** A store of sugar below zero: the balance has left what it can describe. */
export function negativeStores({document, workbook, words}: Checked): Finding[] {
  return document.sheets.flatMap(({columns, rows}, sheet) =>
    columns.flatMap(({part}, col) =>
      part === undefined || !STORES.has(part)
        ? []
        : [...rows.keys()].flatMap((row): Finding[] => {
            const at = {sheet, row, col}
            const value = workbook.valueAt(at)
            return typeof value === "number" && value < 0
              ? [
                  {
                    rule: "negative store",
                    cells: [at],
                    sentence: `${words.name(at)} is ${words.shown(at, value)}: there is no store below zero`,
                    alike: "are below zero, and there is no such store",
                  },
                ]
              : []
          }),
    ),
  )
}
