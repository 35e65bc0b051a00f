import {describe, expect, it} from "vitest"
import {column, documentOf, sheet} from "../documents"
import {inWords, mended} from "./looking"

const records = (...kg: number[]) =>
  documentOf(
    sheet(
      "Records",
      [
        column("Planting", {format: "text"}),
        column("Crop", {kind: "carried over", unit: "kg/ha", format: 0}),
      ],
      [...kg.map((one) => ["Long Acre", one]), ["Well Field", 44_000]],
    ),
  )

describe("against the planting's own record", () => {
  it("asks whether a number ten times the others is a slip of the point (GR9)", () => {
    expect(inWords(records(3800, 4600, 44_000), "odd number")).toEqual([
      "B3: Crop of Long Acre is 44 000 kg/ha: about 10 times the others of Long Acre; did you mean 4 400 kg/ha?",
    ])
    expect(mended(records(3800, 4600, 44_000), "odd number").sheets[0]!.rows[2]![1]).toBe(4400)
    expect(inWords(records(3800, 4600, 42), "odd number")[0]).toContain("about a hundredth of the others")
  })

  it("lets a young planting's first crop pass, and a number with one other", () => {
    expect(inWords(records(620, 2480, 4350), "odd number")).toEqual([])
    expect(inWords(records(4600, 44_000), "odd number")).toEqual([])
  })
})

const samples = (...sugar: (number | null)[]) =>
  documentOf(
    sheet(
      "Root samples",
      [
        column("Planting", {format: "text"}),
        column("Sugar", {kind: "measured", unit: "mg/g", format: 0, rule: {least: 0, usual: [100, 750]}}),
      ],
      sugar.map((one) => ["Long Acre", one]),
    ),
  )
const ten = [412, 388, 455, 430, 367, 441, 402, 398, 420]

describe("among samples", () => {
  it("questions one far from the rest (AG2)", () => {
    // Of the nine others: median 412, median distance 18, so 3.5 x 1.4826 x 18 = 93; 190 is 222 away.
    expect(inWords(samples(...ten, 190), "odd number")).toEqual([
      "B10: Sugar of Long Acre is 190 mg/g: far from the 9 others of Long Acre, whose middle is 412 mg/g",
    ])
    expect(inWords(samples(...ten, 376), "odd number")).toEqual([])
    expect(inWords(samples(...ten, 320), "odd number")).toEqual([]) // 92 away
    expect(inWords(samples(...ten, 318), "odd number")).toHaveLength(1) // 94 away
  })

  it("questions a zero, which is used as a measurement (AG3)", () => {
    expect(inWords(samples(...ten, 0), "odd number")).toEqual([
      "B10: Sugar of Long Acre is 0 mg/g: a zero is used as a measurement; leave the cell blank if it was not measured",
    ])
    expect(inWords(samples(...ten, null), "odd number")).toEqual([])
  })

  it("questions what is outside the usual range or what the column takes", () => {
    expect(inWords(samples(90), "odd number")).toEqual([
      "B1: Sugar of Long Acre is 90 mg/g: usual is 100 mg/g to 750 mg/g",
    ])
    expect(inWords(samples(-3), "odd number")[0]).toContain("the column takes 0 mg/g or more")
  })
})

it("takes zeros for zeros where they are common, or where there are numbers below", () => {
  const measured = (least: number, ...numbers: number[]) =>
    documentOf(
      sheet(
        "Weather records",
        [column("Day"), column("Low", {kind: "measured", unit: "°C", rule: {least}})],
        numbers.map((one, i) => [i, one]),
      ),
    )
  expect(inWords(measured(-60, 3, 4, 0, 5, 6), "odd number")).toEqual([])
  expect(inWords(measured(0, 3, 0, 0, 5, 6), "odd number")).toEqual([])
  expect(inWords(measured(0, 3, 4, 0, 5, 6), "odd number")).toHaveLength(1)
})
