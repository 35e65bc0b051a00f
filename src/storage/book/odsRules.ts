import type {BookRule, BookSheet} from "./book"
import {LIMITS} from "./limits"
import {limitIn, OTHER_RULES, WHOLE_NUMBERS} from "./reading"
import {xmlAttribute} from "./xml"

/** The rules for entry of a book, each once, and the name by which cells point at it (OpenDocument 1.2, part 1, 9.4.5). */
export function odsRules(sheets: readonly BookSheet[]) {
  const names = new Map<string, string>()
  for (const {rules} of sheets)
    for (const rule of rules) {
      const condition = rule && conditionOf(rule)
      if (condition && !names.has(condition)) names.set(condition, `rule${names.size + 1}`)
    }
  const parts = [...names].map(
    ([condition, name]) =>
      `<table:content-validation table:name="${name}" table:condition="${xmlAttribute(condition)}" table:allow-empty-cell="true"><table:error-message table:message-type="stop" table:display="true"/></table:content-validation>`,
  )
  return {
    part: parts.length ? `<table:content-validations>${parts.join("")}</table:content-validations>` : "",
    nameOf: (rule: BookRule) => names.get(conditionOf(rule))!,
  }
}

function conditionOf(rule: BookRule): string {
  if ("words" in rule)
    return `of:cell-content-is-in-list(${rule.words.map((word) => `"${word.replaceAll('"', '""')}"`).join(";")})`
  const {least, most, isDay} = rule
  const within =
    least !== null && most !== null
      ? `cell-content-is-between(${least},${most})`
      : least === null
        ? `cell-content()<=${most}`
        : `cell-content()>=${least}`
  return `of:cell-content-is-${isDay ? "date" : "decimal-number"}() and ${within}`
}

/** Reads the rules for entry of a book, and of each sheet which columns follow one in all cells that hold something. */
export function odsRulesReader() {
  const conditions = new Map<string, string>()
  let name: string | null = null
  let followed: (string | null)[] = []
  let isMixed = false
  return {
    open(element: string, attribute: (name: string) => string | null) {
      if (element === "content-validation") {
        name = attribute("table:name")
        if (name !== null && conditions.size < LIMITS.columns)
          conditions.set(name, attribute("table:condition") ?? "")
      }
      if (element !== "error-message" || name === null) return
      // One that merely warns stops nothing.
      const warns = (attribute("table:message-type") ?? "stop") !== "stop"
      if (warns || attribute("table:display") === "false") conditions.delete(name)
    },
    /** Cells of a row below the first: those that hold nothing count only where they name a rule. */
    cells(from: number, count: number, rule: string | null, isBlank: boolean) {
      if (isBlank && rule === null) return
      for (let col = from; col < Math.min(from + count, LIMITS.columns); col++) {
        const before = followed[col]
        if (before !== undefined && before !== rule) isMixed = true
        followed[col] = before === undefined || before === rule ? rule : null
      }
    },
    /** The rules of the sheet that ends, by column, and in words what of them is left out. */
    ofSheet() {
      const left = new Set(isMixed ? [OTHER_RULES] : [])
      const rules = Array.from(followed, (name) => {
        if (!name) return null
        const found = ruleIn(conditions.get(name) ?? "")
        if (!found) left.add(OTHER_RULES)
        else if (found.isWhole) left.add(WHOLE_NUMBERS)
        return found && found.rule
      })
      followed = []
      isMixed = false
      return {rules, left}
    },
  }
}

const LIST = /^(?:[a-z]+:)?cell-content-is-in-list\((\s*"(?:[^"]|"")*"\s*(?:;\s*"(?:[^"]|"")*"\s*)*)\)$/
const LIMIT = /^(?:[a-z]+:)?cell-content-is-(whole-number|decimal-number|date)\(\)\s+and\s+(.*)$/

function ruleIn(condition: string): {rule: BookRule; isWhole: boolean} | null {
  const list = LIST.exec(condition)?.[1]
  if (list !== undefined) {
    const words = [...list.matchAll(/"((?:[^"]|"")*)"/g)].map(([, word]) => word!.replaceAll('""', '"'))
    return {rule: {words}, isWhole: false}
  }
  const [, kind, within = ""] = LIMIT.exec(condition) ?? []
  const [, from, to] = /^cell-content-is-between\(([^,()]+),([^,()]+)\)$/.exec(within) ?? []
  const [, sign, bound] = /^cell-content\(\)\s*([<>]=)(.*)$/.exec(within) ?? []
  const least = limitIn(from ?? (sign === ">=" ? bound : undefined))
  const most = limitIn(to ?? (sign === "<=" ? bound : undefined))
  const isRead = from === undefined ? (least ?? most) !== null : least !== null && most !== null
  return isRead ? {rule: {least, most, isDay: kind === "date"}, isWhole: kind === "whole-number"} : null
}
