import type {Column} from "../../workbook/document"
import type {BookRule, OutForm} from "./book"

/** Characters of all words of a list in .xlsx; the limit is widely stated. */
const LONGEST_LIST = 255

const holdsDays = (format: Column["format"]) => format === "date" || format === "day"

/** What stops an entry in a column, as a file can say it; null where there is nothing of the kind, or the form has no way for it. */
export function bookRule({rule, format}: Pick<Column, "rule" | "format">, form: OutForm): BookRule | null {
  const {least = null, most = null, words} = rule ?? {}
  if (words) {
    const fits = words.every((word) => !word.includes(",")) && words.join().length <= LONGEST_LIST
    return form === "ods" || fits ? {words} : null
  }
  return least === null && most === null ? null : {least, most, isDay: holdsDays(format)}
}

/** The rule of a column by what a file says; null where nothing could be typed by it, or it means days and the column does not. */
export function columnRule(rule: BookRule, format: Column["format"]): NonNullable<Column["rule"]> | null {
  if ("words" in rule) {
    const words = [...new Set(rule.words.map((word) => word.trim()).filter(Boolean))]
    return words.length ? {words} : null
  }
  const {least, most, isDay} = rule
  if (isDay !== holdsDays(format) || (least !== null && most !== null && least > most)) return null
  return {...(least === null ? {} : {least}), ...(most === null ? {} : {most})}
}
