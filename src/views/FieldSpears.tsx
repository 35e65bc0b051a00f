import {useState} from "react"
import {shownIn} from "../editor/display"
import {addSpears, spearsCounted, spearSizes, spearSizeText, type SpearCounts} from "../editor/field"
import type {Store} from "../editor/store"
import {namesIn} from "../workbook/names"
import {regionOf} from "../workbook/region"
import type {FieldJob} from "./fieldJob"

const KEPT = "fernledger.spears" // a count in hand outlives a locked screen

/** The diameters of spears, a tap for each. */
export function FieldSpears({store, planting, day, onAdd}: FieldJob) {
  const [taps, setTaps] = useState<readonly number[]>(keptTaps)
  const counts = countsOf(taps)
  const limit = spearLimit(store)
  const region = regionOf(store.getState().document)
  const {unit, text} = shownIn("mm", region)
  const {count, mean, thinner} = spearsCounted(counts, limit)
  const change = (next: readonly number[]) => {
    setTaps(next)
    localStorage.setItem(KEPT, JSON.stringify(next))
  }
  return (
    <>
      <p className="field-sums" aria-live="polite">
        <span>
          <b>{count}</b> spears
        </span>
        <span>
          <b>{mean === null ? "\u2013" : text(mean, 1)}</b> {unit} mean
        </span>
        {limit !== null && (
          <span>
            <b>{thinner}</b> under {text(limit)} {unit}
          </span>
        )}
      </p>
      <div className="field-sizes" role="group" aria-label={`Tap the diameter of each spear, ${unit}`}>
        {spearSizes(region).map((size) => (
          <button
            key={size}
            className={limit !== null && size < limit ? "thin" : ""}
            aria-label={`${spearSizeText(size, region)} ${unit}, ${counts[size] ?? 0} counted`}
            onClick={() => change([...taps, size])}
          >
            {spearSizeText(size, region)}
            <span className="tally">{tally(counts[size] ?? 0)}</span>
          </button>
        ))}
      </div>
      <div className="field-keep">
        <div className="field-added">
          <span>
            {taps.length
              ? `Last: ${spearSizeText(taps.at(-1)!, region)} ${unit}`
              : "Measure at the butt, culls included"}
          </span>
          <button disabled={taps.length === 0} onClick={() => change(taps.slice(0, -1))}>
            Take back one
          </button>
        </div>
        <button
          className="chief field-do"
          disabled={count === 0}
          onClick={() => {
            onAdd((mark) => addSpears(planting.name, day, counts, mark))
            change([])
          }}
        >
          Keep this count
        </button>
      </div>
    </>
  )
}

/** Strokes in fives, as on paper; a number where they would not fit. */
function tally(count: number): string {
  if (count === 0) return ""
  if (count > 14) return `\u00d7 ${count}`
  const fives = Array.from({length: Math.floor(count / 5)}, () => "||||\u0338")
  return [...fives, "|".repeat(count % 5)].join(" ")
}

function countsOf(taps: readonly number[]): SpearCounts {
  const counts: Record<number, number> = {}
  for (const size of taps) counts[size] = (counts[size] ?? 0) + 1
  return counts
}

/** The diameters that were tapped, mm, in their order. */
function keptTaps(): readonly number[] {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEPT) ?? "[]")
    return Array.isArray(kept) ? kept.filter((one) => typeof one === "number") : []
  } catch {
    return []
  }
}

function spearLimit({workbook}: Store): number | null {
  const at = namesIn(workbook.document).find(({name}) => name.toLowerCase() === "spear_limit")?.at
  const value = at ? workbook.valueAt(at) : null
  return typeof value === "number" ? value : null
}
