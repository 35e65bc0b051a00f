import {columnLetters, referenceOf} from "../../workbook/formula"
import {columnEnd, type BookRule, type BookSheet} from "./book"
import {LIMITS} from "./limits"
import {limitIn, OTHER_RULES, WHOLE_NUMBERS} from "./reading"
import {xmlText} from "./xml"

/** The rules for entry of a sheet, each for its column below the heading (ECMA-376, 18.3.1.33). */
export function xlsxRules({rules, rows}: Pick<BookSheet, "rules" | "rows">): string {
  const last = columnEnd(rows.length) + 1
  const written = rules.flatMap((rule, col) => {
    const letters = columnLetters(col)
    return rule ? [rulePart(rule, `${letters}2:${letters}${last}`)] : []
  })
  return written.length
    ? `<dataValidations count="${written.length}">${written.join("")}</dataValidations>`
    : ""
}

function rulePart(rule: BookRule, cells: string): string {
  const part = (kind: string, ...formulas: (number | string)[]) =>
    `<dataValidation ${kind} allowBlank="1" showErrorMessage="1" sqref="${cells}">${formulas
      .map((formula, i) => `<formula${i + 1}>${xmlText(String(formula))}</formula${i + 1}>`)
      .join("")}</dataValidation>`
  if ("words" in rule) return part('type="list"', `"${rule.words.join().replaceAll('"', '""')}"`)
  const {least, most, isDay} = rule
  const type = `type="${isDay ? "date" : "decimal"}"`
  if (least !== null && most !== null) return part(`${type} operator="between"`, least, most)
  return least === null
    ? part(`${type} operator="lessThanOrEqual"`, most!)
    : part(`${type} operator="greaterThanOrEqual"`, least)
}

interface Written {
  readonly type: string
  readonly operator: string
  /** Whether it stops an entry, and does not merely warn of it or offer words. */
  readonly stops: boolean
  readonly cells: string
  readonly formulas: [string, string]
}

/** Reads the rules for entry of a sheet while its part is read; when the rows are known, `of` tells those of whole columns. */
export function xlsxRulesReader() {
  const read: Written[] = []
  let within: 0 | 1 | null = null
  let hasMore = false
  return {
    open(element: string, attribute: (name: string) => string | null) {
      if (element === "formula1" || element === "formula2") within = element === "formula1" ? 0 : 1
      if (element !== "dataValidation") return
      hasMore ||= read.length >= LIMITS.columns
      if (hasMore) return
      read.push({
        type: attribute("type") ?? "none",
        operator: attribute("operator") ?? "between",
        stops:
          /^(1|true)$/.test(attribute("showErrorMessage") ?? "") &&
          (attribute("errorStyle") ?? "stop") === "stop",
        cells: attribute("sqref") ?? "",
        formulas: ["", ""],
      })
    },
    words(text: string) {
      const rule = read.at(-1)
      if (within === null || !rule || hasMore) return
      if (rule.formulas[within].length <= LIMITS.text) rule.formulas[within] += text
    },
    close(element: string) {
      if (element === "formula1" || element === "formula2") within = null
    },
    /** The rules by column, and in words what of them is left out. Days are counted from `zero` days after 1899-12-30. */
    of(rows: readonly (readonly unknown[])[], zero: number) {
      const lasts: number[] = []
      for (const [row, cells] of rows.entries()) cells.forEach((cell, col) => cell && (lasts[col] = row))
      const rules: (BookRule | null)[] = []
      const left = new Set(hasMore ? [OTHER_RULES] : [])
      for (const one of read) {
        const rule = ruleIn(one, zero)
        const columns = rule && wholeColumns(one.cells, lasts)
        if (!columns) left.add(OTHER_RULES)
        else if (one.type === "whole") left.add(WHOLE_NUMBERS)
        for (const col of columns ?? []) rules[col] = rule
      }
      return {rules, left}
    },
  }
}

function ruleIn({type, operator, stops, formulas: [first, second]}: Written, zero: number): BookRule | null {
  if (!stops) return null
  if (type === "list") {
    const list = /^"((?:[^"]|"")*)"$/.exec(first.trim())?.[1]
    return list === undefined ? null : {words: list.replaceAll('""', '"').split(",")}
  }
  if (type !== "decimal" && type !== "whole" && type !== "date") return null
  const isDay = type === "date"
  const [one, other] = [first, second].map((text) => {
    const limit = limitIn(text)
    return limit !== null && isDay ? limit + zero : limit
  }) as [number | null, number | null]
  if (one === null || (operator === "between" && other === null)) return null
  if (operator === "between") return {least: one, most: other, isDay}
  if (operator === "greaterThanOrEqual") return {least: one, most: null, isDay}
  return operator === "lessThanOrEqual" ? {least: null, most: one, isDay} : null
}

const RANGE = /^[A-Z]{1,3}[1-9]\d{0,6}(:[A-Z]{1,3}[1-9]\d{0,6})?$/i

/** The columns of ranges that each reach from the first or second row to the last that holds something; null for other ranges. */
function wholeColumns(ranges: string, lasts: readonly number[]): readonly number[] | null {
  const columns: number[] = []
  const listed = ranges.split(" ")
  if (listed.length > LIMITS.columns) return null
  for (const range of listed) {
    if (!RANGE.test(range)) return null
    const {from, to} = referenceOf(range)
    if (from.row! > 1) return null
    for (let col = from.col!; col <= Math.min(to.col!, LIMITS.columns - 1); col++) {
      if (to.row! < (lasts[col] ?? 0)) return null
      columns.push(col)
    }
  }
  return columns
}
