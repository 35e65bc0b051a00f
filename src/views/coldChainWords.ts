import {dayText, shownIn} from "../editor/display"
import type {ColdChain} from "../workbook/coldChain"
import type {Region} from "../workbook/document"
import {weightText} from "./pictures/calendarWords"

/** What the log of loads says: how many waited too long, and what the sun took. */
export function loadsWords({loads, late, lost, worth}: ColdChain, region: Region): string {
  if (loads === 0) return "No load is logged: how long the crop waits for the cold is not known."
  const hours = shownIn("h", region)
  const which = late.map(({planting, day, wait}) =>
    [planting, ...(day === null ? [] : [dayText(day)]), `${hours.text(wait, 1)} h`].join(" "),
  )
  const waited =
    late.length === 0
      ? `${loads === 1 ? "The one load logged did not wait" : `None of ${loads} loads logged waited`} too long for the cold`
      : `${late.length} of ${loads} loads logged waited too long for the cold: ${which.join("; ")}`
  const money = shownIn("money", region)
  const sun =
    lost > 0
      ? ` The sun took ${weightText(lost, region)}${worth > 0 ? `, worth ${money.text(worth, 0)} ${money.unit}` : ""}.`
      : ""
  return `${waited}.${sun}`
}

/** How the store keeps what is packed: how long, how full, and what it breathes. */
export function storeWords({store}: ColdChain, region: Region): string {
  if (store === null)
    return "How long packed crop stays in the store is not typed (Hold_days on Named values)."
  const {days, temperature, keeps, fullest, warns} = store
  const [cold, heat] = [shownIn("°C", region), shownIn("kW", region)]
  const stays =
    `Packed crop stays ${days} ${days === 1 ? "day" : "days"} at ${cold.text(temperature, 0)} ${cold.unit}` +
    (keeps === null ? "." : `, where it keeps about ${Math.floor(keeps)}.`)
  const full = fullest
    ? ` Fullest on ${dayText(fullest.day)}: ${weightText(fullest.kg, region)}, breathing ${heat.text(fullest.breathing, 1)} kW, which the load does not count.`
    : ""
  return `${stays}${full}${warns ? ` It is ${warns}.` : ""}`
}
