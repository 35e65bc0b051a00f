/** What may come next in a JSON text, and what it takes to go on from there. */
type Awaited = "value" | "value or ]" | "key" | "key or }" | "colon" | "comma or end"

const SPACE = /[ \t\n\r]*/y
const SCALAR = /-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?(?:[eE][-+]?[0-9]+)?|true|false|null/y
/** A string without its last quotation mark, so that a bad character in it is found where it stands. */
const STRING = /"[ !#-[\]-\uffff]*(?:\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})[ !#-[\]-\uffff]*)*/y
const QUOTE = /"/y

/** The place where a text stops being JSON (RFC 8259), counted from 0; its length when it breaks off there, or is whole. */
export function whereJsonStops(text: string): number {
  const closers: string[] = []
  let awaited: Awaited = "value"
  let at = 0
  const take = (pattern: RegExp) => {
    pattern.lastIndex = at
    const found = pattern.exec(text)?.[0]
    at += found?.length ?? 0
    return found !== undefined
  }
  const takeSign = (sign: string | undefined) => {
    if (sign === undefined || text[at] !== sign) return false
    at++
    return true
  }
  const takeString = () => take(STRING) && take(QUOTE)
  const open = (closer: string, next: Awaited): Awaited => {
    closers.push(closer)
    return next
  }
  const close = (): Awaited => {
    closers.pop()
    return "comma or end"
  }
  const next = (): Awaited | null => {
    switch (awaited) {
      case "value or ]":
        if (takeSign("]")) return close()
      // falls through
      case "value":
        if (takeSign("[")) return open("]", "value or ]")
        if (takeSign("{")) return open("}", "key or }")
        return take(SCALAR) || takeString() ? "comma or end" : null
      case "key or }":
        if (takeSign("}")) return close()
      // falls through
      case "key":
        return takeString() ? "colon" : null
      case "colon":
        return takeSign(":") ? "value" : null
      case "comma or end":
        if (takeSign(closers.at(-1))) return close()
        return closers.length && takeSign(",") ? (closers.at(-1) === "]" ? "value" : "key") : null
    }
  }
  for (let found: Awaited | null = awaited; found !== null; found = next()) {
    awaited = found
    take(SPACE)
  }
  return at
}
