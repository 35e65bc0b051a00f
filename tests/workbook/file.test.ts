import * as fc from "fast-check"
import {describe, expect, it} from "vitest"
import type {Content, Document} from "../../src/workbook/document"
import {readFile, writeFile} from "../../src/workbook/file"
import {whereJsonStops} from "../../src/workbook/json"
import {column, documentOf, sheet} from "./documents"

const farm: Document = {
  ...documentOf(
    sheet(
      "Plantings",
      [
        column("Planting", {format: "text", part: "planting", width: 12, about: "What the field is called"}),
        column("Area", {unit: "ha", rule: {least: 0, most: 1000, usual: [0.1, 50]}, format: 1, starts: true}),
        column("Twice", {formula: "=B1*2", total: "=SUM(C:C)"}),
      ],
      [["Long Acre", 6.4, "="], ["007", null, 12.5], ['a "quoted"\nword, näher', -0.1, true], ["short"], []],
      {about: "The fields"},
    ),
    sheet("Root samples", ["Planting"], []),
    sheet("Values", ["Name", "Value"], [["Rate", "=1/3"]], {names: true}),
  ),
  about: "Made up",
}

/** The saved form of a workbook, as the computer sees it, changed for a test. */
const saved = (change: (content: any) => void): string => {
  const content = JSON.parse(writeFile(farm))
  change(content)
  return JSON.stringify(content)
}

function refusalOf(text: string): string {
  const reading = readFile(text)
  if ("document" in reading) throw new Error("it was read")
  return reading.refused
}

describe("a saved workbook", () => {
  it("opens as the very document that was saved", () => {
    expect(readFile(writeFile(farm))).toEqual({document: farm})
  })

  it("keeps any content", () => {
    const content: fc.Arbitrary<Content> = fc.oneof(
      fc.string({unit: "grapheme"}),
      fc.double({noNaN: true, noDefaultInfinity: true}).map((n) => n + 0), // JSON has no -0
      fc.boolean(),
      fc.constant(null),
    )
    fc.assert(
      fc.property(fc.array(fc.array(content, {maxLength: 3}), {maxLength: 4}), (rows) => {
        const document = documentOf(sheet("Any", ["A", "B", "C"], rows))
        expect(readFile(writeFile(document))).toEqual({document})
      }),
    )
  })

  it("is written alike each time, one row of a sheet on one line", () => {
    const again = (text: string) => {
      const reading = readFile(text)
      return "document" in reading ? writeFile(reading.document) : ""
    }
    const text = again(writeFile(farm))
    expect(again(text)).toBe(text)
    expect(text.split("\n")).toContain('        ["Long Acre",6.4,"="],')
    expect(text.endsWith("}\n")).toBe(true)
  })

  it("opens with the mark that some editors put before a text", () => {
    expect(readFile(`\ufeff${writeFile(farm)}`)).toEqual({document: farm})
  })
})

describe("a file that is no workbook is refused", () => {
  const damaged = "This is not a Fernledger workbook, or it is damaged: "
  it.each([
    ["", "it is empty"],
    [" \n", "it is empty"],
    ['{"fernledger": 1, "name": "Tri', "its text breaks off"],
    ['{"fernledger": 1,\n "sheets": [', "its text breaks off"],
    ["hello", "line 1, character 1 cannot be read"],
    ['{"fernledger": 1,\n "name": oops}', "line 2, character 10 cannot be read"],
    ['{"fernledger": 1,}', "line 1, character 18 cannot be read"],
    ['{"fernledger": 1}\n\n}', "line 3, character 1 cannot be read"],
    ["Planting;Area\nLong Acre;6,4", "line 1, character 1 cannot be read"],
  ])("when its text is %j", (text, sentence) => {
    expect(refusalOf(text)).toBe(damaged + sentence)
  })

  it.each(["[]", "null", "12", '"fernledger"', "{}", '{"sheets": []}'])(
    "when it is other JSON: %s",
    (text) => {
      expect(refusalOf(text)).toBe(
        "This is not a Fernledger workbook: it does not begin with the word “fernledger” and a version",
      )
    },
  )

  it.each([
    [0, "0"],
    [1.5, "1.5"],
    ["1", '"1"'],
    [null, "null"],
  ])("when its version is %j", (version, shown) => {
    expect(refusalOf(saved((content) => (content.fernledger = version)))).toBe(
      `The version of this workbook is ${shown}; a whole number from 1 was expected`,
    )
  })

  it("when it was saved by a newer version", () => {
    expect(refusalOf(saved((content) => (content.fernledger = 2)))).toBe(
      "This workbook was saved by a newer Fernledger (file version 2; this one reads up to 1)",
    )
  })
})

describe("a damaged workbook is refused with the place", () => {
  const place = (change: (content: any) => void) =>
    refusalOf(saved(change)).replace("This workbook is damaged: ", "")

  it.each<[string, (content: any) => void]>([
    ["sheet 1 “Plantings”, cell C2", ({sheets}) => (sheets[0].rows[1][2] = {value: 3})],
    ["sheet 1 “Plantings”, cell A5", ({sheets}) => (sheets[0].rows[4][0] = [])],
    ["sheet 1 “Plantings”, row 3", ({sheets}) => (sheets[0].rows[2] = "Long Acre")],
    ["sheet 1 “Plantings”, column 2, kind", ({sheets}) => (sheets[0].columns[1].kind = "guessed")],
    ["sheet 1 “Plantings”, column 3, formula", ({sheets}) => (sheets[0].columns[2].formula = "B1*2")],
    ["sheet 1 “Plantings”, column 2, rule, least", ({sheets}) => (sheets[0].columns[1].rule.least = "0")],
    ["sheet 2 “Root samples”, “columns”", ({sheets}) => (sheets[1].columns = [])],
    ["sheet 2 “Root samples”, “rows”", ({sheets}) => delete sheets[1].rows],
    ["sheet 2 “Root/samples”, “name”", ({sheets}) => (sheets[1].name = "Root/samples")],
    ["sheet 2, “name”", ({sheets}) => delete sheets[1].name],
    ["sheet 3", ({sheets}) => (sheets[2] = null)],
    ["“sheets”", (content) => (content.sheets = [])],
    ["“name”", (content) => delete content.name],
  ])("%s", (where, change) => {
    expect(place(change)).toMatch(new RegExp(`^${where}: .`))
  })

  it("of a key that it does not know, which it names", () => {
    expect(place((content) => (content.colour = "green"))).toMatch(/^its head: .*"colour"/)
    expect(place(({sheets}) => (sheets[1].colour = "green"))).toMatch(/^sheet 2 “Root samples”: .*"colour"/)
    expect(place(({sheets}) => (sheets[0].columns[1].colour = "green"))).toMatch(
      /^sheet 1 “Plantings”, column 2: .*"colour"/,
    )
  })

  it("of sheets that cannot be told apart in a formula", () => {
    expect(place(({sheets}) => (sheets[2].name = "PLANTINGS"))).toBe("two sheets are named “PLANTINGS”")
  })
})

describe("a workbook too large to be worked out is refused", () => {
  const one = {name: "Plan", group: "Farm", columns: [{heading: "A", kind: "typed"}], rows: [] as unknown[]}
  const reading = (sheets: unknown[]) => readFile(JSON.stringify({fernledger: 1, name: "Large", sheets}))

  it("of ten thousand sheets, of a million blank rows, of too many columns", () => {
    const sheets = Array.from({length: 10_000}, (_, i) => ({...one, name: `S${i}`}))
    expect(reading(sheets)).toEqual({refused: "It has 10000 sheets, and 200 are the most"})
    expect(reading([{...one, rows: Array.from({length: 1_000_000}, () => [])}])).toEqual({
      refused: "Its sheet “Plan” has 1000000 rows, and 100000 are the most",
    })
    expect(reading([{...one, columns: Array.from({length: 501}, () => one.columns[0])}])).toEqual({
      refused: "Its sheet “Plan” has 501 columns, and 500 are the most",
    })
  })
})

describe("whereJsonStops", () => {
  it("reads any JSON to its end", () => {
    fc.assert(
      fc.property(fc.json({stringUnit: "grapheme"}), fc.constantFrom(undefined, 1, "\t"), (text, indent) => {
        const laidOut = JSON.stringify(JSON.parse(text), null, indent)
        expect(whereJsonStops(laidOut)).toBe(laidOut.length)
      }),
    )
  })

  it("takes every beginning of a JSON text for one that breaks off, but for a piece left half", () => {
    const text = '{"a": [1, -2.5e3, {"b": "c\\u00e9\\n"}, [], {}, "x"], "d": {"e": ""}}'
    for (let length = 0; length <= text.length; length++) {
      const stops = whereJsonStops(text.slice(0, length))
      expect(text.slice(stops, length)).toMatch(/^([-.e]|\\u?[0-9a-f]{0,3})?$/)
    }
  })

  it.each([
    ["[1 2]", 3],
    ["[1,]", 3],
    ['{"a" 1}', 5],
    ['{"a":1,}', 7],
    ["{a:1}", 1],
    ["[1}", 2],
    ["nul", 0],
    ["[TRUE]", 1],
    ["[01]", 2],
    ["[.5]", 1],
    ["[1.]", 2],
    ["[NaN]", 1],
    ["['a']", 1],
    ['["a\nb"]', 3],
    ['["\\x"]', 2],
    ["1 2", 2],
    ["1,2", 1],
    ["[1]]", 3],
    ["[1] // end", 4],
  ])("stops in %j at %i", (text, at) => {
    expect(() => JSON.parse(text)).toThrow(SyntaxError)
    expect(whereJsonStops(text)).toBe(at)
  })

  it("reads lists within lists, however deep", () => {
    const deep = "[".repeat(200_000)
    expect(whereJsonStops(deep)).toBe(deep.length)
  })
})
