import {expect, it} from "vitest"
import {keepingWords, type KeepingState} from "../../src/storage/keepingWords"

const now = new Date(2026, 4, 25, 14, 2)
const start: KeepingState = {
  found: null,
  wasCutOff: false,
  saving: null,
  place: "leads",
  isLasting: undefined,
  copies: null,
  isKeptFirst: false,
  hasNewer: false,
}
const words = (told: Partial<KeepingState>) => keepingWords({...start, ...told}, now)
const saved = {kind: "saved", at: now} as const
const found = (savedAt: Date) => ({document: {} as never, savedAt, notice: null})

it.each<[Partial<KeepingState>, string]>([
  [{}, "Nothing changed yet"],
  [{saving: {kind: "saving"}}, "Saving…"],
  [{saving: saved}, "Saved on this device 14:02"],
  [{found: found(now)}, "As saved on this device 14:02"],
  [{found: found(new Date(2026, 4, 25, 14, 1, 31)), wasCutOff: true}, "Recovered to 14:01:31"],
  [{found: found(new Date(2026, 4, 24, 9, 5)), wasCutOff: true}, "Recovered to 24 May 2026 09:05:00"],
  [{found: found(now), wasCutOff: true, saving: saved}, "Saved on this device 14:02"],
  [{found: found(new Date(2026, 4, 24, 9, 5))}, "As saved on this device 24 May 2026 09:05"],
  [
    {found: {refused: "This browser offers no storage"}},
    "Not saved: this browser offers no storage. Keep a file copy",
  ],
  [{saving: {kind: "not saved", reason: "storage is full"}}, "Not saved: storage is full. Keep a file copy"],
])("says of %j: %s", (told, sentence) => expect(words(told)).toBe(sentence))

it("says what the browser answered when it was asked to keep the storage", () => {
  const told = (isLasting: boolean | null) => words({saving: saved, isLasting})
  expect(told(true)).toBe("Saved on this device 14:02. The browser keeps it until you clear it")
  expect(told(false)).toBe(
    "Saved on this device 14:02. The browser may clear it, as private windows do: keep a file copy too",
  )
  expect(told(null)).toBe(
    "Saved on this device 14:02. This browser does not say how long it keeps it: keep a file copy too",
  )
})

it("reminds of a file copy once a week has passed without one", () => {
  const ago = (days: number) => new Date(now.getTime() - days * 86_400_000)
  const told = (copies: KeepingState["copies"], more: Partial<KeepingState> = {}) =>
    words({saving: saved, isLasting: true, copies, ...more}).replace("Saved on this device 14:02. ", "")
  const without = "The browser keeps it until you clear it"
  expect(told({last: ago(6.9)})).toBe(without)
  expect(told({last: ago(7)})).toBe(`${without}. The last file copy is 7 days old: keep another`)
  expect(told({noneSince: ago(6.9)})).toBe(without)
  expect(told({noneSince: ago(30)})).toBe(`${without}. No file copy was kept in 30 days: keep one`)
  expect(told({last: ago(9)}, {isLasting: false})).toBe(
    "The browser may clear it, as private windows do. The last file copy is 9 days old: keep another",
  )
  // Nothing has changed since the last copy.
  const unchanged = words({found: found(ago(10)), isLasting: true, copies: {last: ago(9)}})
  expect(unchanged).toBe(`As saved on this device 15 May 2026 14:02. ${without}`)
})

it("does not speak of keeping what is not saved", () => {
  expect(words({isLasting: true})).toBe("Nothing changed yet")
  expect(words({isLasting: false, saving: {kind: "not saved", reason: "storage is full"}})).toBe(
    "Not saved: storage is full. Keep a file copy",
  )
})

it("says at once, before anything was changed, that another tab saves", () => {
  expect(words({found: found(now), place: "follows"})).toBe(
    "Not saved: another tab shows this workbook and saves it: go on there, or close it",
  )
  expect(words({saving: saved, isLasting: true, place: "behind"})).toBe(
    "Not saved: another tab has changed this workbook: load this page again, or keep a file copy of what is here",
  )
})

it("tells once that the planner works offline from now on", () => {
  expect(words({isKeptFirst: true})).toBe(
    "Nothing changed yet. Works offline: the planner starts without a network from now on",
  )
})

it("tells of a newer version beside the state", () => {
  expect(words({saving: saved, hasNewer: true})).toBe(
    "Saved on this device 14:02. A newer version of the planner is ready: close the planner everywhere and open it again to take it",
  )
})
