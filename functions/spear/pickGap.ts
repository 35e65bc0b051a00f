import {valuesOf} from "../cropValues"
import {defineFunction, type Refusal} from "../define"
import {outOfRange} from "../refusal"
import {daysBetween, meanTemperature, type Stretch} from "./growth"

/** The shortest spear that is cut and the longest that can still be sold, cm. */
export interface CutLengths {
  readonly Cut_shortest: number
  readonly Cut_longest: number
}

/**
 * Days between pickings in which a spear just too short to cut grows to the longest that sells:
 * ln(Cut_longest/Cut_shortest)/r. Not rounded. Refuses a longest that is not above the shortest; at the base
 * temperature and below no spear ever outgrows (#N/A).
 */
export function pickGap(temperature: number, values: Stretch & CutLengths): number | Refusal {
  const {Cut_shortest, Cut_longest} = values
  if (Cut_longest <= Cut_shortest)
    return outOfRange(`Cut_longest (${Cut_longest} cm) must be above Cut_shortest (${Cut_shortest} cm)`)
  return daysBetween(Cut_shortest, Cut_longest, temperature, values)
}

export const SPEAR_PICK_GAP = defineFunction({
  name: "SPEAR.PICK_GAP",
  summary: "Days between pickings so that no spear outgrows the longest length",
  about:
    "The time from the shortest spear that is cut to the longest that sells. Below 1 a field wants picking every day or " +
    "more often. Late in the season tips open on shorter spears: lower Cut_longest then. Rounded up to whole days a few " +
    "spears may outgrow.",
  parameters: {
    temperature: meanTemperature,
    values: valuesOf("Stretch_rate", "Stretch_base", "Cut_shortest", "Cut_longest"),
  },
  returns: {label: "Days between pickings", unit: "days"},
  refuses: ["Cut_longest at or below Cut_shortest", "a temperature at or below Stretch_base"],
  sources: ["planning", "krarup2002"],
  example: {formula: "=SPEAR.PICK_GAP(15)", gives: 1.26},
  calculate: ({temperature, values}) => pickGap(temperature, values),
})
