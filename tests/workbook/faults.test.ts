import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {catalogue} from "../../functions/catalogue"
import type {Content, Document} from "../../src/workbook/document"
import {sentenceOf} from "../../src/workbook/faults"
import {isFault} from "../../src/workbook/value"
import {Workbook} from "../../src/workbook/workbook"

/** What a formula says when it fails in A1, above `below`; the sheet Beds holds 4, "wet" and a blank. */
function said(formula: string, below: Content = null): string {
  const column = {heading: "Value", kind: "typed"} as const
  const document: Document = {
    name: "Faults",
    sheets: [
      {name: "Formula", group: "Trial", columns: [column], rows: [[formula], [below]]},
      {name: "Beds", group: "Trial", columns: [column], rows: [[4], ["wet"], [null]]},
    ],
  }
  const value = new Workbook(document).valueAt({sheet: 0, row: 0, col: 0})
  if (!isFault(value)) throw new Error(`${formula} gives ${value}`)
  return sentenceOf(value)
}

describe("sentenceOf", () => {
  it.each([
    ["=1/0", "Divides by zero"],
    ["=NA()", "Not available yet"],
    ["=Beds!A2+1", "A number is needed here, not text"],
    ["=MEDIAN(Beds!A3:A9)", "Nothing there yet: at least one value is needed"],
    ["=FILTER(Beds!A1:A1,Beds!A1:A1>9)", "Nothing there yet"],
    ["=Missing!A1", "There is no sheet of this name"],
    ["=#REF!+1", "Points at a cell that was deleted"],
    ["=A1", "Goes round in a ring"],
    ["=Floor_rate*2", "There is no named value Floor_rate"],
    ["=SQRT(-1)", "There is no such number"],
    ["=VLOOKUP(9,Beds!A1:A3,1,FALSE())", "The value looked for is not there"],
    ["=SUM(1,2", "This formula cannot be read"],
    ["=", "This formula cannot be read"],
    ["=SUM()", "Too few or too many arguments"],
  ])("says what is wrong with %s", (formula, sentence) => {
    expect(said(formula)).toBe(sentence)
  })

  it("says why an array has no room", () => {
    expect(said("=SEQUENCE(3)", 1)).toBe(
      "There is no room for all the values: a cell beside or below is not empty",
    )
  })

  it("passes on a sentence of our own", () => {
    expect(said("=SPEAR.HEAT(80,9,5)")).toMatch(/^Highest air temperature of the day must be .*, not 80 °C$/)
  })

  it("names an unknown function and the one that was probably meant", () => {
    expect(said("=SPEAR.HEET(20,9,5)")).toBe("There is no function SPEAR.HEET (did you mean SPEAR.HEAT?)")
    expect(said("=spear.haet(20,9,5)")).toBe("There is no function SPEAR.HAET (did you mean SPEAR.HEAT?)")
    expect(said("=SPEARHEET(20,9,5)")).toBe("There is no function SPEARHEET (did you mean SPEAR.HEAT?)")
    expect(said("=AVERGE(1,2)")).toBe("There is no function AVERGE (did you mean AVERAGE?)")
    expect(said("=SPEAR.AVERAGE(B1:B3)")).toBe(
      "There is no function SPEAR.AVERAGE (did you mean SPEAR.MEAN?)",
    )
    expect(said("=ASPARAGUS(1)")).toBe("There is no function ASPARAGUS")
    // RAND is one letter away, but short names are too much alike.
    expect(said("=RANT(1,Beds!A1:A3)")).toBe("There is no function RANT")
  })

  it("finds each of our functions when its name has a letter too many", () => {
    for (const {name} of catalogue) {
      const reason = `Function name ${name}X not recognized.`
      const sentence = sentenceOf({code: "#NAME?", reason, began: null})
      expect(sentence).toBe(`There is no function ${name}X (did you mean ${name}?)`)
    }
  })

  it("has plain words for every reason the engine can give", () => {
    const list = readFileSync("node_modules/hyperformula/es/error-message.mjs", "utf8")
    const reasons = [...list.matchAll(/^ErrorMessage\.\w+ = '(.*)';$/gm)].map(([, one]) =>
      one!.replaceAll("\\'", "'"),
    )
    expect(reasons.length).toBeGreaterThan(60)
    for (const reason of reasons) {
      const sentence = sentenceOf({code: "#VALUE!", reason, began: null})
      expect(sentence, reason).not.toMatch(/\.$|coerce|NaN|mismatch|bounds|argument cannot/i)
    }
  })
})
