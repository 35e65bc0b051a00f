import type {Content, Document} from "../../src/workbook/document"

/** A workbook of one cell. */
export const farm = (name: string, content: Content): Document => ({
  name,
  sheets: [{name: "Notes", group: "Farm", columns: [{heading: "Note", kind: "typed"}], rows: [[content]]}],
})
