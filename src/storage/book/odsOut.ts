import {isoOf} from "../../../functions/calendar"
import {sheetText} from "../../workbook/formula"
import {
  CHARACTER,
  isError,
  type Book,
  type BookCell,
  type BookNote,
  type BookRule,
  type BookSheet,
  type Look,
} from "./book"
import {odsRules} from "./odsRules"
import {toOpenFormula} from "./openFormula"
import {XML_HEAD, xmlAttribute, xmlText} from "./xml"
import {zipOf} from "./zip"

const MIME = "application/vnd.oasis.opendocument.spreadsheet"
const NAMESPACES = [
  ...["office", "table", "text", "style", "meta"].map(
    (name) => `xmlns:${name}="urn:oasis:names:tc:opendocument:xmlns:${name}:1.0"`,
  ),
  'xmlns:number="urn:oasis:names:tc:opendocument:xmlns:datastyle:1.0"',
  'xmlns:fo="urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0"',
  'xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2"',
  'xmlns:dc="http://purl.org/dc/elements/1.1/"',
  'office:version="1.2"',
].join(" ")

/** A book as a file of ISO/IEC 26300 (OpenDocument 1.2), formulas in OpenFormula with the values they had here. */
export function writeOds(book: Book, on: Date): Uint8Array {
  return zipOf(
    {
      mimetype: MIME,
      "content.xml": contentPart(book),
      "styles.xml": `${XML_HEAD}<office:document-styles ${NAMESPACES}/>`,
      "meta.xml": metaPart(book, on),
      "META-INF/manifest.xml": manifest(["content.xml", "styles.xml", "meta.xml"]),
    },
    on,
    ["mimetype"], // first and not packed, so that the file is known by its beginning (OpenDocument 1.2, part 3, 3.3)
  )
}

const manifest = (parts: readonly string[]) =>
  `${XML_HEAD}<manifest:manifest xmlns:manifest="urn:oasis:names:tc:opendocument:xmlns:manifest:1.0" manifest:version="1.2"><manifest:file-entry manifest:full-path="/" manifest:version="1.2" manifest:media-type="${MIME}"/>${parts
    .map((name) => `<manifest:file-entry manifest:full-path="${name}" manifest:media-type="text/xml"/>`)
    .join("")}</manifest:manifest>`

const metaPart = ({title, subject, about}: Book, on: Date) =>
  `${XML_HEAD}<office:document-meta ${NAMESPACES}><office:meta><meta:generator>Fernledger</meta:generator><dc:title>${xmlText(title)}</dc:title><dc:subject>${xmlText(subject)}</dc:subject><dc:description>${xmlText(about)}</dc:description><meta:creation-date>${on.toISOString().slice(0, 19)}</meta:creation-date></office:meta></office:document-meta>`

function contentPart({sheets, names}: Book): string {
  const looks = new Set([BLANK])
  const widths = new Set<number>()
  for (const sheet of sheets) {
    for (const width of sheet.widths) if (width !== null) widths.add(width)
    for (const row of sheet.rows) for (const cell of row) if (cell) looks.add(styleName(cell))
  }
  const styles =
    [...widths]
      .map(
        (width) =>
          `<style:style style:name="w${width}" style:family="table-column"><style:table-column-properties style:column-width="${(width * CHARACTER).toFixed(2)}mm"/></style:style>`,
      )
      .join("") + [...looks].map(stylePart).join("")
  const ranges = names.flatMap(({name, formula}) => {
    const address = /^of:=\[(.*)\]$/.exec(toOpenFormula(formula))?.[1]
    const base = sheets[0] ? `$${quoted(sheets[0].name)}.$A$1` : ""
    return address === undefined
      ? []
      : [
          `<table:named-range table:name="${xmlAttribute(name)}" table:base-cell-address="${xmlAttribute(base)}" table:cell-range-address="${xmlAttribute(address)}"/>`,
        ]
  })
  const named = ranges.length ? `<table:named-expressions>${ranges.join("")}</table:named-expressions>` : ""
  const rules = odsRules(sheets)
  const tables = sheets.map((sheet) => tablePart(sheet, rules.nameOf))
  return `${XML_HEAD}<office:document-content ${NAMESPACES}><office:automatic-styles>${styles}</office:automatic-styles><office:body><office:spreadsheet>${rules.part}${tables.join("")}${named}</office:spreadsheet></office:body></office:document-content>`
}

const quoted = (sheet: string) => sheetText(sheet).replace(/^(?!')(.*)$/, "'$1'")

/** The style of what holds nothing yet: a guarded sheet lets it be typed into. Without a style of its own it would be locked. */
const BLANK = "plain-open"

const styleName = ({look, isLocked}: BookCell) =>
  `${typeof look === "number" ? `n${look}` : look}-${isLocked ? "locked" : "open"}`

function stylePart(name: string): string {
  const [written = "", lock] = name.split("-")
  const look: Look = /^n\d$/.test(written) ? (Number(written[1]) as Look) : (written as Look)
  const format = formatPart(look, `f-${name}`)
  const properties = `<style:table-cell-properties style:cell-protect="${lock === "locked" ? "protected" : "none"}"${look === "heading" || look === "words" ? ' fo:wrap-option="wrap"' : ""}/>`
  const bold = look === "heading" ? '<style:text-properties fo:font-weight="bold"/>' : ""
  return `${format}<style:style style:name="${name}" style:family="table-cell"${format ? ` style:data-style-name="f-${name}"` : ""}>${properties}${bold}</style:style>`
}

const percentDecimals = (look: "share" | "rate") => (look === "rate" ? 2 : 0)

function formatPart(look: Look, name: string): string {
  const number = (decimals: number) =>
    `<number:number number:decimal-places="${decimals}" number:min-integer-digits="1" number:grouping="true"/>`
  const space = "<number:text> </number:text>"
  if (typeof look === "number")
    return `<number:number-style style:name="${name}">${number(look)}</number:number-style>`
  if (look === "share" || look === "rate")
    return `<number:percentage-style style:name="${name}">${number(percentDecimals(look))}<number:text>%</number:text></number:percentage-style>`
  if (look === "date" || look === "day")
    return `<number:date-style style:name="${name}"><number:day/>${space}<number:month number:textual="true"/>${look === "date" ? `${space}<number:year number:style="long"/>` : ""}</number:date-style>`
  if (look === "words" || look === "text")
    return `<number:text-style style:name="${name}"><number:text-content/></number:text-style>`
  return ""
}

function tablePart(
  {name, widths, rows, keeps, isGuarded, rules}: BookSheet,
  nameOf: (rule: BookRule) => string,
): string {
  const width = Math.max(1, ...rows.map((row) => row.length))
  const columns = Array.from({length: width}, (_, i) => {
    const known = widths[i] ?? null
    return `<table:table-column${known === null ? "" : ` table:style-name="w${known}"`} table:default-cell-style-name="${BLANK}"/>`
  })
  const follows = Array.from({length: width}, (_, col) => {
    const rule = rules[col]
    return rule ? ` table:content-validation-name="${nameOf(rule)}"` : ""
  })
  const lines = rows.map((row, r) => {
    const cells = follows.map((rule, col) => cellPart(row[col] ?? null, r < keeps.rows ? "" : rule))
    return `<table:table-row>${cells.join("")}</table:table-row>`
  })
  const kept = (list: readonly string[], count: number, head: string) =>
    count ? `<${head}>${list.slice(0, count).join("")}</${head}>${list.slice(count).join("")}` : list.join("")
  return `<table:table table:name="${xmlAttribute(name)}"${isGuarded ? ' table:protected="true"' : ""}>${kept(columns, Math.min(keeps.columns, width), "table:table-header-columns")}${kept(lines, Math.min(keeps.rows, lines.length), "table:table-header-rows")}</table:table>`
}

function cellPart(cell: BookCell | null, rule: string): string {
  if (!cell) return `<table:table-cell${rule}/>`
  const {value, formula, look, note} = cell
  const f = formula === null ? "" : ` table:formula="${xmlAttribute(toOpenFormula(formula))}"`
  const {attributes, words} = valuePart(value, look)
  return `<table:table-cell table:style-name="${styleName(cell)}"${rule}${f}${attributes}>${note ? notePart(note) : ""}${words}</table:table-cell>`
}

function valuePart(value: BookCell["value"], look: Look): {attributes: string; words: string} {
  const typed = (type: string, attribute: string, written: string, words = written) => ({
    attributes: ` office:value-type="${type}" office:${attribute}="${xmlAttribute(written)}"`,
    words: paragraphs(words),
  })
  if (value === null) return {attributes: "", words: ""}
  if (isError(value)) return typed("string", "string-value", value.error) // OpenFormula: an error is stored as words
  if (typeof value === "string") return {attributes: ' office:value-type="string"', words: paragraphs(value)}
  if (typeof value === "boolean")
    return typed("boolean", "boolean-value", String(value), value ? "TRUE" : "FALSE")
  if (look === "share" || look === "rate")
    return typed("percentage", "value", String(value), `${(value * 100).toFixed(percentDecimals(look))}%`)
  const isDay = (look === "date" || look === "day") && Number.isInteger(value)
  return isDay ? typed("date", "date-value", isoOf(value)) : typed("float", "value", String(value))
}

/** Lines as paragraphs; spaces that XML would swallow, and tabs, by elements of their own. */
const paragraphs = (words: string) =>
  words
    .split("\n")
    .map((line) => {
      const spaced = xmlText(line)
        .replaceAll("\t", "<text:tab/>")
        .replace(/^ +| {2,}| +$/g, (spaces) => `<text:s text:c="${spaces.length}"/>`)
      return `<text:p>${spaced}</text:p>`
    })
    .join("")

const notePart = ({text, by, written}: BookNote) =>
  `<office:annotation>${by ? `<dc:creator>${xmlText(by)}</dc:creator>` : ""}${written === null ? "" : `<dc:date>${xmlText(written)}</dc:date>`}${paragraphs(text)}</office:annotation>`
