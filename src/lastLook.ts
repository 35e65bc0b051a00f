import type {Look} from "./views/FirstLook"

/** The number goes up when a look changes its form: an older one is then not found. */
const KEY = "fernledger look 1"

/** The plan as it was last worked out on this device, or null where there is none or none can be kept. */
export function lastLook(): Look | null {
  try {
    const kept = localStorage.getItem(KEY)
    return kept === null ? null : (JSON.parse(kept) as Look)
  } catch {
    return null
  }
}

/** Keeps how the plan looks for the next start; a workbook without a plan, or a browser that keeps nothing, keeps none. */
export function keepLook(look: Look | null) {
  try {
    if (look) localStorage.setItem(KEY, JSON.stringify(look))
    else localStorage.removeItem(KEY)
  } catch {
    // The next start shows the demonstration's plan for a moment, then the workbook.
  }
}
