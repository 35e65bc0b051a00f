import {columnWith, sheetWith, withSheet, type Document, type Sheet} from "./document"

/**
 * The columns of weights by size are headed by the size classes, the first by the first: where the classes were changed by an
 * edit, their headings follow. A column whose class is gone says so.
 */
export function withClassHeadings(before: Document, after: Document): Document {
  const sheet = sheetWith(after, "size class")
  if (sheet < 0 || after.sheets[sheet] === before.sheets[sheet]) return after
  const col = columnWith(after, sheet, "size class")
  const classes = after.sheets[sheet]!.rows.map((row) => String(row[col] ?? "").trim())
  return after.sheets.reduce((next, one, index) => {
    const columns = headed(one, classes)
    return columns === one.columns ? next : withSheet(next, index, {columns})
  }, after)
}

function headed({columns}: Sheet, classes: readonly string[]): Sheet["columns"] {
  const others = new Set(
    columns.flatMap(({part, heading}) => (part === "in size" ? [] : [heading.toLowerCase()])),
  )
  let place = 0
  let isSame = true
  const next = columns.map((column) => {
    if (column.part !== "in size") return column
    const named = classes[place++] || `no class ${place}`
    const free = others.has(named.toLowerCase()) ? `${named}, class ${place}` : named
    others.add(free.toLowerCase())
    if (free === column.heading) return column
    isSame = false
    return {...column, heading: free}
  })
  return isSame ? columns : next
}
