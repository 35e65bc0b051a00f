import {CHARACTER, type Look} from "./book"

interface StyleState {
  name: string
  kind: string
  decimals: number
  hasYear: boolean
}

/** Reads the formats of a part, which style of cells has which, and how wide the styles of columns are, in characters. */
export function stylesReader(looks: Map<string, Look>, formats = new Map<string, Look>()) {
  let style: StyleState | null = null
  let column = ""
  const widths = new Map<string, number>()
  return {
    widths,
    open(element: string, attribute: (name: string) => string | null) {
      if (/^(number|percentage|date|text|currency|time|boolean)-style$/.test(element))
        style = {name: attribute("style:name") ?? "", kind: element, decimals: -1, hasYear: false}
      if (style && element === "number") style.decimals = Number(attribute("number:decimal-places") ?? -1)
      if (style && element === "year") style.hasYear = true
      if (element === "style" && attribute("style:family") === "table-column")
        column = attribute("style:name") ?? ""
      if (element === "table-column-properties") {
        const width = inMillimetres(attribute("style:column-width") ?? "")
        if (width !== null && column) widths.set(column, Math.round((width / CHARACTER) * 10) / 10)
      }
      if (element === "style" && attribute("style:family") === "table-cell") {
        const look = formats.get(attribute("style:data-style-name") ?? "")
        const own = look ?? looks.get(attribute("style:parent-style-name") ?? "")
        if (own !== undefined) looks.set(attribute("style:name") ?? "", own)
      }
    },
    close(element: string) {
      if (!style || element !== style.kind) return
      const look = lookOf(style)
      if (look !== null) formats.set(style.name, look)
      style = null
    },
  }
}

/** Lengths as OpenDocument writes them; null for one that relates to another, or none. */
function inMillimetres(length: string): number | null {
  const found = /^(\d+(?:\.\d+)?)(mm|cm|in|pt)$/.exec(length)
  return (
    found &&
    Number(found[1]) * {mm: 1, cm: 10, in: 25.4, pt: 25.4 / 72}[found[2] as "mm" | "cm" | "in" | "pt"]
  )
}

function lookOf({kind, decimals, hasYear}: StyleState): Look | null {
  if (kind === "percentage-style") return "share"
  if (kind === "date-style") return hasYear ? "date" : "day"
  if (kind === "text-style") return "words"
  const isNumber = kind === "number-style" || kind === "currency-style"
  return isNumber && decimals >= 0 ? (Math.min(9, Math.floor(decimals)) as Look) : null
}
