import type {Document} from "../../workbook/document"
import {cellsWith, notesIn} from "../../workbook/extras"
import {namesIn} from "../../workbook/names"
import type {OutForm} from "./book"
import {bookRule} from "./bookRule"
import {LIMITS} from "./limits"

/**
 * What this workbook has and its copy for another program has not, in sentences without a full stop. What the workbook lacks
 * itself is not told.
 */
export function leftBehind(document: Document, form: OutForm, holds: "formulas" | "values"): string[] {
  const {sheets, cases = [], field = [], region, reading, copy} = document
  const columns = sheets.flatMap((sheet) => sheet.columns)
  const rowless = sheets.filter(({rows}) => rows.length === 0).flatMap((sheet) => sheet.columns)
  const unheld = rowless.filter(({formula}) => formula !== undefined).length
  const count = (is: (column: (typeof columns)[number]) => boolean) => columns.filter(is).length
  const said =
    count(({about}) => about !== undefined) + sheets.filter(({about}) => about !== undefined).length
  const limits = count(({rule}) => rule !== undefined)
  const asked = count(({rule}) => rule?.usual !== undefined || rule?.nearOthers !== undefined)
  const listed = count((column) => column.rule?.words !== undefined && !bookRule(column, form))
  const kinds = count(({kind}) => kind === "measured" || kind === "carried over")
  const notes = notesIn(document)
  const settled = notes.filter(({found}) => found.settled).length
  const compared = cellsWith(document, (extra) => extra.compared).length
  const names = namesIn(document).length
  const texts = [...sheets.flatMap(({rows}) => rows.flat()), ...notes.map(({found}) => found.text)]
  const long = texts.filter((text) => typeof text === "string" && text.length > LIMITS.text).length
  const isEach = sheets.some(({rowEach, rowsFor}) => rowEach ?? rowsFor)
  const left: [boolean | number, string][] = [
    [holds === "values", "Formulas are in it in words alone"],
    [
      holds === "formulas" && unheld,
      `What ${counted(unheld, "column")} of sheets without rows would work out is not in it`,
    ],
    [holds === "values" && names, `Names of values are in it as words alone: ${names}`],
    [
      holds === "formulas" && count(({total}) => total !== undefined),
      "The totals under the columns are not in it",
    ],
    [
      count(({part}) => part !== undefined),
      "What columns stand for in the plan and its pictures is not in it",
    ],
    [
      holds === "values" && limits,
      `The limits on what is typed into ${counted(limits, "column")} are not in it`,
    ],
    [
      holds === "formulas" && asked,
      `What is questioned when it is typed into ${counted(asked, "column")} is not in it`,
    ],
    [
      holds === "formulas" && listed,
      `The words that ${counted(listed, "column")} may hold are not in it: they are too long for a list there, or have commas`,
    ],
    [
      holds === "formulas" && form === "ods" && limits,
      "Limits on what is typed into rows that are added there are not in it",
    ],
    [kinds, `That ${counted(kinds, "column")} hold what is measured or carried over is not in it`],
    [said, `What is said of ${counted(said, "sheet or column", "sheets and columns")} is not in it`],
    [new Set(sheets.map(({group}) => group)).size > 1, "The groups of the sheets are not in it"],
    [isEach, "Which sheets have a row for each planting is not in it"],
    [cases.length, `What changes in ${counted(cases.length, "case")} is not in it: ${cases.join(", ")}`],
    [compared, "By which cells cases are compared is not in it"],
    [settled, `Which notes are settled is not in it: ${settled} of ${notes.length}`],
    [form === "xlsx" && notes.length, "When notes were written is not in it"],
    [
      field.length,
      `The list of ${counted(field.length, "act")} of the field is not in it, with devices and times; what they entered is`,
    ],
    [
      holds === "formulas" && region !== undefined,
      "How numbers are shown here is not in it: there they are metric",
    ],
    [reading !== undefined, "That it is a reading copy is not in it, nor the digest"],
    [copy !== undefined, "Which file copies it goes back to is not in it"],
    [long, `${counted(long, "text is", "texts are")} cut after ${LIMITS.text} characters`],
    [true, "Versions stay on this device"],
  ]
  return left.flatMap(([isLeft, sentence]) => (isLeft ? [sentence] : []))
}

const counted = (count: number, one: string, several = `${one}s`) => `${count} ${count === 1 ? one : several}`
