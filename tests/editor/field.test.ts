import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"
import {dayOf} from "../../functions/calendar"
import {readTally} from "../../functions/spear/tally"
import {
  addPicking,
  addSample,
  addSpears,
  fieldPlantings,
  fieldRowText,
  lastDays,
  nextPlant,
  pickingLate,
  pickingOdd,
  pickingRefused,
  sampleOdd,
  spearsCounted,
  spearSizes,
  tallyText,
} from "../../src/editor/field"
import {createStore} from "../../src/editor/store"
import {sheetWith, withSheet, type Document} from "../../src/workbook/document"
import {readFile} from "../../src/workbook/file"
import {PLAIN_REGION} from "../../src/workbook/region"

const {document: farm} = readFile(
  readFileSync(new URL("../../workbooks/hollow-brook-farm.json", import.meta.url), "utf8"),
) as {document: Document}

const last = (store: ReturnType<typeof createStore>, name: string) =>
  store
    .getState()
    .document.sheets.find((one) => one.name === name)!
    .rows.at(-1)!

const mark = (n: number) => ({
  id: n.toString(16).padStart(32, "0"),
  device: "Phone",
  entered: "2026-05-25T06:12:00.000Z",
})

describe("what is entered in the field", () => {
  const store = createStore(farm)
  it("lands in a row of its sheet, under a name in the history", () => {
    store.run(addPicking("Sand Piece", "2026-05-25", 1160, mark(1)))
    expect(last(store, "Pickings").slice(0, 3)).toEqual(["Sand Piece", "2026-05-25", 1160])
    store.run(addSpears("Long Acre", "2026-05-25", {8: 3, 9: 6, 11: 7, 12: 12}, mark(2)))
    expect(last(store, "Spear size")).toEqual([
      "Long Acre",
      "2026-05-25",
      10.68,
      28,
      "8×3 9×6 11×7 12×12",
      "=",
      "=",
    ])
    store.run(addSample("Top Corner", "2026-10-20", 1, "sample reading", 18.5, mark(3)))
    expect(last(store, "Root samples").slice(0, 5)).toEqual(["Top Corner", 1, "2026-10-20", 18.5, null])
    expect(store.getState().undoable.map(({name}) => name)).toEqual([
      "picking of Sand Piece",
      "spears of Long Acre",
      "root sample of Top Corner",
    ])
  })
  it("is told in the units of the region", () => {
    const said = (region = PLAIN_REGION) =>
      store.getState().document.field!.map(({row}) => fieldRowText(row!, region).replaceAll("\u202f", " "))
    expect(said()).toEqual([
      "Sand Piece 1 160 kg",
      "Long Acre 28 spears, 10.7 mm",
      "Top Corner plant 1, 18.5 °Brix",
    ])
    // 1160 / 0.45359237 = 2557.36; 10.68 / 25.4 = 0.4205
    expect(said({measures: "US", decimal: ","}).slice(0, 2)).toEqual([
      "Sand Piece 2 557,4 lb",
      "Long Acre 28 spears, 0,420 in",
    ])
  })
  it("is known to the next one: the last picking, and the number of the next plant", () => {
    const sand = fieldPlantings(store.workbook).find(({name}) => name === "Sand Piece")
    // With 1091, 1145, 1040 and 1138 kg before it, the middle is 1138.
    expect(sand).toEqual({
      name: "Sand Piece",
      area: 5,
      last: {day: dayOf("2026-05-25"), kg: 1160},
      usual: 1138,
    })
    expect(nextPlant(store.workbook, "Top Corner", "2026-10-20")).toBe(2)
    expect(nextPlant(store.workbook, "Top Corner", "2026-10-21")).toBe(1)
  })
})

describe("a wait after spraying", () => {
  // The farm sprayed Sand Piece on 14 April, and typed 7 days from the label.
  const {workbook} = createStore(farm)
  it.each([
    ["2026-04-13", null],
    ["2026-04-14", "Sand Piece was sprayed on 14 Apr: by its label it may be picked again from 21 Apr"],
    ["2026-04-20", "Sand Piece was sprayed on 14 Apr: by its label it may be picked again from 21 Apr"],
    ["2026-04-21", null],
  ])("blocks a picking on %s: %s", (day, refused) =>
    expect(pickingRefused(workbook, "Sand Piece", day)).toBe(refused),
  )
  it("blocks no other planting", () => expect(pickingRefused(workbook, "Long Acre", "2026-04-15")).toBeNull())
})

it("asks about a picking that no field gives", () => {
  const planting = {name: "Home Strip", area: 2, last: null, usual: null}
  expect(pickingOdd(planting, 1000)).toBe("")
  expect(pickingOdd(planting, 11600)).toBe(
    "5\u202f800 kg/ha in one picking of Home Strip is more than fields give. Is it 11\u202f600 kg?",
  )
  // The last five of Long Acre are 1014, 1116, 1006, 989 and 1120 kg.
  const {workbook} = createStore(farm)
  const longAcre = fieldPlantings(workbook).find(({name}) => name === "Long Acre")!
  expect(longAcre.usual).toBe(1014)
  expect(pickingOdd(longAcre, 4055)).toBe("")
  expect(pickingOdd(longAcre, 127)).toBe("")
  expect(pickingOdd(longAcre, 4056)).toBe(
    "4\u202f056 kg is far from the last pickings of Long Acre, about 1\u202f014 kg each. Is it 4\u202f056 kg?",
  )
  expect(pickingOdd(longAcre, 101)).toMatch(/^101 kg is far from the last pickings/)
  expect(pickingOdd({...longAcre, usual: null}, 101)).toBe("")
})

it("asks about a root sample outside the usual of its column, with what was probably meant", () => {
  // Reading is usual from 5 to 30 °Brix, Sugar from 100 to 750 mg/g.
  expect(sampleOdd(farm, "sample reading", 18.5)).toBe("")
  expect(sampleOdd(farm, "sample reading", 3)).toBe("3 °Brix is outside the usual 5 to 30. Was 30 meant?")
  expect(sampleOdd(farm, "sample sugar", 48)).toBe("48 mg/g is outside the usual 100 to 750. Was 480 meant?")
  expect(sampleOdd(farm, "sample sugar", 980)).toMatch(/Is it 980\?$/)
  const comma = {...farm, region: {decimal: ","}} as const
  expect(sampleOdd(comma, "sample reading", 2.5)).toBe(
    "2,5 °Brix is outside the usual 5 to 30. Was 25 meant?",
  )
})

it("counts spears by their sizes", () => {
  // 3 of 8, 6 of 9, 7 of 11, 12 of 12 mm: (24 + 54 + 77 + 144)/28 = 10.68; nine are under 9.5.
  expect(spearsCounted({8: 3, 9: 6, 11: 7, 12: 12}, 9.5)).toEqual({count: 28, mean: 299 / 28, thinner: 9})
  expect(spearsCounted({}, null)).toEqual({count: 0, mean: null, thinner: 0})
})

it("writes a count by size as its function reads it, sixteenths of an inch as fractions", () => {
  const counts = {12.7: 5, 9.525: 3, 8: 2, 10: 0}
  expect(tallyText(counts)).toBe("8×2 6/16×3 8/16×5")
  expect(readTally(tallyText(counts))).toEqual({diameters: [8, 9.525, 12.7], counts: [2, 3, 5]})
  for (const size of spearSizes({measures: "US"})) expect(tallyText({[size]: 1})).toMatch(/^\d+\/16×1$/)
})

it("keeps the mean alone in a workbook without a column for the sizes", () => {
  const sheet = sheetWith(farm, "spears by size")
  const {columns, rows} = farm.sheets[sheet]!
  const store = createStore(
    withSheet(farm, sheet, {columns: columns.slice(0, 4), rows: rows.map((row) => row.slice(0, 4))}),
  )
  store.run(addSpears("Long Acre", "2026-05-25", {10: 3, 12: 1}, mark(9)))
  expect(store.getState().document.sheets[sheet]!.rows.at(-1)).toEqual(["Long Acre", "2026-05-25", 10.5, 4])
})

it("offers today and the six days before it, across a month's end", () =>
  expect(lastDays("2026-05-03")).toEqual([
    "2026-05-03",
    "2026-05-02",
    "2026-05-01",
    "2026-04-30",
    "2026-04-29",
    "2026-04-28",
    "2026-04-27",
  ]))

describe("a picking after the close", () => {
  it("is asked about, and says by whose close", () => {
    const {workbook} = createStore(farm)
    // North Bench closes on 29 May by the plan; nobody has closed it yet.
    expect(pickingLate(workbook, "North Bench", "2026-05-29")).toBe("")
    expect(pickingLate(workbook, "North Bench", "2026-05-30")).toBe(
      "North Bench closes on 29 May by the plan. Was it picked on 30 May?",
    )
  })

  it("is asked about where the planting was closed to fern", () => {
    const {workbook} = createStore(farm)
    const sheet = farm.sheets.findIndex(({name}) => name === "Plantings")
    const row = farm.sheets[sheet]!.rows.findIndex(([name]) => name === "North Bench")
    const col = farm.sheets[sheet]!.columns.findIndex(({part}) => part === "closed")
    workbook.revise({type: "enter", cells: [{at: {sheet, row, col}, content: "2026-05-20"}]})
    expect(pickingLate(workbook, "North Bench", "2026-05-20")).toBe("")
    expect(pickingLate(workbook, "North Bench", "2026-05-21")).toBe(
      "North Bench was closed to fern on 20 May. Was it picked on 21 May?",
    )
  })
})
