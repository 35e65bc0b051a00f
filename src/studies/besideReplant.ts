import type {ReplantField, Replanting} from "../workbook/replant"
import type {PlantingWeeks} from "./bestWeeks"
import {followsCrop} from "./replantWhatIf"
import {nearSeasons, nearWords, spanWords} from "./weeksStudy"

/**
 * Where the sheet Replant would clear a planting in other years than this study, a sentence that says why and which of the two
 * to go by; null where their spans of years meet, or Replant does not weigh it.
 */
export function besideReplant(
  one: PlantingWeeks,
  replanting: Replanting | null,
  season: number,
  little: number,
): string | null {
  const field = replanting?.fields.find(({field}) => field === one.planting)
  if (!replanting || !field || field.seasons.length === 0) return null
  if (field.lease !== null)
    return `${one.planting}: this study knows nothing of the end of its lease. Go by the sheet Replant for when to clear it.`
  const [least, most] = nearSeasons(one, little)
  const isOpen = field.keepMost === field.seasons.length
  const studyIsOpen = most === one.keep.length - 1
  if ((least <= field.keepMost || isOpen) && (field.keepLeast <= most || studyIsOpen)) return null
  const replant = spanWords(field.keepLeast, field.keepMost, isOpen, field.first)
  return (
    `${one.planting}: the sheet Replant clears it ${afterWords(replant)}, this study ${afterWords(nearWords(one, season, little))}. ` +
    `${whyApart(replanting, field)} Go by Replant for when to clear it, and by this study for how long to cut.`
  )
}

const afterWords = (span: string) => (span.startsWith("now") ? span : `after ${span}`)

const whyApart = (replanting: Replanting, field: ReplantField) =>
  followsCrop(replanting, field)
    ? "The study also counts a chance of loss, a longer last season, and what other weeks than those of the table bring."
    : "Replant has net cash that was typed, the study the crop that the farm's record foretells."
