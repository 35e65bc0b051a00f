import {columnWith, sheetWith} from "../document"
import {keyOfRow} from "../trace"
import {numberNamed} from "../names"
import type {Checked} from "./checked"
import type {Finding} from "./finding"

/**
 * Chosen: longer than from the end of the fern to an opening, and shorter than from one opening to the next, so that a sample
 * that is older was dug before the last season. The named value Sample_oldest stands instead of it where there is one.
 */
const OLDEST_DAYS = 300

/** Root samples that are older than that at the opening; without an opening, on the day the plan stands on. */
export function oldSamples(checked: Checked): Finding[] {
  const {document, workbook, words} = checked
  const sheet = sheetWith(document, "sampled on")
  if (sheet < 0) return []
  const oldest = numberNamed(checked.workbook, "Sample_oldest") ?? OLDEST_DAYS
  const [sampled, opens] = [columnWith(document, sheet, "sampled on"), columnWith(document, sheet, "opens")]
  return document.sheets[sheet]!.rows.flatMap((_, row): Finding[] => {
    const day = (col: number) => {
      const value = col < 0 ? null : workbook.valueAt({sheet, row, col})
      return typeof value === "number" ? value : null
    }
    const on = day(sampled)
    const opening = day(opens)
    const until = opening ?? numberNamed(checked.workbook, "As_of")
    if (on === null || until === null || until - on <= oldest) return []
    const at = {sheet, row, col: sampled}
    const when = opening === null ? "by now" : "at its opening"
    const days = Math.round(until - on)
    const season = days > OLDEST_DAYS ? ", so that a season lies between" : ""
    const sentence = `The samples of ${keyOfRow(document, at)}, ${words.shown(at, on)}, are ${days} days old ${when}: more than ${oldest}${season}`
    return [{rule: "old sample", cells: [at], sentence}]
  })
}
