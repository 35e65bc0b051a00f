import {LIMITS, Unreadable} from "./limits"

/** What is told while a text of XML is read, in its order. */
export interface XmlReader {
  /** An element begins; its name is without prefix, and attributes are asked for as they are written. */
  open?(name: string, attribute: (name: string) => string | null): void
  close?(name: string): void
  /** Words between tags, their entities read. */
  words?(text: string): void
}

const TAG = /<(\/?)([^\s/<>="']+)((?:\s+[^\s=/<>"']+\s*=\s*(?:"[^"<]*"|'[^'<]*'))*)\s*(\/?)>/y

/**
 * Reads XML (W3C, 1.0) from its first tag to its last. Of entities only the five of XML itself and characters by number are
 * known; a document type, which could bring others or point elsewhere, is refused.
 */
export function readXml(bytes: Uint8Array, {open, close, words}: XmlReader): void {
  const text = decoded(bytes)
  const within: string[] = []
  let at = 0
  const tell = (end: number) => {
    if (words && within.length && end > at) words(withEntities(text.slice(at, end)))
  }
  for (;;) {
    const next = text.indexOf("<", at)
    if (next < 0) break
    tell(next)
    if (text.startsWith("<?", next)) at = after("?>", next)
    else if (text.startsWith("<!--", next)) at = after("-->", next)
    else if (text.startsWith("<![CDATA[", next)) {
      at = after("]]>", next)
      if (within.length) words?.(text.slice(next + 9, at - 3))
    } else if (text.startsWith("<!", next))
      throw new Unreadable("It holds a document type, which a workbook has no use for")
    else at = tag(next)
  }
  if (within.length || at === 0) throw new Unreadable("Its text breaks off")

  function after(sign: string, from: number): number {
    const found = text.indexOf(sign, from)
    if (found < 0) throw new Unreadable("Its text breaks off")
    return found + sign.length
  }

  function tag(from: number): number {
    const piece = text.slice(from, from + LIMITS.tag)
    TAG.lastIndex = 0
    const found = TAG.exec(piece)
    if (!found) throw new Unreadable("One of its tags cannot be read")
    const [whole, closes, written, attributes, isEmpty] = found as unknown as [
      string,
      string,
      string,
      string,
      string,
    ]
    const name = written.slice(written.indexOf(":") + 1)
    if (closes) {
      if (within.pop() !== written) throw new Unreadable("Its tags do not close in their order")
      close?.(name)
    } else {
      open?.(name, (asked) => attributeIn(attributes, asked))
      if (isEmpty) close?.(name)
      else if (within.push(written) > LIMITS.depth)
        throw new Unreadable(`More than ${LIMITS.depth} of its elements lie within each other`)
    }
    return from + whole.length
  }
}

function attributeIn(attributes: string, name: string): string | null {
  for (const [, one, double, single] of attributes.matchAll(/([^\s=]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g))
    if (one === name) return withEntities(double ?? single!)
  return null
}

/** UTF-8, or UTF-16 by its byte-order mark. */
function decoded(bytes: Uint8Array): string {
  const mark = bytes.length < 2 ? 0 : bytes[0]! * 256 + bytes[1]!
  const encoding = mark === 0xfffe ? "utf-16le" : mark === 0xfeff ? "utf-16be" : "utf-8"
  try {
    return new TextDecoder(encoding, {fatal: true}).decode(bytes)
  } catch {
    throw new Unreadable("Its letters are neither UTF-8 nor UTF-16")
  }
}

const NAMED: Readonly<Record<string, string>> = {lt: "<", gt: ">", amp: "&", quot: '"', apos: "'"}

function withEntities(text: string): string {
  if (!text.includes("&")) return text
  return text.replace(
    /&(?:#x([0-9a-fA-F]{1,6})|#([0-9]{1,7})|(lt|gt|amp|quot|apos));/g,
    (whole, hex, digits, name) => {
      if (name) return NAMED[name]!
      const point = hex ? parseInt(hex, 16) : Number(digits)
      return point <= 0x10ffff ? String.fromCodePoint(point) : whole
    },
  )
}

/** Signs that XML 1.0 cannot hold in any way. */
// oxlint-disable-next-line no-control-regex
export const NO_XML = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g

/** A text as it stands in XML, in an element or an attribute. */
export const xmlText = (text: string) =>
  text
    .replace(NO_XML, "")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    .replaceAll("\r", "&#13;")

/** As `xmlText`, for an attribute, where line ends would become spaces. */
export const xmlAttribute = (text: string) => xmlText(text).replaceAll("\n", "&#10;").replaceAll("\t", "&#9;")

export const XML_HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'
