import {describe, expect, it} from "vitest"
import {readBook} from "../../../src/storage/book/bookFile"
import {knows, odsOf} from "./parts"

function taken(inside: string, styles = "") {
  const read = readBook(odsOf(inside, styles), "yields.ods", knows)
  if ("refused" in read) throw new Error(read.refused)
  return read
}

const refusedOf = (inside: string) => {
  const read = readBook(odsOf(inside), "yields.ods", knows)
  return "refused" in read ? read.refused : null
}

const word = (text: string) =>
  `<table:table-cell office:value-type="string"><text:p>${text}</text:p></table:table-cell>`
const number = (value: number, more = "") =>
  `<table:table-cell office:value-type="float" office:value="${value}"${more}/>`
const row = (cells: string, more = "") => `<table:table-row${more}>${cells}</table:table-row>`
const table = (rows: string, name = "Yields") => `<table:table table:name="${name}">${rows}</table:table>`
const head = row(word("Planting") + word("Yield (t/ha)"))

describe("readBook of .ods", () => {
  it("reads headings, values of each kind, and words in several paragraphs with their spaces", () => {
    const spaced = `<table:table-cell office:value-type="string"><text:p>a<text:s text:c="3"/>b<text:tab/>c</text:p><text:p>d<text:line-break/>e</text:p></table:table-cell>`
    const date = `<table:table-cell office:value-type="date" office:date-value="2026-04-25"/>`
    const truth = `<table:table-cell office:value-type="boolean" office:boolean-value="true"/>`
    const {document} = taken(table(head + row(spaced + number(4.5)) + row(date + truth)))
    expect(document.sheets[0]).toMatchObject({
      columns: [{heading: "Planting"}, {heading: "Yield", unit: "t/ha"}],
      rows: [
        ["a   b\tc\nd\ne", 4.5],
        ["2026-04-25", true],
      ],
    })
  })

  it("lays out what is repeated, and skips blanks however often they are", () => {
    const blank = `<table:table-cell table:number-columns-repeated="16384"/>`
    const rows =
      head +
      row(number(1, ' table:number-columns-repeated="2"'), ' table:number-rows-repeated="3"') +
      row(blank, ' table:number-rows-repeated="1048000"')
    expect(taken(table(rows)).document.sheets[0]!.rows).toEqual([
      [1, 1],
      [1, 1],
      [1, 1],
    ])
  })

  it("reads formulas, those of ours with and without the definer", () => {
    const formula = (text: string) => number(0, ` table:formula="${text}"`)
    const {document} = taken(
      table(
        head +
          row(number(1) + formula("of:=FERNLEDGER.FERN.DAYS_NEEDED([.A2];2)")) +
          row(number(1) + formula("of:=FERN.DAYS_NEEDED([.A3];2)")),
      ),
    )
    expect(document.sheets[0]!.columns[1]).toMatchObject({formula: "=FERN.DAYS_NEEDED(A1,2)"})
    expect(document.sheets[0]!.rows.map(([, second]) => second)).toEqual(["=", "="])
  })

  it("reads notes with who wrote them and when, and decimals from the format of a cell", () => {
    const styles = `<number:number-style style:name="N1"><number:number number:decimal-places="1"/></number:number-style><style:style style:name="c" style:family="table-cell" style:data-style-name="N1"/>`
    const note = `<office:annotation><dc:creator>AB</dc:creator><dc:date>2026-05-01T10:00:00</dc:date><text:p>Frost,</text:p><text:p>so late</text:p></office:annotation>`
    const cell = `<table:table-cell table:style-name="c" office:value-type="float" office:value="2.25">${note}<text:p>2.3</text:p></table:table-cell>`
    expect(taken(table(head + row(word("x") + cell)), styles).document.sheets[0]).toMatchObject({
      columns: [{}, {format: 1}],
      extras: [{row: 0, col: 1, note: {text: "Frost,\nso late", by: "AB", written: "2026-05-01T10:00:00"}}],
      rows: [["x", 2.25]],
    })
  })

  it("takes the rule that all cells of a column follow, and lists others and names it cannot take", () => {
    const rule = (name: string, condition: string, message = "stop", isShown = true) =>
      `<table:content-validation table:name="${name}" table:condition="${condition}"><table:error-message table:message-type="${message}" table:display="${isShown}"/></table:content-validation>`
    const rules = `<table:content-validations>${rule("v1", "of:cell-content-is-whole-number() and cell-content-is-between(1,9)")}${rule("v2", "of:cell-content()&gt;[.A1]")}${rule("v3", "of:cell-content-is-decimal-number() and cell-content()&lt;=9", "warning")}${rule("v4", "of:cell-content-is-decimal-number() and cell-content()&lt;=9", "stop", false)}</table:content-validations>`
    const ruled = (value: number, name: string) => number(value, ` table:content-validation-name="${name}"`)
    const names = (inside: string) => `<table:named-expressions>${inside}</table:named-expressions>`
    const own = names('<table:named-range table:name="Beds" table:cell-range-address="$Yields.$A$2"/>')
    const all = names('<table:named-expression table:name="Half" table:expression="of:=[$Yields.$A$2]/2"/>')
    const line = ruled(1, "v1") + ruled(2, "v2") + ruled(3, "v3") + number(4)
    const blank = `<table:table-cell table:content-validation-name="v1"/>`
    const {document, left} = taken(
      rules +
        table(head + row(line) + row(blank) + row(ruled(5, "v1"))) +
        table(head + row(ruled(1, "v1")) + row(number(2)) + own, "Plain") +
        table(head + row(number(1)) + row(ruled(2, "v1")), "Later") +
        table(head + row(ruled(1, "v4")), "Silent") +
        all,
    )
    expect(document.sheets.map(({columns}) => columns.map((column) => column.rule))).toEqual([
      [{least: 1, most: 9}, undefined, undefined, undefined],
      ...Array.from({length: 3}, () => [undefined, undefined]),
    ])
    const others = "rules for entry that are not limits or words for a whole column"
    expect(left).toEqual([
      "The name Beds belongs to one sheet alone, so it is left out",
      `Yields: rules that numbers be whole, ${others} are left out`,
      ...["Plain", "Later", "Silent"].map((name) => `${name}: ${others} are left out`),
      "The name Half does not stand for cells alone, so it is left out",
    ])
  })

  it("refuses cells that are repeated beyond all measure, and too many sheets", () => {
    expect(refusedOf(table(row(number(1, ' table:number-columns-repeated="16384"'))))).toBe(
      "Yields has more than 500 columns that hold something",
    )
    expect(refusedOf(table(row(number(1), ' table:number-rows-repeated="1048576"')))).toBe(
      "Yields has more than 100000 rows that hold something",
    )
    const many = Array.from({length: 10_000}, (_, i) => table("", `S${i}`)).join("")
    expect(refusedOf(many)).toBe("It has more than 200 sheets, which are the most")
  })
})
