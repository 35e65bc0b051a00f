import {describe, expect, it} from "vitest"
import {column, documentOf, sheet} from "../documents"
import {inWords, mended} from "./looking"

const records = (...kg: number[]) =>
  documentOf(
    sheet(
      "Records",
      [
        column("Planting", {format: "text"}),
        column("Crop", {
          kind: "carried over",
          unit: "kg/ha",
          format: 0,
          rule: {most: 100_000, usual: [100, 12_000]},
        }),
      ],
      kg.map((one) => ["Long Acre", one]),
    ),
  )

it("lists a crop that was kept though it is ten times what is usual, and puts in what was meant (GR9)", () => {
  expect(inWords(records(3800, 4600, 44_000), "odd number")).toEqual([
    "B3: Crop of Long Acre is 44 000 kg/ha: outside the usual 100 kg/ha to 12 000 kg/ha; perhaps 4 400 kg/ha was meant",
  ])
  expect(mended(records(3800, 4600, 44_000), "odd number").sheets[0]!.rows[2]![1]).toBe(4400)
  expect(inWords(records(3800, 4600, 4400), "odd number")).toEqual([])
})

it("lists what came in outside the bounds of its column", () => {
  expect(inWords(records(440_000), "odd number")[0]).toContain("the column takes 100 000 kg/ha or less")
})

const samples = (...sugar: (number | null)[]) =>
  documentOf(
    sheet(
      "Root samples",
      [
        column("Planting", {format: "text"}),
        column("Sugar", {kind: "measured", unit: "mg/g", format: 0, rule: {least: 0, nearOthers: true}}),
      ],
      sugar.map((one) => ["Long Acre", one]),
    ),
  )
const nine = [412, 388, 455, 430, 367, 441, 402, 398, 420]

describe("among samples", () => {
  it("lists one far from the rest (AG2)", () => {
    // The nine have the median 412 and the median distance 18; a tenth of the median is more than 18 / 0.6745,
    // so what is near reaches 3.5 x 41.2 = 144.2 to either side.
    expect(inWords(samples(...nine, 190), "odd number")).toEqual([
      "B10: Sugar of Long Acre is 190 mg/g: far from the 9 others (268 mg/g to 556 mg/g would be near)",
    ])
    expect(inWords(samples(...nine, 376), "odd number")).toEqual([])
  })

  it("lists a zero, which is used as a measurement (AG3)", () => {
    expect(inWords(samples(...nine, 0), "odd number")).toEqual([
      "B10: Sugar of Long Acre is 0 mg/g: a zero is used as a measurement; leave the cell blank if it was not measured",
    ])
    expect(inWords(samples(...nine, null), "odd number")).toEqual([])
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
