import {cellText, columnLetters, sheetText} from "../../workbook/formula"
import {isError, type Book, type BookCell, type BookSheet, type Look} from "./book"
import {namedForXlsx} from "./formulaNames"
import {NO_XML, XML_HEAD, xmlAttribute, xmlText} from "./xml"
import {xlsxRules} from "./xlsxRules"
import {zipOf} from "./zip"

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
const RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
const PACKAGE = "http://schemas.openxmlformats.org/package/2006"
const TYPES = "application/vnd.openxmlformats-officedocument.spreadsheetml"

/** A book as a file of ECMA-376 (transitional). Formulas carry the values they had here; dates are days from 1899-12-30. */
export function writeXlsx(book: Book, on: Date): Uint8Array {
  const looks = looksOf(book)
  const noted = book.sheets.map(({rows}) => rows.some((row) => row.some((cell) => cell?.note)))
  const parts: Record<string, string> = {
    "[Content_Types].xml": contentTypes(noted),
    "_rels/.rels": relations([
      [`${RELATIONS}/officeDocument`, "xl/workbook.xml"],
      [`${PACKAGE}/relationships/metadata/core-properties`, "docProps/core.xml"],
      [`${RELATIONS}/extended-properties`, "docProps/app.xml"],
    ]),
    "docProps/core.xml": coreProperties(book, on),
    "docProps/app.xml": `${XML_HEAD}<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties"><Application>Fernledger</Application></Properties>`,
    "xl/workbook.xml": workbookPart(book),
    "xl/_rels/workbook.xml.rels": relations([
      ...book.sheets.map((_, i) => [`${RELATIONS}/worksheet`, `worksheets/sheet${i + 1}.xml`] as const),
      [`${RELATIONS}/styles`, "styles.xml"],
    ]),
    "xl/styles.xml": stylesPart(looks),
  }
  for (const [i, sheet] of book.sheets.entries()) {
    parts[`xl/worksheets/sheet${i + 1}.xml`] = sheetPart(sheet, looks, noted[i]!)
    if (!noted[i]) continue
    parts[`xl/worksheets/_rels/sheet${i + 1}.xml.rels`] = relations([
      [`${RELATIONS}/comments`, `../comments${i + 1}.xml`],
      [`${RELATIONS}/vmlDrawing`, `../drawings/notes${i + 1}.vml`],
    ])
    parts[`xl/comments${i + 1}.xml`] = commentsPart(sheet)
    parts[`xl/drawings/notes${i + 1}.vml`] = noteFrames(sheet)
  }
  return zipOf(parts, on)
}

/** A look with and without a lock, in the order of the styles of the file; the first is that of blank cells. */
type Looks = ReadonlyMap<string, number>
const lookKey = (look: Look, isLocked: boolean) => `${look}/${isLocked}`

function looksOf({sheets}: Book): Looks {
  const looks = new Map([[lookKey("plain", false), 0]])
  for (const {rows} of sheets)
    for (const row of rows)
      for (const cell of row) {
        const key = cell && lookKey(cell.look, cell.isLocked)
        if (key && !looks.has(key)) looks.set(key, looks.size)
      }
  return looks
}

const xml = (text: string) => XML_HEAD + text

const relations = (targets: readonly (readonly [type: string, target: string])[]) =>
  xml(
    `<Relationships xmlns="${PACKAGE}/relationships">${targets
      .map(([type, target], i) => `<Relationship Id="rId${i + 1}" Type="${type}" Target="${target}"/>`)
      .join("")}</Relationships>`,
  )

function contentTypes(noted: readonly boolean[]): string {
  const part = (name: string, type: string) => `<Override PartName="/${name}" ContentType="${type}"/>`
  return xml(
    `<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Default Extension="vml" ContentType="application/vnd.openxmlformats-officedocument.vmlDrawing"/>` +
      part("xl/workbook.xml", `${TYPES}.sheet.main+xml`) +
      part("xl/styles.xml", `${TYPES}.styles+xml`) +
      part("docProps/core.xml", "application/vnd.openxmlformats-package.core-properties+xml") +
      part("docProps/app.xml", "application/vnd.openxmlformats-officedocument.extended-properties+xml") +
      noted
        .map(
          (hasNotes, i) =>
            part(`xl/worksheets/sheet${i + 1}.xml`, `${TYPES}.worksheet+xml`) +
            (hasNotes ? part(`xl/comments${i + 1}.xml`, `${TYPES}.comments+xml`) : ""),
        )
        .join("") +
      "</Types>",
  )
}

const coreProperties = ({title, subject, about}: Book, on: Date) =>
  xml(
    `<cp:coreProperties xmlns:cp="${PACKAGE}/metadata/core-properties" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:dcterms="http://purl.org/dc/terms/" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance"><dc:title>${xmlText(title)}</dc:title><dc:subject>${xmlText(subject)}</dc:subject><dc:description>${xmlText(about)}</dc:description><dcterms:created xsi:type="dcterms:W3CDTF">${on.toISOString().slice(0, 19)}Z</dcterms:created></cp:coreProperties>`,
  )

function workbookPart({sheets, names}: Book): string {
  const titles = sheets.flatMap(({name, keeps}, i) =>
    keeps.rows
      ? [
          `<definedName name="_xlnm.Print_Titles" localSheetId="${i}">${xmlText(`${sheetText(name)}!$1:$${keeps.rows}`)}</definedName>`,
        ]
      : [],
  )
  const defined = names.map(
    ({name, formula}) =>
      `<definedName name="${xmlAttribute(name)}">${xmlText(namedForXlsx(formula).slice(1))}</definedName>`,
  )
  return xml(
    `<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><workbookPr date1904="0"/><sheets>${sheets
      .map(({name}, i) => `<sheet name="${xmlAttribute(name)}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`)
      .join("")}</sheets><definedNames>${[...titles, ...defined].join("")}</definedNames></workbook>`,
  )
}

/** The code of a look that the form has no number for. */
function formatCode(look: Look): string {
  if (typeof look === "number") return `#,##0${look ? `.${"0".repeat(look)}` : ""}`
  return {
    plain: "General",
    heading: "General",
    words: "@",
    text: "@",
    date: "d mmm yyyy",
    day: "d mmm",
    share: "0%",
    rate: "0.00%",
  }[look]
}

function stylesPart(looks: Looks): string {
  const codes = [...new Set([...looks.keys()].map((key) => formatCode(lookIn(key))))]
  const id = (code: string) =>
    code === "General"
      ? 0
      : code === "@"
        ? 49
        : code === "0%"
          ? 9
          : code === "0.00%"
            ? 10
            : 164 + codes.indexOf(code)
  const own = codes.filter((code) => id(code) >= 164)
  const styles = [...looks.keys()].map((key) => {
    const look = lookIn(key)
    const head = look === "heading"
    const wraps = head || look === "words"
    return `<xf numFmtId="${id(formatCode(look))}" fontId="${head ? 1 : 0}" fillId="0" borderId="${head ? 1 : 0}" xfId="0" applyNumberFormat="1" applyFont="1" applyBorder="1" applyAlignment="1" applyProtection="1"><alignment vertical="top"${wraps ? ' wrapText="1"' : ""}/><protection locked="${key.endsWith("true") ? 1 : 0}"/></xf>`
  })
  return xml(
    `<styleSheet xmlns="${MAIN}"><numFmts count="${own.length}">${own
      .map((code) => `<numFmt numFmtId="${id(code)}" formatCode="${xmlAttribute(code)}"/>`)
      .join(
        "",
      )}</numFmts><fonts count="2"><font><sz val="11"/><name val="Arial"/></font><font><b/><sz val="11"/><name val="Arial"/></font></fonts><fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills><borders count="2"><border><left/><right/><top/><bottom/><diagonal/></border><border><left/><right/><top/><bottom style="thin"/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="${styles.length}">${styles.join("")}</cellXfs><cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>`.replace(
      '<numFmts count="0"></numFmts>',
      "",
    ),
  )
}

function lookIn(key: string): Look {
  const look = key.slice(0, key.indexOf("/"))
  return /^\d$/.test(look) ? (Number(look) as Look) : (look as Look)
}

function sheetPart(
  {widths, rows, keeps, isGuarded, rules}: BookSheet,
  looks: Looks,
  hasNotes: boolean,
): string {
  const width = Math.max(1, ...rows.map((row) => row.length))
  const area = `A1:${cellText(Math.max(0, rows.length - 1), width - 1)}`
  const columns = widths.map((one, i) =>
    one === null ? "" : `<col min="${i + 1}" max="${i + 1}" width="${one}" style="0" customWidth="1"/>`,
  )
  const cells = rows.map((row, r) => {
    const written = row.map((cell, c) => (cell ? cellPart(cell, r, c, looks) : "")).join("")
    return written && `<row r="${r + 1}">${written}</row>`
  })
  const guard = `<sheetProtection sheet="1" objects="0" scenarios="0" formatCells="0" formatColumns="0" formatRows="0" insertRows="0" sort="0" autoFilter="0"/>`
  return xml(
    `<worksheet xmlns="${MAIN}" xmlns:r="${RELATIONS}"><dimension ref="${area}"/><sheetViews><sheetView workbookViewId="0">${pane(keeps)}</sheetView></sheetViews>${
      columns.some(Boolean) ? `<cols>${columns.join("")}</cols>` : ""
    }<sheetData>${cells.join("")}</sheetData>${isGuarded ? guard : ""}${xlsxRules({rules, rows})}<pageSetup orientation="landscape" fitToHeight="0"/>${hasNotes ? '<legacyDrawing r:id="rId2"/>' : ""}</worksheet>`,
  )
}

function pane({rows, columns}: BookSheet["keeps"]): string {
  if (!rows && !columns) return ""
  const [x, y] = [columns ? ` xSplit="${columns}"` : "", rows ? ` ySplit="${rows}"` : ""]
  const active = columns ? (rows ? "bottomRight" : "topRight") : "bottomLeft"
  return `<pane${x}${y} topLeftCell="${columnLetters(columns)}${rows + 1}" activePane="${active}" state="frozen"/>`
}

/** What a program may find in a cell that could not be worked out. */
const ERRORS = new Set(["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A"])

function cellPart(
  {value, formula, look, isLocked}: BookCell,
  row: number,
  col: number,
  looks: Looks,
): string {
  const head = `<c r="${cellText(row, col)}" s="${looks.get(lookKey(look, isLocked))}"`
  const f = formula === null ? "" : `<f>${xmlText(namedForXlsx(formula).slice(1))}</f>`
  if (value === null) return f ? `${head}>${f}</c>` : `${head}/>`
  if (isError(value))
    return `${head} t="e">${f}<v>${ERRORS.has(value.error) ? value.error : "#VALUE!"}</v></c>`
  if (typeof value === "boolean") return `${head} t="b">${f}<v>${value ? 1 : 0}</v></c>`
  if (typeof value === "number") return `${head}>${f}<v>${value}</v></c>`
  if (f) return `${head} t="str">${f}<v>${xlsxText(value)}</v></c>`
  return `${head} t="inlineStr"><is><t xml:space="preserve">${xlsxText(value)}</t></is></c>`
}

/** Signs that XML cannot hold by their number, as "_x0007_"; words that look so already are marked (ECMA-376, 22.4.2.4). */
const xlsxText = (text: string) =>
  xmlText(
    text
      .replace(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_")
      .replace(NO_XML, (sign) => `_x${sign.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`),
  )

const notesOf = ({rows}: BookSheet) =>
  rows.flatMap((row, r) => row.flatMap((cell, c) => (cell?.note ? [{...cell.note, row: r, col: c}] : [])))

function commentsPart(sheet: BookSheet): string {
  const notes = notesOf(sheet)
  const authors = [...new Set(notes.map(({by}) => by))]
  const comments = notes.map(
    ({text, by, row, col}) =>
      `<comment ref="${cellText(row, col)}" authorId="${authors.indexOf(by)}"><text><r><t xml:space="preserve">${xlsxText(text)}</t></r></text></comment>`,
  )
  return xml(
    `<comments xmlns="${MAIN}"><authors>${authors.map((by) => `<author>${xlsxText(by)}</author>`).join("")}</authors><commentList>${comments.join("")}</commentList></comments>`,
  )
}

/** The frames in which notes are shown, which the form asks for beside their words (ECMA-376 part 4, VML). */
function noteFrames(sheet: BookSheet): string {
  const frames = notesOf(sheet).map(
    ({row, col}, i) =>
      `<v:shape id="note${i + 1}" type="#note" style="position:absolute;visibility:hidden" fillcolor="#ffffff" o:insetmode="auto"><v:textbox/><x:ClientData ObjectType="Note"><x:MoveWithCells/><x:SizeWithCells/><x:Anchor>${col + 1}, 8, ${row}, 4, ${col + 4}, 8, ${row + 5}, 4</x:Anchor><x:AutoFill>False</x:AutoFill><x:Row>${row}</x:Row><x:Column>${col}</x:Column></x:ClientData></v:shape>`,
  )
  return `<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel"><v:shapetype id="note" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe"><v:stroke joinstyle="miter"/><v:path gradientshapeok="t" o:connecttype="rect"/></v:shapetype>${frames.join("")}</xml>`
}
