import {samplesShare} from "../../functions/root/samplesShare"
import {cropValues} from "../../functions/cropValues"
import {isRefusal} from "../../functions/refusal"
import type {HowSure} from "./howSure"

type Ranked = Pick<HowSure, "pickedFrom">

/** "own record 31 %, root mass 22 %, warmth of the year 14 %": the inputs that spread the crop most. */
export const widthFrom = ({pickedFrom}: Ranked, most = 4): string =>
  pickedFrom
    .slice(0, most)
    .filter(({share}) => share >= 0.01)
    .map(({name, share}) => `${nameOf(name)} ${Math.round(100 * share)} %`)
    .join(", ")

/** What would narrow the range most: the first of the ranked inputs that can be measured. */
export function measureNext({pickedFrom}: Ranked, sugarError: number, plantsSampled: number): string {
  const first = pickedFrom.find(({name, share}) => share >= 0.01 && !WEATHER.has(name))
  if (!first) return "Nothing: what is left is the year's weather."
  if (first.name === "sugar of the root sample") return sampleMore(sugarError, plantsSampled)
  if (first.name === "root mass") return "Dig and weigh more plants: the root mass rests on few."
  if (first.name === "own record") return "Another year of this planting's own crop, opening and close."
  if (first.name === "end of the fern") return "Write down when the fern browns."
  return `Your own figure for ${nameOf(first.name)}, from a trial or your records.`
}

const WEATHER: ReadonlySet<string> = new Set(["warmth of the year", "sun of the year"])

const nameOf = (name: string) =>
  Object.hasOwn(cropValues, name) ? name.replaceAll("_", " ").toLowerCase() : name

function sampleMore(error: number, plants: number): string {
  const half = error / 2
  // samplesShare gives the plants for a margin at a confidence; 0.6827 makes the margin one standard error.
  const wanted = samplesShare(half, 0.2, 0.06, 1, 0.6827)
  return isRefusal(wanted)
    ? "Sample more plants for sugar."
    : `Sample ${Math.max(0, wanted - plants)} more plants for sugar: the error of the mean falls from ${percent(error)} to about ${percent(half)} %.`
}

const percent = (share: number) => (100 * share).toFixed(1)
