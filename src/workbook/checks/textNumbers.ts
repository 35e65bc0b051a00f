import {contentAt} from "../document"
import {cellsOfSheets, wordsIn, type Checked} from "./checked"
import type {Finding} from "./finding"

/** Texts that read as numbers where a number is meant. What is plain can be put right; a comma may mean two things. */
export function textNumbers({document, words}: Checked): Finding[] {
  const found: Finding[] = []
  for (const {at, sheet} of cellsOfSheets(document)) {
    const {format, kind, unit} = sheet.columns[at.col]!
    const meansNumber = typeof format === "number" || format === "share" || (unit !== undefined && !format)
    const namesValue = sheet.names === true && at.col === 1
    const content = wordsIn(contentAt(document, at))
    if (kind === "worked out" || !(meansNumber || namesValue)) continue
    if (content === null || !LIKE_A_NUMBER.test(content)) continue
    const plain = content.trim().replace(/^[\u2212]/, "-")
    const isPlain = /^-?[0-9]+(\.[0-9]+)?$/.test(plain)
    found.push({
      rule: "number as text",
      cells: [at],
      sentence: `${words.name(at)}: “${content}” is text, a number is needed${isPlain ? "" : "; a decimal point and no other signs make it one"}`,
      alike: "are text where a number is needed",
      ...(isPlain && {
        fix: {
          words: `Read it as ${plain.replace("-", "\u2212")}`,
          edit: {type: "enter", cells: [{at, content: Number(plain)}]} as const,
        },
      }),
    })
  }
  return found
}

const LIKE_A_NUMBER = /^\s*[-+\u2212]?[0-9][0-9\s\u202f\u00a0'’.,]*%?\s*$/
