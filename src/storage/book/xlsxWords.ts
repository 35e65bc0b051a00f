import {LIMITS} from "./limits"
import {readXml} from "./xml"

/** The words that cells share, in the order of their numbers, without how they are spoken. */
export function wordsIn(bytes: Uint8Array | null): readonly string[] {
  const found: string[] = []
  if (!bytes) return found
  let words = ""
  let within = 0
  let isReading = false
  readXml(bytes, {
    open(element) {
      if (element === "si") words = ""
      if (element === "rPh") within++
      isReading = element === "t" && within === 0
    },
    words(text) {
      if (isReading && words.length < LIMITS.text) words += text
    },
    close(element) {
      if (element === "rPh") within--
      if (element === "si") found.push(plainWords(words))
      isReading = false
    },
  })
  return found
}

/** Words without what the form writes for characters that XML cannot hold: "_x000A_". */
export const plainWords = (text: string) =>
  text
    .slice(0, LIMITS.text)
    .replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) => String.fromCharCode(parseInt(code, 16)))
