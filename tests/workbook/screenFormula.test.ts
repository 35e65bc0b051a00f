import {readdirSync, readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {isFormula} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"
import {fromScreen, onScreen} from "../../src/workbook/screenFormula"
import {Workbook} from "../../src/workbook/workbook"
import {documentOf, seeded, sheet} from "./documents"
import {anyReference, below, farm, formulasOf, oneOf, seeds, type Random} from "./sessions"

const folder = `${import.meta.dirname}/../../workbooks`
const files = readdirSync(folder).filter((file) => file.endsWith(".json"))

describe("a formula where decimals take a comma", () => {
  it.each([
    ["=1.5+A1", "=1,5+A1"],
    ["=.5", "=,5"],
    ["=1.5E-3", "=1,5E-3"],
    ["=SUM(1.5,A1:B2,2)", "=SUM(1,5;A1:B2;2)"],
    ["=IF( A1>0.5 , 1 , 2 )", "=IF( A1>0,5 ; 1 ; 2 )"],
    ["=ROOT.SUGAR(1.5,2)", "=ROOT.SUGAR(1,5;2)"],
    // OpenFormula 5.13: ";" parts the columns of an array, "|" its rows.
    ["=SUM({1.5,2;3,4})", "=SUM({1,5;2|3;4})"],
  ])("%s is shown as %s, and read back", (stored, shown) => {
    expect(onScreen(stored, ",")).toBe(shown)
    expect(fromScreen(shown, ",")).toBe(stored)
  })

  it("keeps words, names and sheets as they are", () => {
    const stored = `='Beds, 1.5; "a"'!A1&"1.5, 2; ""x"""&IF(A1,Rate_1,#N/A)`
    expect(onScreen(stored, ",")).toBe(`='Beds, 1.5; "a"'!A1&"1.5, 2; ""x"""&IF(A1;Rate_1;#N/A)`)
    expect(fromScreen(onScreen(stored, ","), ",")).toBe(stored)
  })

  it("is not read with a sign of the other way of writing", () => {
    expect(fromScreen("=SUM(A1,B1)", ",")).toBeNull()
    expect(fromScreen("=1.5*A1", ",")).toBeNull()
    expect(fromScreen('="1.5, 2"&A1', ",")).toBe('="1.5, 2"&A1')
  })

  it("stays as it is where decimals take a point", () => {
    expect(onScreen("=SUM(1.5,2)", ".")).toBe("=SUM(1.5,2)")
    expect(fromScreen("=SUM(1,5;2)", ".")).toBe("=SUM(1,5;2)")
  })
})

describe("a formula on screen and back", () => {
  it.each(files)("is unchanged for each of %s", (file) => {
    const reading = readFile(readFileSync(`${folder}/${file}`, "utf8"))
    if ("refused" in reading) throw new Error(reading.refused)
    const {document} = reading
    const columns = document.sheets.flatMap(({columns}) =>
      columns.flatMap(({formula, total}) => [formula, total].filter(isFormula)),
    )
    const all = new Set([...formulasOf(document).values(), ...columns])
    expect(all.size).toBeGreaterThan(100)
    for (const formula of all) expect(fromScreen(onScreen(formula, ","), ",")).toBe(formula)
  })

  it("is unchanged for formulas made up at random, which the engine reads", () => {
    const workbook = new Workbook(farm)
    for (const seed of seeds(300)) {
      const formula = `=${anyTerm(seeded(seed), 3)}`
      expect(workbook.normalized(formula), formula).not.toBeNull()
      expect(fromScreen(onScreen(formula, ","), ",")).toBe(formula)
    }
  })

  it("gives the same value", () => {
    const workbook = new Workbook(documentOf(sheet("Plan", ["A", "B"], [[1.25, 4]])))
    const stored = fromScreen("=ROUND(A1*1,5;1)+SUM({0,5;1|2;3})", ",")!
    // 1.25 × 1.5 = 1.875, to one decimal 1.9; 0.5 + 1 + 2 + 3 = 6.5.
    expect(workbook.evaluate(stored, 0)).toBe(8.4)
  })
})

/** A formula of every kind of piece, nested at most so deep. */
function anyTerm(random: Random, depth: number): string {
  const plain: readonly (() => string)[] = [
    () => String(Math.round(random() * 1000) / 8),
    () => `.${below(random, 90) + 1}`,
    () => `${below(random, 9) + 1}.5e-3`,
    () => oneOf(random, ['"a, b; 1.5"', '""', '"2,5|x"', "Rate", "TRUE"]),
    () => anyReference(random, farm),
  ]
  if (depth === 0) return oneOf(random, plain)()
  const inner = () => anyTerm(random, depth - 1)
  const space = () => oneOf(random, ["", "", " "])
  const nested: readonly (() => string)[] = [
    ...plain,
    () => `SUM(${inner()}${space()},${space()}${inner()})`,
    () => `IF(${inner()}>${inner()},${inner()},${inner()})`,
    () => `SUM({1.5,${below(random, 9)};-2,0.25})`,
    () => `(${inner()}*${inner()})%`,
    () => `${inner()}&${inner()}`,
  ]
  return oneOf(random, nested)()
}
