import {afterEach, describe, expect, it, vi} from "vitest"
import {SEASON_CLOSE} from "../../../functions/season/close"
import {SEASON_PICKINGS} from "../../../functions/season/pickings"
import type {Document, Sheet} from "../../../src/workbook/document"
import {Workbook} from "../../../src/workbook/workbook"
import {column, documentOf, seeded, sheet as sheetOf} from "../documents"
import {anyEdit, below, farm as trial, seeds, valuesOf} from "../sessions"

afterEach(() => vi.restoreAllMocks())

/** One sheet holds two limits, the other a close, the pickings up to it, and an error with what rests on it. */
const season = (): Document => ({
  name: "Field",
  sheets: [
    {
      name: "Limits",
      group: "",
      columns: [
        {heading: "One", kind: "typed", format: "date"},
        {heading: "Other", kind: "typed", format: "date"},
      ],
      rows: [["2026-06-09", "2026-06-20"]],
    },
    {
      name: "Season",
      group: "",
      columns: [
        {
          heading: "Close",
          kind: "worked out",
          formula: '=SEASON.CLOSE({"a","b"},Limits!A1:B1)',
          format: "date",
        },
        {heading: "Pickings", kind: "worked out", formula: '=SEASON.PICKINGS("2026-04-20",A1,2)'},
        {heading: "Fault", kind: "worked out", formula: "=IF(Limits!B1>0,NA(),1)"},
        {
          heading: "After it",
          kind: "worked out",
          formula: '=IFERROR(C1,SEASON.PICKINGS("2026-04-20","2026-04-20",1))',
        },
      ],
      rows: [["=", "=", "=", "="]],
    },
  ],
})

const enter = (workbook: Workbook, col: number, content: string) =>
  workbook.revise({type: "enter", cells: [{at: {sheet: 0, row: 0, col}, content}]})

it("leaves alone what rests on a date or an error that came out as before", () => {
  const workbook = new Workbook(season())
  const closes = vi.spyOn(SEASON_CLOSE, "calculate")
  const pickings = vi.spyOn(SEASON_PICKINGS, "calculate")
  enter(workbook, 1, "2026-06-22")
  expect(closes).toHaveBeenCalledTimes(1)
  expect(pickings).not.toHaveBeenCalled()
})

it("goes on where the date has changed", () => {
  const workbook = new Workbook(season())
  const at = {sheet: 1, row: 0, col: 1}
  const before = workbook.valueAt(at)
  enter(workbook, 1, "2026-06-01")
  // 20 April to 9 June holds 26 pickings two days apart, to 1 June 22.
  expect([before, workbook.valueAt(at)]).toEqual([26, 22])
})

it("owes nothing when it is new, whatever the names it met before they were known", () => {
  const typed = {heading: "Typed", kind: "typed"} as const
  const pickings = {
    heading: "Pickings",
    kind: "worked out",
    formula: "=SEASON.PICKINGS(40001,40000+Days,1)",
  } as const
  const workbook = new Workbook({
    name: "Farm",
    sheets: [
      {name: "Plan", group: "", columns: [pickings], rows: [["="]]},
      {name: "Aside", group: "", columns: [typed], rows: [[1]]},
      {
        name: "Named",
        group: "",
        columns: [typed, typed],
        rows: [
          ["Days", "=Other*2"],
          ["Other", 3],
        ],
        names: true,
      },
    ],
  })
  const calculated = vi.spyOn(SEASON_PICKINGS, "calculate")
  workbook.revise({type: "enter", cells: [{at: {sheet: 1, row: 0, col: 0}, content: 2}]})
  expect(calculated).not.toHaveBeenCalled()
  expect(workbook.valueAt({sheet: 0, row: 0, col: 0})).toBe(6)
})

describe("what nobody looks at", () => {
  const typed = {heading: "Typed", kind: "typed"} as const
  const worked = (heading: string, formula: string) => ({heading, kind: "worked out", formula}) as const
  const sheet = (name: string, columns: Document["sheets"][number]["columns"], rows: unknown[][]) =>
    ({name, group: "", columns, rows}) as Document["sheets"][number]
  /** Looked at is Plan; it rests on Input and, through a name, on Named. Aside rests on Plan, and nothing on Aside. */
  const farm = (): Document => ({
    name: "Farm",
    sheets: [
      sheet("Plan", [worked("Sum", "=Input!A1+Share"), worked("Twice", "=A1*2")], [["=", "="]]),
      sheet("Input", [typed, typed], [[5, 1]]),
      sheet(
        "Aside",
        [worked("Of the plan", "=Plan!B1+1"), worked("Further", "=SEASON.PICKINGS(40001,40000+A1,1)")],
        [["=", "="]],
      ),
      {...sheet("Named", [{heading: "Name", kind: "typed"}, typed], [["Share", "=Input!B1"]]), names: true},
    ],
  })
  const cell = (sheet: number, col: number) => ({sheet, row: 0, col})
  const typing = (content: number) => ({type: "enter", cells: [{at: cell(1, 0), content}]}) as const

  it("is worked out when it is asked for, and not before", () => {
    const workbook = new Workbook(farm())
    const pickings = vi.spyOn(SEASON_PICKINGS, "calculate")
    workbook.revise(typing(7), 0)
    expect([workbook.valueAt(cell(0, 0)), workbook.valueAt(cell(0, 1))]).toEqual([8, 16])
    expect(pickings).not.toHaveBeenCalled()
    expect([workbook.valueAt(cell(2, 0)), workbook.valueAt(cell(2, 1))]).toEqual([17, 17])
    expect(pickings).toHaveBeenCalledTimes(1)
  })

  it("is told at once where nothing that it rests on has changed", () => {
    const [plan, input, aside, named] = farm().sheets as [Sheet, Sheet, Sheet, Sheet]
    const apart = sheet("Apart", [typed, worked("Of its own", "=A1+1")], [[3, "="]])
    const workbook = new Workbook({name: "Farm", sheets: [plan, input, aside, named, apart]})
    const pickings = vi.spyOn(SEASON_PICKINGS, "calculate")
    workbook.revise(typing(7), 0)
    expect(workbook.valueAt({sheet: 4, row: 0, col: 1})).toBe(4)
    expect(pickings).not.toHaveBeenCalled()
  })

  it.each([
    ["a formula that points to it", (workbook: Workbook) => workbook.evaluate("=Aside!A1", 0), 17],
    ["a formula on its own sheet", (workbook: Workbook) => workbook.evaluate("=A1", 2), 17],
    ["the next edit", (workbook: Workbook) => (workbook.revise(typing(8)), workbook.valueAt(cell(2, 0))), 19],
    [
      "an earlier document",
      (workbook: Workbook) => (workbook.show(farm(), 0), workbook.valueAt(cell(2, 0))),
      13,
    ],
  ])("is up to date for %s", (_, ask, value) => {
    const workbook = new Workbook(farm())
    workbook.revise(typing(7), 0)
    expect(ask(workbook)).toBe(value)
  })

  it("is among the changes, in the order of the sheets", () => {
    const workbook = new Workbook(farm())
    workbook.revise(typing(7), 0)
    expect(workbook.changes.map(({at, was, now}) => [at.sheet, at.col, was, now])).toEqual([
      [0, 0, 6, 8],
      [0, 1, 12, 16],
      [2, 0, 13, 17],
      [2, 1, 13, 17],
    ])
  })

  it("waits for a row that comes at the end of a sheet too, and forgets one that goes", () => {
    const farmWithTotal = farm()
    const [plan, ...others] = farmWithTotal.sheets
    const document = {
      ...farmWithTotal,
      sheets: [
        sheet("Plan", [worked("Sum", "=SUM(Input!A:A)"), plan!.columns[1]!], plan!.rows as never),
        ...others,
      ],
    }
    const workbook = new Workbook(document)
    const pickings = vi.spyOn(SEASON_PICKINGS, "calculate")
    workbook.revise({type: "enter", cells: [{at: {sheet: 1, row: 1, col: 0}, content: 2}]}, 0)
    const nextRow = {sheet: 1, row: 2, col: 0}
    workbook.revise({type: "enter", cells: [{at: nextRow, content: "=A2*2"}]}, 0)
    expect([workbook.valueAt(cell(0, 0)), workbook.valueAt(nextRow)]).toEqual([11, 4])
    expect(pickings).not.toHaveBeenCalled() // what waits goes on waiting while the same sheet is looked at
    expect(workbook.changes.map(({at, was, now}) => [at.sheet, at.col, was, now])).toEqual([
      [0, 0, 7, 11],
      [0, 1, 14, 22],
      [2, 0, 11, 23],
      [2, 1, 11, 23],
    ])
    workbook.show(document, 0)
    expect([workbook.valueAt(cell(0, 0)), workbook.valueAt(nextRow)]).toEqual([5, null])
  })

  it("is worked out a little at a time, and told as if at once", () => {
    const chain = documentOf(
      sheetOf("Plan", [column("Twice", {formula: "=Input!A1*2"})], [["="]]),
      sheetOf("Input", ["A"], [[1]]),
      sheetOf(
        "Aside",
        [
          column("Sum", {formula: "=Input!A1+D1"}), // rests on one that comes after it
          column("Further", {formula: "=A1+1"}),
          column("Between", {formula: "=Input!A1*10"}),
          column("Last", {formula: "=C1+1"}),
        ],
        [["=", "=", "=", "="]],
      ),
    )
    const atOnce = new Workbook(chain)
    atOnce.revise(typing(4))
    const workbook = new Workbook(chain)
    workbook.revise(typing(4), 0)
    expect(workbook.isOwing).toBe(true)
    let times = 1
    while (!workbook.settleFor(0)) times++
    expect(times).toBeGreaterThan(2)
    expect(workbook.isOwing).toBe(false)
    expect(valuesOf(workbook)).toEqual(valuesOf(atOnce))
    expect(workbook.changes).toEqual(atOnce.changes)

    workbook.revise(typing(6), 0)
    expect(workbook.settleFor(0)).toBe(false)
    workbook.revise(typing(7), 0) // while some of the act before is left
    expect(workbook.valueAt(cell(0, 0))).toBe(14)
    expect(valuesOf(workbook)).toEqual(valuesOf(new Workbook(workbook.document)))
  })

  it("gives what a new workbook gives, whatever waited through however many acts", () => {
    for (const seed of seeds(25)) {
      const random = seeded(seed)
      const workbook = new Workbook(trial)
      let open = 0
      for (let act = 0; act < 8; act++) {
        if (random() < 0.3) open = below(random, workbook.document.sheets.length)
        open = Math.min(open, workbook.document.sheets.length - 1)
        workbook.revise(anyEdit(random, workbook.document), open)
        for (let times = below(random, 5); times > 1; times--) workbook.settleFor(0)
        if (random() < 0.3)
          expect(valuesOf(workbook), `seed ${seed}`).toEqual(valuesOf(new Workbook(workbook.document)))
      }
      expect(valuesOf(workbook), `seed ${seed}`).toEqual(valuesOf(new Workbook(workbook.document)))
    }
  }, 60_000)

  it("lets what only other names rest on wait, and tells no old value of a name", () => {
    const named = documentOf(
      sheetOf("Plan", [column("Twice", {formula: "=Rate*2"})], [["="]]),
      sheetOf("Input", ["A"], [[1]]),
      sheetOf("Sums", [column("B", {formula: "=Input!A1*10"})], [["="]]),
      sheetOf(
        "Names",
        ["Name", "Value"],
        [
          ["Rate", "=Input!A1"],
          ["Total", "=Sums!A1"],
        ],
        {names: true},
      ),
    )
    const workbook = new Workbook(named)
    workbook.revise({type: "enter", cells: [{at: cell(1, 0), content: 4}]}, 0)
    expect(workbook.valueAt(cell(0, 0))).toBe(8)
    expect(workbook.valueAt({sheet: 3, row: 1, col: 1})).toBe(40)
  })

  it("does not keep a formula waiting that the open sheet rests on by a name", () => {
    const workbook = new Workbook(farm())
    workbook.revise({type: "enter", cells: [{at: cell(1, 1), content: 3}]}, 0)
    expect(workbook.valueAt(cell(0, 0))).toBe(8)
  })
})
