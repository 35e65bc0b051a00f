import {expect, it} from "vitest"
import type {Content} from "../../../src/workbook/document"
import {column, documentOf, sheet} from "../documents"
import {inWords} from "./looking"

interface Names {
  plan?: string[]
  list?: string[]
  fern?: string[]
  records?: Content[][]
}

/** A plan that looks its ages up on a list of plantings, the fern beside it, and years on record. */
const farm = ({
  plan = THREE,
  list = THREE,
  fern = THREE,
  records = THREE.map((name) => [name, 2024]),
}: Names) =>
  documentOf(
    sheet(
      "Season plan",
      [
        column("Planting", {format: "text", part: "planting"}),
        column("Age", {formula: "=INDEX(Plantings!B:B,MATCH(A1,Plantings!A:A,0))", part: "age"}),
        column("Close", {formula: '=IF(OR(B1=1,B1=30),"not cut",B1+46000)', format: "date", part: "close"}),
        column("Years", {formula: "=COUNTIF(Records!A:A,A1)", part: "record years"}),
        column("Crop", {formula: "=B1*2", total: "=SUM(E:E)"}),
      ],
      plan.map((name) => [name, "=", "=", "=", "="]),
    ),
    sheet(
      "Plantings",
      [column("Planting", {format: "text"}), column("Age")],
      list.map((name) => [name, AGES[name] ?? 8]),
    ),
    sheet(
      "Fern",
      [column("Planting", {format: "text"}), column("Ends", {formula: "=Season", format: "text"})],
      fern.map((name) => [name, "="]),
    ),
    sheet("Records", [column("Planting", {format: "text"}), column("Year", {format: "text"})], records),
  )
const THREE = ["Long Acre", "Well Field", "Top Corner"]
const AGES: Record<string, number> = {"Top Corner": 1, "Home Strip": 2, "Old Field": 30}

it("finds nothing where all sheets agree; a name is the same without regard to case", () => {
  for (const rule of ["missing planting", "twin name", "no yield record"] as const) {
    expect(inWords(farm({}), rule)).toEqual([])
    expect(inWords(farm({fern: ["LONG ACRE", "Well Field", "Top Corner"]}), rule)).toEqual([])
  }
})

it("tells a planting that a sheet lacks, and the totals that leave it out", () => {
  expect(inWords(farm({plan: THREE.slice(0, 2)}), "missing planting")).toEqual([
    "Plantings!A3: Top Corner stands on Plantings and Fern, but not on Season plan; the totals of Season plan leave it out",
  ])
  expect(inWords(farm({fern: THREE.slice(1)}), "missing planting")).toEqual([
    "A1: Long Acre stands on Season plan and Plantings, but not on Fern",
  ])
})

it("tells a record of a planting that is nowhere", () => {
  const records = [...THREE.map((name) => [name, 2024]), ["Long Acre", 2025], ["Long Acer", 2023]]
  expect(inWords(farm({records}), "missing planting")).toEqual([
    "Records!A5: Long Acer on Records is no planting: Season plan, Plantings and Fern have none of this name",
  ])
})

it("tells two plantings of one name where the second is never found, and no second year on record", () => {
  expect(inWords(farm({list: [...THREE, "long acre"]}), "twin name")).toEqual([
    "Plantings!A4: long acre stands twice on Plantings: what is looked up there finds row 1 alone",
  ])
  const records = [...THREE.map((name) => [name, 2024]), ["Long Acre", 2025]]
  expect(inWords(farm({records}), "twin name")).toEqual([])
})

it("says which plantings have no yield record, except those too young to have one or not cut (GR8)", () => {
  const names = [...THREE.slice(0, 1), "Brook End", ...THREE.slice(1), "Home Strip", "Old Field"]
  const records = [
    ["Long Acre", 2024],
    ["Long Acre", 2025],
    ["Well Field", 2025],
  ]
  expect(inWords(farm({plan: names, list: names, fern: names, records}), "no yield record")).toEqual([
    "A2: 1 planting has no yield record: Brook End",
  ])
})
