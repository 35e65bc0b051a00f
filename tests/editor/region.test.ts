import {describe, expect, it} from "vitest"
import {checkWords} from "../../src/editor/checks"
import {copyChosen, pasteTable, readTable} from "../../src/editor/clipboard"
import {enterContent} from "../../src/editor/commands/cells"
import {changeRegion} from "../../src/editor/commands/region"
import {callAt, offersAt, withOffer} from "../../src/editor/completion"
import {bracketsIn} from "../../src/editor/brackets"
import {keepEditing, lineText, startTyping, typeText} from "../../src/editor/editing"
import {readEntry, readsAs, troublesIn} from "../../src/editor/entry"
import {chooseBlock} from "../../src/editor/block"
import {pickingOdd, spearSizes, spearSizeText} from "../../src/editor/field"
import {findIn} from "../../src/editor/find"
import {withNextFixed} from "../../src/editor/fixing"
import {canPoint, pointAt} from "../../src/editor/pointing"
import {replaceEdit, replacementsOf} from "../../src/editor/replace"
import {choose} from "../../src/editor/selection"
import {createStore, type Store} from "../../src/editor/store"
import {summaryOf} from "../../src/editor/summary"
import {cellViewAt, numberedReferences, TOTAL_ROW} from "../../src/views/cellView"
import {contentAt, type Region} from "../../src/workbook/document"
import {readFile, writeFile} from "../../src/workbook/file"
import {originOf} from "../../src/workbook/trace"
import {cellAt, column, documentOf, sheet} from "../workbook/documents"

const COMMA: Region = {decimal: ","}
const US: Region = {measures: "US"}

const farm = documentOf(
  sheet(
    "Plan",
    [
      "Planting",
      column("Yield", {unit: "kg/ha", format: 0, total: "=SUM(B:B)", rule: {least: 0, most: 20_000}}),
      column("Diameter", {unit: "mm", format: 1, rule: {least: 1, most: 60}}),
      column("Air", {unit: "°C", format: 1}),
      column("Price", {unit: "money/kg"}),
      column("Twice", {unit: "kg/ha", format: 1, formula: "=ROUND(B1*1.5,1)"}),
      column("Day", {format: "date"}),
      column("Sugar", {unit: "mg/g", format: 0}),
      "Note",
    ],
    [
      ["Long Acre", 4500, 9.5, 14.5, 2.1, "=", "2026-04-25", 409, "a,b"],
      ["Well Field", 3700, 11, 21, 2, "=", "2026-04-27", 388, 2.5],
    ],
  ),
  sheet(
    "Named values",
    ["Name", "Value", "Unit"],
    [
      ["Pick_cost", 0.8, "money/kg"],
      ["As_of", "2026-05-02", "date"],
      ["Floor", 2000, "kg/ha"],
    ],
    {names: true},
  ),
)

function storeIn(region: Region): Store {
  const store = createStore(farm)
  store.run(
    changeRegion({decimal: undefined, measures: undefined, currency: undefined, dates: undefined, ...region}),
  )
  return store
}

function type(store: Store, address: string, text: string): Store {
  store.turn(choose(cellAt(address)))
  store.turn(startTyping(text))
  keepEditing(store, 0, 0)
  return store
}
const content = (store: Store, address: string) => contentAt(store.getState().document, cellAt(address))
const refusal = (store: Store) => store.getState().editing?.refused ?? null
const text = (store: Store, address: string) => cellViewAt(store, cellAt(address)).text
const line = (store: Store, address: string) => lineText(store.getState().document, cellAt(address))

describe("the region of a workbook", () => {
  it("is an act that can be undone, named in the history, and leaves the rest alone", () => {
    const store = storeIn({...US, currency: "$"})
    const {document, undoable} = store.getState()
    expect(undoable.map(({name}) => name)).toEqual([
      "region and units: decimal point, US measures, money in $",
    ])
    expect(document).toEqual({...farm, region: {measures: "US", currency: "$"}})
    expect(document.sheets).toBe(farm.sheets)
    store.undo()
    expect(store.getState().document).toBe(farm)
  })

  it("switched to US measures and back leaves the file as it was, byte by byte", () => {
    const store = createStore(farm)
    store.run(changeRegion({measures: "US"}))
    store.run(changeRegion({measures: undefined}))
    expect(writeFile(store.getState().document)).toBe(writeFile(farm))
    expect(store.getState().document.sheets).toBe(farm.sheets)
  })

  it("is nothing to do where it is so already", () => {
    const store = createStore(farm)
    expect(store.canRun(changeRegion({measures: undefined}))).toBe(false)
    expect(store.run(changeRegion({decimal: ","}))).toBe(true)
    expect(store.canRun(changeRegion({decimal: ","}))).toBe(false)
  })

  it("is kept in the file", () => {
    const {document} = storeIn({decimal: ",", measures: "US", currency: "€", dates: "day first"}).getState()
    expect(readFile(writeFile(document))).toEqual({document})
  })
})

describe("a number where decimals take a comma", () => {
  const read = (typed: string, at = farm.sheets[0]!.columns[2]!) =>
    readEntry(typed, at, 2026, () => null, {region: COMMA})

  it.each([
    ["9,5", 9.5],
    ["0,25", "Diameter 0,25 mm is below 1 mm"],
    ["12", 12],
    ["9,5 mm", 9.5],
    ["98,5", "Diameter 98,5 mm is above 60 mm (did you mean 9,85 mm?)"],
    ["1.5", "“1.5” could be 1,5 or 15; type a comma for decimals, or leave the point out"],
    ["1.2,5", "“1.2,5” is not one number"],
  ] as const)("%s", (typed, expected) =>
    expect(read(typed)).toEqual(typeof expected === "number" ? {content: expected} : {refused: expected}),
  )

  it("has thousands parted by points or spaces, in proper groups", () => {
    const yields = farm.sheets[0]!.columns[1]!
    expect(
      ["4.500", "4 500", "4.500,25", "1.234.567,5"].map((one) => read(one, {...yields, rule: {}})),
    ).toEqual([4500, 4500, 4500.25, 1234567.5].map((value) => ({content: value})))
  })

  it("is shown and read back with its comma, and a share too", () => {
    const store = storeIn(COMMA)
    expect([text(store, "B1"), text(store, "C1"), text(store, "I2"), line(store, "C1")]).toEqual([
      "4\u202f500",
      "9,5",
      "2,5",
      "9,5",
    ])
    expect(readsAs(0.125, column("Share", {format: "share"}), null, COMMA)).toBe("12,5%")
    expect(content(type(store, "C1", "10,25"), "C1")).toBe(10.25)
  })
})

describe("what stands in the line", () => {
  const contents = [
    1.5,
    -2000.25,
    0,
    12,
    1e-7,
    1e21,
    "1,5",
    "1.5",
    "4 500",
    "12 lb",
    "007",
    "TRUE",
    true,
    null,
    "2026-04-25",
  ]
  it.each([COMMA, US, {decimal: ",", measures: "US", currency: "€"}] as const)(
    "reads back in region %o",
    (region) => {
      const free = column("Note")
      for (const one of contents) {
        const shown = readsAs(one, free, null, region)
        expect(
          readEntry(shown, free, 2026, () => null, {region}),
          shown,
        ).toEqual({content: one})
      }
    },
  )
})

describe("a date of two meanings", () => {
  const day = (dates?: "day first" | "month first") =>
    readEntry("03/04/2026", column("Day", {format: "date"}), 2026, () => null, {region: dates ? {dates} : {}})

  it("is asked about, unless the workbook says which number is the day", () => {
    expect(day()).toMatchObject({
      refused: "“03/04/2026” could be 3 Apr 2026 or 4 Mar 2026; type the month in letters",
    })
    expect(day("day first")).toEqual({content: "2026-04-03"})
    expect(day("month first")).toEqual({content: "2026-03-04"})
  })
})

describe("a formula where decimals take a comma", () => {
  it("is typed and shown with “;” between arguments, and stored in the one way", () => {
    const store = type(storeIn(COMMA), "I1", "=round(B1*1,5;1)")
    expect(content(store, "I1")).toBe("=ROUND(B1*1.5,1)")
    expect(line(store, "I1")).toBe("=ROUND(B1*1,5;1)")
    expect(text(store, "I1")).toBe("6\u202f750")
    expect(originOf(store.workbook, cellAt("I1")).inWords).toBe("ROUND(‹Yield›*1,5;1)")
  })

  it("that reads two ways is refused with both, and kept with its decimals when asked again", () => {
    const store = type(storeIn(COMMA), "I1", "=SUM(1,2)")
    expect(refusal(store)).toBe(
      "“=SUM(1,2)” reads two ways: with a decimal comma it is =SUM(1,2), which a point writes =SUM(1.2); with a comma between arguments it is =SUM(1;2). Type “;” between arguments, or press Enter again for the decimal comma",
    )
    expect(content(store, "I1")).toBe("a,b")
    keepEditing(store, 0, 0)
    expect(content(store, "I1")).toBe("=SUM(1.2)")
  })

  it("is refused again when it is typed anew", () => {
    const store = type(storeIn(COMMA), "I1", "=SUM(1,2)")
    store.turn(typeText("=SUM(1,3)", 9))
    keepEditing(store, 0, 0)
    expect(refusal(store)).toContain("reads two ways")
  })

  it.each(["=B1*1,5", "=ABS(-1,5)", "=SUM(SQRT(B1*2,5))", "=ROUND(B1*1,5;1)", "=SUM(B1:B2)", '="a,b"&B1'])(
    "%s reads one way",
    (typed) => expect(refusal(type(storeIn(COMMA), "I1", typed))).toBeNull(),
  )

  it.each([
    ["=SUM(B1,B2)", "=SUM(B1;B2)"],
    ["=ROUND(B1*1.5,1)", "=ROUND(B1*1,5;1)"],
    ["=IF(B1>1,2,3)", "=IF(B1>1;2;3)"],
  ])("%s, written the other way, is refused with what it would be", (typed, meant) =>
    expect(refusal(type(storeIn(COMMA), "I1", typed))).toBe(
      `This formula cannot be read: decimals take a comma here, and arguments are parted by “;” (did you mean ${meant}?)`,
    ),
  )

  it("written for a comma is refused with what it would be where decimals take a point", () =>
    expect(refusal(type(storeIn({}), "I1", "=ROUND(B1*1,5;1)"))).toBe(
      "This formula cannot be read: arguments are parted by commas here, not by “;” (did you mean =ROUND(B1*1.5,1)?)",
    ))

  it("is told while it is typed what is off, at its place", () => {
    const {workbook} = storeIn(COMMA)
    const functions = new Set(workbook.standardFunctions)
    const off = (typed: string) =>
      troublesIn(typed, (one) => workbook.normalized(one), functions, workbook.document, ",")
    expect(off("=ROUND(B1*1,5;1)")).toEqual([])
    expect(off("=SUM(B1,B2)").map(({places}) => places.map(({start}) => start))).toEqual([[7]])
    expect(off("=ROUNDD(1,5;1)").map(({words}) => words)).toEqual([
      "There is no function ROUNDD (did you mean ROUND?)",
    ])
  })

  it("is completed, hinted at, fixed, coloured and pointed into by its own signs", () => {
    const typed = "=ROUND(1,5;B1"
    expect(callAt(typed, typed.length, ",")).toMatchObject({name: "ROUND", argument: 1})
    expect(callAt("=ROUND(1,5", 10, ",")).toMatchObject({name: "ROUND", argument: 0})
    const [offer] = offersAt("=ROUND(1,5;SPEAR.HE", 19, [], [], ",")
    expect(withOffer("=ROUND(1,5;SPEAR.HE", 19, offer!, ",").text).toBe("=ROUND(1,5;SPEAR.HEAT(")
    expect(withNextFixed(typed, typed.length, ",")?.text).toBe("=ROUND(1,5;$B$1")
    expect([...numberedReferences("=ROUND(1,5;B1;B2)", ",").keys()]).toEqual(["B1", "B2"])
    expect(bracketsIn("=ROUND(1,5;{1;2|3;4})", ",")).toMatchObject({unclosed: [], extra: []})
    expect([
      canPoint("=ROUND(1,5;", 11, ","),
      canPoint("=ROUND(B1,", 10, ","),
      canPoint("=ROUND(B1;", 10),
    ]).toEqual([true, false, false])
  })

  it("takes the cell that is pointed at", () => {
    const store = storeIn(COMMA)
    store.turn(choose(cellAt("I1")))
    store.turn(startTyping("=ROUND(1,5;"))
    store.turn(pointAt(cellAt("B2")))
    expect(store.getState().editing?.text).toBe("=ROUND(1,5;B2")
  })

  it("is found and replaced as it is shown", () => {
    const store = type(storeIn(COMMA), "I1", "=ROUND(B1*1,5;1)")
    const search = {query: "1,5;1", where: "formulas", wholeCell: false, matchCase: false, sheet: 0} as const
    const hits = findIn(store.workbook, search)
    expect(hits.map(({text}) => text)).toEqual(["=ROUND(B1*1,5;1)", "=ROUND(B1*1,5;1)", "=ROUND(B2*1,5;1)"])
    const replaced = replacementsOf(store.workbook, hits, search, "2,5;0")
    store.run(() => replaceEdit(replaced, search.query, "2,5;0"))
    expect(content(store, "I1")).toBe("=ROUND(B1*2.5,0)")
  })
})

describe("a table that is pasted where decimals take a comma", () => {
  const paste = (store: Store, address: string, plain: string) => {
    store.turn(choose(cellAt(address)))
    pasteTable(store, readTable(plain))
    return store
  }

  it("is taken as it is written there", () => {
    const store = paste(storeIn(COMMA), "C1", "9,25\r\n10,5")
    expect([content(store, "C1"), content(store, "C2")]).toEqual([9.25, 10.5])
  })

  it("with points for decimals is taken whole, and it is told", () => {
    const store = paste(storeIn(COMMA), "C1", "9.25\r\n10.5")
    expect([content(store, "C1"), content(store, "C2")]).toEqual([9.25, 10.5])
    expect(store.getState().said).toContain("Points were taken as decimal commas.")
  })

  it("with both signs is not guessed", () => {
    const store = paste(storeIn(COMMA), "C1", "9.25\r\n10,5")
    expect(store.getState().question?.asks).toContain("“9.25” could be 9,25 or 925")
    expect(content(store, "C1")).toBe(9.5)
  })
})

describe("US measures", () => {
  it("show every number in their units, and mg/g as it is", () => {
    const store = storeIn({...US, currency: "$"})
    expect(["B1", "C1", "D1", "E1", "F1", "H1"].map((at) => text(store, at))).toEqual([
      "4\u202f015", // 4500 × 0.892179 = 4014.8
      "0.374", // 9.5 / 25.4 = 0.37402
      "58.1", // 14.5 × 1.8 + 32 = 58.1
      "0.9525", // 2.1 × 0.45359237 = 0.952543977
      "6\u202f022.2", // 6750 × 0.892179 = 6022.2
      "409",
    ])
    expect(["B1", "C1", "D1", "E1", "H1"].map((at) => cellViewAt(store, cellAt(at)).unit)).toEqual([
      "lb/ac",
      "in",
      "°F",
      "$/lb",
      "mg/g",
    ])
    const total = cellViewAt(store, {sheet: 0, row: TOTAL_ROW, col: 1})
    expect(total.text).toBe("7\u202f316") // 8200 × 0.892179 = 7315.9
  })

  it("are stored metric when they are typed, and read back as typed", () => {
    const store = type(storeIn(US), "B1", "4,015")
    expect(content(store, "B1")).toBeCloseTo((4015 * 0.45359237) / 0.40468564224, 9)
    expect([text(store, "B1"), line(store, "B1")]).toEqual(["4\u202f015", "4015"])
    expect(content(type(store, "D1", "50"), "D1")).toBe(10)
    type(store, "C1", "0.0625")
    expect([content(store, "C1"), line(store, "C1")]).toEqual([1.5875, "0.0625"]) // a sixteenth of 25.4 mm
  })

  it("take sixteenths of an inch", () => {
    const store = storeIn(US)
    expect(content(type(store, "C1", "7/16"), "C1")).toBeCloseTo((7 * 25.4) / 16, 12)
    expect(content(type(store, "C1", "1 3/8 in"), "C1")).toBeCloseTo(34.925, 12)
  })

  it("turn a number that has a unit of its own", () => {
    const us = storeIn({...US, currency: "$"})
    expect(content(type(us, "B1", "4400 kg/ha"), "B1")).toBe(4400)
    expect(content(type(us, "D1", "10 °C"), "D1")).toBe(10)
    expect(content(type(us, "E1", "$2.20/kg"), "E1")).toBe(2.2)
    expect(content(type(us, "E1", "1 $/lb"), "E1")).toBeCloseTo(1 / 0.45359237, 12)
    expect(refusal(type(us, "B1", "12 days"))).toBe(
      "“days” is not the unit here: Yield takes a number in lb/ac",
    )
    expect(content(type(us, "B1", "2 ton/ac"), "B1")).toBeCloseTo(4483.4, 1) // 4000 / 0.892179
    expect(refusal(type(storeIn({}), "B1", "2 ton/ha"))).toContain("“ton/ha” is not the unit here")
    expect(content(type(storeIn({}), "B1", "4015 lb/ac"), "B1")).toBeCloseTo(4500.22, 2) // 4015 / 0.892179
  })

  it("name a limit in their units", () => {
    const store = storeIn(US)
    // 60 mm / 25.4 = 2.36220 in; 20 000 kg/ha × 0.892179 = 17 843.58 lb/ac; 1 mm / 25.4 = 0.0393701 in.
    expect(refusal(type(store, "C1", "3"))).toBe("Diameter 3 in is above 2.362 in (did you mean 0.3 in?)")
    expect(refusal(type(store, "B1", "20000"))).toContain(
      "Yield 20\u202f000 lb/ac is above 17\u202f843.6 lb/ac",
    )
    expect(refusal(type(store, "C1", "0.039"))).toBe("Diameter 0.039 in is below 0.03937 in")
    // What reads as the limit is taken, though it is 59.9948 mm, or 0.999998 mm.
    expect(content(type(store, "C1", "2.362"), "C1")).toBeCloseTo(59.9948, 10)
    expect(content(type(store, "C1", "0.03937"), "C1")).toBeCloseTo(0.999998, 10)
  })

  it("show a named value and its unit, and take both", () => {
    const store = storeIn({...US, currency: "$"})
    expect(["1!B1", "1!C1", "1!B2", "1!C2"].map((at) => text(store, at))).toEqual([
      "0.3629", // 0.8 × 0.45359237 = 0.362873896
      "$/lb",
      "2 May 2026",
      "date",
    ])
    expect(content(type(store, "1!C3", "lb/ac"), "1!C3")).toBe("kg/ha")
    expect(content(type(store, "1!B3", "1000 kg/ha"), "1!B3")).toBe(1000)
    expect(line(store, "1!C1")).toBe("$/lb")
  })

  it("are summed as they are shown, temperatures too", () => {
    const store = storeIn(US)
    const sum = (from: string, to: string) => {
      const [a, b] = [cellAt(from), cellAt(to)]
      store.turn(chooseBlock({sheet: 0, rows: [a.row, b.row], cols: [a.col, b.col]}))
      return summaryOf(store)
    }
    expect(sum("B1", "B2")).toContain("sum 7\u202f316\u00a0lb/ac, mean 3\u202f657.9\u00a0lb/ac")
    // 14.5 °C is 58.1 °F and 21 °C is 69.8 °F: their mean 63.95.
    expect(sum("D1", "D2")).toContain("mean 63.95\u00a0°F, 58.1\u00a0°F to 69.8\u00a0°F")
  })

  it("are copied as they are shown, and pasted here as they are stored", () => {
    const store = storeIn({...US, decimal: ","})
    store.turn(choose(cellAt("C1")))
    const {plain} = copyChosen(store)
    expect(plain).toBe("0,374015748031") // 9.5 / 25.4, to twelve digits
    store.turn(choose(cellAt("C2")))
    pasteTable(store, readTable(plain))
    expect(content(store, "C2")).toBe(9.5)
    // To the last digit, which what is shown does not have.
    store.run(enterContent(cellAt("C1"), 100 / 7))
    store.turn(choose(cellAt("C1")))
    const again = copyChosen(store)
    store.turn(choose(cellAt("C2")))
    pasteTable(store, readTable(again.plain))
    expect(content(store, "C2")).toBe(100 / 7)
  })

  it("are those of the words of checks", () => {
    const {workbook} = storeIn(US)
    expect(checkWords(workbook).shown(cellAt("B1"), 4500)).toBe("4\u202f015\u00a0lb/ac")
    expect(checkWords(workbook).shown(cellAt("1!B3"), 2000)).toBe("1\u202f784.4\u00a0lb/ac") // 2000 × 0.892179
  })

  it("leave what stands there alone when it is kept unchanged", () => {
    const store = storeIn(US)
    store.turn(choose(cellAt("B1")))
    store.turn(startTyping(line(store, "B1")))
    keepEditing(store, 0, 0)
    expect([content(store, "B1"), store.getState().undoable.length]).toEqual([4500, 1])
  })
})

describe("the field page", () => {
  it("counts spears by sixteenths of an inch where measures are of the US", () => {
    const sizes = spearSizes(US)
    expect([sizes[0], sizes.at(-1)]).toEqual([3.175, 31.75]) // 2/16 and 20/16 of 25.4 mm
    expect(sizes.slice(0, 3).map((mm) => spearSizeText(mm, US))).toEqual(["2/16", "3/16", "4/16"])
    expect(
      spearSizes({})
        .map((mm) => spearSizeText(mm, {}))
        .join(" "),
    ).toMatch(/^3 4 5 .* 30$/)
  })

  it("asks of an odd weight in the units that are shown", () => {
    const planting = {name: "Long Acre", area: 1, last: null, usual: null}
    // 2000 kg / 0.45359237 = 4409.2 lb; 2000 kg/ha × 0.892179 = 1784.4 lb/ac.
    expect(pickingOdd(planting, 2000, US)).toBe(
      "1\u202f784 lb/ac in one picking of Long Acre is more than fields give. Is it 4\u202f409 lb?",
    )
    expect(pickingOdd(planting, 2000)).toContain("2\u202f000 kg/ha in one picking")
  })
})
