import {defineFunction} from "../define"
import {quantity} from "../parameters"

/** What piece pay lacks of the legal minimum for the hours worked, money; 0 when it reaches it. */
export const topUp = (kg: number, piece: number, hours: number, minimum: number): number =>
  Math.max(0, hours * minimum - kg * piece)

export const CREW_TOP_UP = defineFunction({
  name: "CREW.TOP_UP",
  summary: "What piece pay lacks of the legal minimum for the hours worked",
  about:
    "A general guide: which hours count, by what time the sum is drawn (shift, week, season) and what else is due stands in " +
    "your local labour code. Work it out for each person and pay period; over a whole crew the fast would hide the slow.",
  parameters: {
    kg: quantity("Weight picked", "kg", {min: 0}),
    piece: quantity("Piece pay", "money/kg", {min: 0}),
    hours: quantity("Hours worked", "h", {min: 0}),
    minimum: quantity("Legal minimum for an hour", "money/h", {min: 0}),
  },
  returns: {label: "Top-up due", unit: "money"},
  sources: ["identity"],
  example: {formula: "=CREW.TOP_UP(200,0.60,9,14)", gives: 6},
  calculate: ({kg, piece, hours, minimum}) => topUp(kg, piece, hours, minimum),
})
