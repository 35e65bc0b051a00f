import {dayOf, isoOf} from "../../../functions/calendar"
import type {Column, Content} from "../document"
import {numberNamed} from "../names"
import {cellsOfSheets, isDateFormat, type Checked} from "./checked"
import type {Finding} from "./finding"

/** Chosen: a season and what is planned for it lie within this many days of the day on which the plan stands. */
const SEASON_DAYS = 200

/**
 * Typed dates outside the season: in a column that shows days without their year, where a slip in the year is not
 * seen, and measurements dated after the day on which the plan stands.
 */
export function dates(checked: Checked): Finding[] {
  const {document, words} = checked
  const asOf = numberNamed(checked.workbook, "As_of")
  if (asOf === null) return []
  const season = numberNamed(checked.workbook, "Season") ?? yearOf(asOf)
  const outside = ({format, kind}: Column, day: number): Pick<Finding, "sentence" | "alike"> | null => {
    if (format === "day" && yearOf(day) !== season && Math.abs(day - asOf) > SEASON_DAYS)
      return {sentence: `not in season ${season}`, alike: `are dated outside season ${season}`}
    return kind === "measured" && day > asOf
      ? {
          sentence: "after As_of, the day on which the plan stands",
          alike: "are dated after As_of, the day on which the plan stands",
        }
      : null
  }
  const isText = (content: Content) => typeof content === "string"
  const cells = cellsOfSheets(document, ({format}) => (isDateFormat(format) ? isText : null))
  return [...cells].flatMap(({at, column, content}): Finding[] => {
    const day = dayOf(String(content))
    const found = day === null ? null : outside(column, day)
    if (!found) return []
    const sentence = `${words.name(at)} is ${words.shown(at, day)}, ${found.sentence}`
    return [{...found, rule: "date outside the season", cells: [at], sentence}]
  })
}

const yearOf = (day: number) => Number(isoOf(day).slice(0, 4))
