import {describe, expect, it} from "vitest"
import {nearTo, questionedAt} from "../../src/workbook/questioned"
import {cellAt, column, documentOf, sheet} from "./documents"

/** Ten dormant samples of one planting, of the acceptance scenarios. */
const samples = [412, 388, 455, 430, 367, 441, 402, 398, 420, 376]

describe("what lies near to some numbers", () => {
  it("is 3.5 times their spread round the median", () => {
    // Median of 100 150 200 250 300 is 200, distances 100 50 0 50 100 have the median 50; 50 / 0.6745 = 74.13; x 3.5 = 259.45.
    const [from, to] = nearTo([100, 150, 200, 250, 300])
    expect(from).toBeCloseTo(200 - 259.45, 2)
    expect(to).toBeCloseTo(200 + 259.45, 2)
  })

  it("is no narrower than 35 % of the median, though they agree", () =>
    expect(nearTo([4000, 4000, 4000])).toEqual([2600, 5400]))
})

describe("a questioned number", () => {
  const sugar = column("Sugar", {kind: "measured", rule: {nearOthers: true}})
  const day = column("Sampled", {kind: "measured", format: "date"})
  const rows = [
    ...samples.map((value) => ["Long Acre", "2026-03-05", value]),
    ...[520, 530, 510, 525].map((value) => ["Long Acre", "2025-10-20", value]),
    ["Well Field", "2026-03-05", 190],
  ]
  const document = documentOf(sheet("Root samples", ["Planting", day, sugar], rows))

  it("lies far from the others of its planting and day", () =>
    expect(questionedAt(document, cellAt("C10"), 190)).toMatchObject({others: 9, meant: null}))

  it("is none that lies near to them, though far from those of another day", () => {
    expect(questionedAt(document, cellAt("C1"), 412)).toBeNull()
    expect(questionedAt(document, cellAt("C11"), 520)).toBeNull()
  })

  it("is none where too few others say what is near", () =>
    expect(questionedAt(document, cellAt("C15"), 190)).toBeNull())

  it("is a zero among measurements, which is not a blank", () =>
    expect(questionedAt(document, cellAt("C3"), 0)).not.toBeNull())

  it("names the number that was probably meant, its point put elsewhere", () => {
    const crop = column("Crop", {unit: "kg/ha", rule: {usual: [100, 12000]}})
    const records = documentOf(sheet("Records", ["Planting", crop], [["Long Acre", 4200]]))
    expect(questionedAt(records, cellAt("B1"), 44000)).toEqual({from: 100, to: 12000, others: 0, meant: 4400})
  })

  it("is one a tenth or ten times of two others, which tell no more than that", () => {
    const crop = column("Crop", {unit: "kg/ha", rule: {nearOthers: true}})
    const other = [
      ["Long Acre", 4200],
      ["Long Acre", 4450],
      ["Young", 620],
      ["Young", 2480],
    ]
    const asked = (name: string, kg: number) =>
      questionedAt(documentOf(sheet("Records", ["Planting", crop], [...other, [name, kg]])), cellAt("B5"), kg)
    expect(asked("Long Acre", 440)).toMatchObject({others: 2, meant: 4400})
    expect(asked("Long Acre", 44000)).toMatchObject({others: 2, meant: 4400})
    for (const kg of [1900, 2600, 6400]) expect(asked("Long Acre", kg)).toBeNull() // a frost year, a good one
    for (const kg of [250, 4350]) expect(asked("Young", kg)).toBeNull() // what grows is spread wide
  })

  it("is looked at among all rows where no name occurs twice", () => {
    const area = column("Area", {rule: {nearOthers: true}})
    const plantings = documentOf(
      sheet(
        "Plantings",
        ["Planting", area],
        ["A", "B", "C", "D"].map((name, i) => [name, 4 + i]),
      ),
    )
    expect(questionedAt(plantings, cellAt("B4"), 62)).toMatchObject({others: 3, meant: 6.2})
  })
})
