import type {Comparing} from "./insides"

/** Whether the engine could read a word as a date or a time. */
export const mayBeDate = (word: string) => /^[\s\d/.:-]/.test(word)

/** What may hold an accent: letters without one are most. */
export const HAS_ACCENTS = /[^\x20-\x7e]/

/**
 * Words are compared as words at once where one of them can be no date. The engine would first try to read both as dates, by
 * each form in turn, for every row that asks whether a cell is blank; and it would look for accents where there can be none.
 */
export function compareWordsAtOnce(comparing: Comparing) {
  const {compare, stringCmp, normalizeString} = comparing
  if (normalizeString)
    comparing.normalizeString = function (word) {
      return HAS_ACCENTS.test(word) ? normalizeString.call(this, word) : word.toLowerCase()
    }
  if (!compare || !stringCmp) return
  comparing.compare = function (left, right) {
    if (typeof left !== "string" || typeof right !== "string") return compare.call(this, left, right)
    if (left === right) return 0
    return mayBeDate(left) && mayBeDate(right)
      ? compare.call(this, left, right)
      : stringCmp.call(this, left, right)
  }
}
