import {zipOf} from "../../../src/storage/book/zip"
import {createStore} from "../../../src/editor/store"
import {column, documentOf, sheet} from "../../workbook/documents"

const on = new Date("2026-05-25T12:00:00Z")
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main"
const RELATIONS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"

/** What the engine knows, from a workbook of one cell. */
const {workbook} = createStore(documentOf(sheet("Only", [column("One")], [])))
export const knows = {
  functions: workbook.standardFunctions,
  normalized: (formula: string) => workbook.normalized(formula),
}

/** A .xlsx of sheets given by the insides of their elements, with other parts where a test needs them. */
export function xlsxOf(
  sheets: Readonly<Record<string, string>>,
  {workbook = "", parts = {}}: {workbook?: string; parts?: Record<string, string>} = {},
): Uint8Array {
  const names = Object.keys(sheets)
  const list = names.map((name, i) => `<sheet name="${name}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`)
  const pointers = names.map(
    (_, i) =>
      `<Relationship Id="rId${i + 1}" Type="${RELATIONS}/worksheet" Target="worksheets/sheet${i + 1}.xml"/>`,
  )
  const own = Object.values(sheets).map(
    (inside, i) =>
      [`xl/worksheets/sheet${i + 1}.xml`, `<worksheet xmlns="${MAIN}">${inside}</worksheet>`] as const,
  )
  return zipOf(
    {
      "[Content_Types].xml": "<Types/>",
      "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="${RELATIONS}"><sheets>${list.join("")}</sheets>${workbook}</workbook>`,
      "xl/_rels/workbook.xml.rels": `<Relationships>${pointers.join("")}<Relationship Id="rIdS" Type="${RELATIONS}/sharedStrings" Target="sharedStrings.xml"/><Relationship Id="rIdL" Type="${RELATIONS}/styles" Target="styles.xml"/></Relationships>`,
      ...Object.fromEntries(own),
      ...parts,
    },
    on,
  )
}

/** A .ods of the insides of its element for the workbook, and of its styles. */
export const odsOf = (inside: string, styles = ""): Uint8Array =>
  zipOf(
    {
      mimetype: "application/vnd.oasis.opendocument.spreadsheet",
      "content.xml": `<office:document-content><office:automatic-styles>${styles}</office:automatic-styles><office:body><office:spreadsheet>${inside}</office:spreadsheet></office:body></office:document-content>`,
    },
    on,
    ["mimetype"],
  )

/** A cell of words. */
export const words = (reference: string, text: string) =>
  `<c r="${reference}" t="inlineStr"><is><t>${text}</t></is></c>`
