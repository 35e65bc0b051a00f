import {dateWords, isoSecond, isoTime} from "../workbook/clock"
import type {SavingState} from "./autosave"
import type {Found, Refused} from "./deviceStore"
import {isRefused} from "./deviceStore"
import {WHY_NOT, type Place} from "./lead"

/** All that decides what is said about the keeping of the workbook. */
export interface KeepingState {
  /** What was found at the start: it counts until something is saved. */
  readonly found: Found | Refused | null
  /** The page that saved what was found was killed, or crashed. */
  readonly wasCutOff: boolean
  readonly saving: SavingState | null
  readonly place: Place
  /** Whether the browser said it will keep the storage; null where it cannot be asked, undefined before it was. */
  readonly isLasting: boolean | null | undefined
  /** When a file copy was last kept, or since when the workbook is kept without one; null before that is known. */
  readonly copies: {readonly last: Date} | {readonly noneSince: Date} | null
  /** The program was kept for the first time, for starts without a network. */
  readonly isKeptFirst: boolean
  /** A newer version of the program waits for the next start. */
  readonly hasNewer: boolean
}

/** How the workbook is kept, in words without a full stop at the end. */
export function keepingWords(state: KeepingState, now: Date): string {
  const program = state.hasNewer ? NEWER : state.isKeptFirst ? OFFLINE : ""
  return [savingWords(state, now), lastingWords(state, now), program].filter(Boolean).join(". ")
}

const OFFLINE = "Works offline: the planner starts without a network from now on"
const NEWER =
  "A newer version of the planner is ready: close the planner everywhere and open it again to take it"

function savingWords({found, wasCutOff, saving, place}: KeepingState, now: Date): string {
  if (place !== "leads") return `Not saved: ${lowered(WHY_NOT[place])}`
  if (saving?.kind === "saving") return "Saving…"
  if (saving?.kind === "saved") return `Saved on this device ${isoTime(saving.at)}`
  if (saving) return `Not saved: ${saving.reason}`
  if (found === null) return "Nothing changed yet"
  if (isRefused(found)) return `Not saved: ${lowered(found.refused)}`
  const day = found.savedAt.toDateString() === now.toDateString() ? "" : `${dateWords(found.savedAt)} `
  return wasCutOff
    ? `Recovered to ${day}${isoSecond(found.savedAt)}`
    : `As saved on this device ${day}${isoTime(found.savedAt)}`
}

/** How long what is saved stays, or what to do with what is not. */
function lastingWords(state: KeepingState, now: Date): string {
  const {found, saving, place, isLasting} = state
  if (place !== "leads") return ""
  const isRefusedSaving = saving ? saving.kind === "not saved" : isRefused(found)
  if (isRefusedSaving) return "Keep a file copy"
  const isSaved = saving ? saving.kind === "saved" : found !== null
  if (!isSaved || isLasting === undefined) return ""
  const due = copyDue(state, now)
  const advice = due ? `. ${due}` : isLasting ? "" : ": keep a file copy too"
  return `${HOW_LONG[`${isLasting}`]}${advice}`
}

const HOW_LONG = {
  true: "The browser keeps it until you clear it",
  false: "The browser may clear it, as private windows do",
  null: "This browser does not say how long it keeps it",
} as const

const WEEK = 7
const DAY = 86_400_000

/** Reminds of a file copy each week that the workbook goes on without one; "" before that. */
function copyDue({copies, saving, found}: KeepingState, now: Date): string {
  if (copies === null) return ""
  const from = "last" in copies ? copies.last : copies.noneSince
  const changed = saving?.kind === "saved" ? saving.at : isRefused(found) ? null : found?.savedAt
  const days = Math.floor((now.getTime() - from.getTime()) / DAY)
  if (days < WEEK || !changed || changed <= from) return ""
  return "last" in copies
    ? `The last file copy is ${days} days old: keep another`
    : `No file copy was kept in ${days} days: keep one`
}

const lowered = (sentence: string) => sentence.replace(/^./, (letter) => letter.toLowerCase())
