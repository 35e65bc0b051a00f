import type {Content} from "../document"
import {cellsOfSheets, wordsIn, type Checked} from "./checked"
import type {Finding} from "./finding"

/** Texts that read as numbers where a number is meant. What is plain can be put right; a comma may mean two things. */
export function textNumbers({document, words}: Checked): Finding[] {
  const found: Finding[] = []
  const texts = cellsOfSheets(document, ({format, kind, unit}, {names}, col) => {
    const meansNumber = typeof format === "number" || format === "share" || (unit !== undefined && !format)
    const namesValue = names === true && col === 1
    return kind !== "worked out" && (meansNumber || namesValue) ? readsAsNumber : null
  })
  for (const {at, content} of texts) {
    const plain = String(content)
      .trim()
      .replace(/^[\u2212]/, "-")
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

const readsAsNumber = (content: Content) => {
  const text = wordsIn(content)
  return text !== null && LIKE_A_NUMBER.test(text)
}

const LIKE_A_NUMBER = /^\s*[-+\u2212]?[0-9][0-9\s\u202f\u00a0'’.,]*%?\s*$/
