import {dayText, numberText, percentText, shownIn} from "../../editor/display"
import type {Region} from "../../workbook/document"
import type {PlantingSpears, SpearSizes} from "../../workbook/spears"

/** "9.5 mm"; in inches with the millimetres beside them. */
export function limitText(limit: number, region: Region) {
  const {unit, text} = shownIn("mm", region)
  const beside = unit === "mm" ? "" : ` (${numberText(limit, 1, region.decimal)}\u00a0mm)`
  return `${text(limit, 1)}\u00a0${unit}${beside}`
}

/** Whether the last mean lies under the limit, while no line says since when. */
const isUnder = ({lastDay, isExpected, days}: PlantingSpears, {limit}: SpearSizes) =>
  limit !== null && (lastDay === null || isExpected) && days.at(-1)!.mean < limit

/** The day on which the share of thin spears ends cutting, where it comes before that of the mean; null otherwise. */
const shareFirst = ({shareDay, lastDay}: PlantingSpears, {share, limit}: SpearSizes) =>
  shareDay === null || share === null || limit === null || (lastDay !== null && lastDay <= shareDay)
    ? null
    : {of: share, day: shareDay}

/** What the spears of one planting say, as the title of its picture. */
export function spearTitle(one: PlantingSpears, sizes: SpearSizes): string {
  const {planting, line, lastDay, isExpected, days} = one
  const {limit, asOf, region} = sizes
  if (isUnder(one, sizes))
    return `${planting} was under ${limitText(limit!, region)} on ${dayText(days.at(-1)!.day)}`
  const share = shareFirst(one, sizes)
  if (share !== null) {
    const has = asOf !== null && share.day < asOf ? "had" : "has"
    return `${planting} ${has} ${percentText(share.of, "needed", region.decimal)} under ${limitText(limit!, region)} about ${dayText(share.day)}`
  }
  if (isExpected && lastDay !== null)
    return `${planting} is expected at ${limitText(limit!, region)} about ${dayText(lastDay)}`
  if (!line) return `${planting}: one day measured`
  if (isExpected) return `${planting}: too few days for a line`
  if (lastDay !== null && limit !== null) {
    const meets = asOf !== null && lastDay < asOf ? "met" : "meets"
    return `${planting} ${meets} ${limitText(limit, region)} about ${dayText(lastDay)}`
  }
  if (line.slope < 0) return `${planting} is thinning`
  return `${planting} is not thinning`
}

/** "Mean 10.9 mm on 25 May, falling 0.11 mm a day; 9.5 mm about 7 Jun (80 %: 6 Jun to 8 Jun). On 25 May 33 % of the spears were under 9.5 mm." */
export function spearSentence(one: PlantingSpears, sizes: SpearSizes): string {
  const {limit, confidence, region} = sizes
  const {days, line, lastDay, isExpected, lastDays, spread} = one
  const {unit, text} = shownIn("mm", region)
  const {day, mean} = days.at(-1)!
  const now = `Mean ${text(mean, 1)}\u00a0${unit} on ${dayText(day)}`
  const thin = thinSentence(one, sizes)
  if (isExpected) {
    const meets =
      lastDay === null
        ? `they stay above ${limitText(limit!, region)}`
        : `${limitText(limit!, region)} about ${dayText(lastDay)}`
    return `${now}. A line is drawn from the third day on; till then spears are taken to thin as the season\u2019s are used up: ${meets}.${thin}`
  }
  if (!line) return `${now}; a line needs two different days.${thin}`
  const change = `${text(Math.abs(line.slope), 2)}\u00a0${unit} a day`
  const going =
    line.slope < 0 ? `, falling ${change}` : line.slope > 0 ? `, rising ${change}` : ", not changing"
  const sure = lastDays
    ? ` (${percentText(confidence, "needed", region.decimal)}: ${dayText(lastDays[0])} to ${dayText(lastDays[1])})`
    : spread
      ? ", but the line may as well not fall"
      : ", how sure is not known from two"
  const met =
    limit === null
      ? "no limit is set"
      : lastDay === null
        ? `the line does not meet ${limitText(limit, region)}`
        : `${limitText(limit, region)} about ${dayText(lastDay)}${sure}`
  return `${now}${going}; ${met}.${thin}`
}

/** " On 25 May 33 % of the spears were under 9.5 mm; 50 % about 18 Jun." of the last spears that were counted by size; "" without any. */
function thinSentence({days, shareDay}: PlantingSpears, {limit, share, region}: SpearSizes): string {
  const last = days.findLast(({under}) => under !== null)
  if (!last || limit === null) return ""
  const percent = (one: number) => percentText(one, "needed", region.decimal)
  const ahead =
    share === null
      ? ""
      : shareDay === null
        ? `; no line through the shares meets ${percent(share)}`
        : `; ${percent(share)} about ${dayText(shareDay)}`
  const had = `${percentText(last.under!, 0, region.decimal)} of the spears`
  return ` On ${dayText(last.day)} ${had} were under ${limitText(limit, region)}${ahead}.`
}

/** What the sheet found: a planting under the limit, or the one that meets it first, and how many of the others do. */
export function spearFinding(sizes: SpearSizes): string {
  const {plantings} = sizes
  const [under, ...alsoUnder] = plantings.filter((one) => isUnder(one, sizes))
  const meets = (one: PlantingSpears) => shareFirst(one, sizes)?.day ?? one.lastDay
  const meeting = plantings.filter((one) => meets(one) !== null).toSorted((a, b) => meets(a)! - meets(b)!)
  if (under) {
    const others = alsoUnder.length + meeting.length
    const also = others ? `; ${others} more ${others === 1 ? "is" : "are"} under it or will be` : ""
    return `${spearTitle(under, sizes)}${also}.`
  }
  if (meeting.length === 0)
    return plantings.length === 1
      ? `${spearTitle(plantings[0]!, sizes)}.`
      : `${plantings.length} plantings measured; no line of theirs meets the limit.`
  const others = meeting.length - 1
  const isTied = others > 0 && meets(meeting[1]!) === meets(meeting[0]!)
  const when = isTied ? (others === 1 ? "on the same day" : "then or later") : "later"
  const also = others ? `; ${others} more ${others === 1 ? "does" : "do"} ${when}` : ""
  return `${spearTitle(meeting[0]!, sizes)}${also}.`
}
