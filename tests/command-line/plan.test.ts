import {describe, expect, it} from "vitest"
import {main} from "../../src/command-line/plan"
import type {Document} from "../../src/workbook/document"
import {run, withFile} from "./shell"

/** Two plantings with a close, one that is not cut, one whose close cannot be worked out, and a blank row. */
const farm: Document = {
  name: "Hollow Brook",
  sheets: [
    {
      name: "Season plan",
      group: "Plan",
      columns: [
        {heading: "Planting", kind: "carried over", part: "planting"},
        {heading: "Age", kind: "worked out", part: "age"},
        {heading: "Open", kind: "typed", part: "open"},
        {heading: "Close", kind: "worked out", part: "close"},
        {heading: "Held by", kind: "worked out", part: "held by"},
        {heading: "Slack", kind: "worked out", part: "slack"},
        {heading: "Weeks", kind: "worked out", part: "weeks", formula: "=(D1-C1+1)/7"},
        {heading: "Crop", kind: "worked out", unit: "t", part: "crop"},
        {heading: "Low", kind: "worked out", unit: "t", part: "crop low"},
        {heading: "High", kind: "worked out", unit: "t", part: "crop high"},
      ],
      rows: [
        ["North Bench", 14, "2026-04-25", '="2026-06-02"+7', "spear size", 5, "=", 18.86, 15, 22.5],
        ["Long Acre", 9, "2026-04-25", "2026-06-19", "reserve", null, "=", 4.5, null, null],
        ["Sand Piece", 0, null, '=""', "planted this year"],
        ["Far Hill", 3, "2026-04-25", "=NA()", "=NA()"],
        [],
      ],
    },
    {
      name: "Named values",
      group: "Settings",
      names: true,
      columns: [
        {heading: "Name", kind: "typed"},
        {heading: "Value", kind: "typed"},
      ],
      rows: [["As_of", "2026-05-25"]],
    },
  ],
}

describe("plan", () => {
  it("prints an aligned table", async () => {
    const {out, err, status} = await withFile(farm, (path) => run(main, [path]))
    // North Bench: 25 April to 9 June are 46 days, 6.57 weeks; Long Acre to 19 June: 56 days, 8 weeks.
    expect(out).toEqual([
      "planting     age  opens       closes      held by            slack  weeks  expected kg        range kg",
      "North Bench   14  2026-04-25  2026-06-09  spear size             5    6.6        18860  15000 to 22500",
      "Long Acre      9  2026-04-25  2026-06-19  reserve                     8.0         4500",
      "Sand Piece     0              not cut     planted this year",
      "Far Hill       3  2026-04-25  not known   Not available yet",
      "",
      "Age: the planting year is 0. Closes: the last day of cutting. Slack: days to the next limit. The plan stands as of 2026-05-25.",
    ])
    expect([err, status]).toEqual([[], 0])
  })

  it("prints objects in JSON", async () => {
    const {out, status} = await withFile(farm, (path) => run(main, ["--json", path]))
    const seasons = JSON.parse(out.join("\n")) as Record<string, unknown>[]
    expect(seasons.map(({planting}) => planting)).toEqual([
      "North Bench",
      "Long Acre",
      "Sand Piece",
      "Far Hill",
    ])
    expect(seasons[1]).toEqual({
      planting: "Long Acre",
      age: 9,
      cut: true,
      opens: "2026-04-25",
      closes: "2026-06-19",
      heldBy: "reserve",
      slack: null,
      weeks: 8,
      expectedKg: 4500,
      lowKg: null,
      highKg: null,
    })
    expect(seasons[2]).toMatchObject({cut: false, opens: null, closes: null, heldBy: "planted this year"})
    expect(seasons[3]).toMatchObject({cut: null, closes: null, heldBy: "Not available yet"})
    expect(status).toBe(0)
  })

  it("says when a workbook has no plan, or one without plantings", async () => {
    const [season, ...others] = farm.sheets
    const none = await withFile({...farm, sheets: others}, (path) => run(main, [path]))
    expect(none.err).toEqual([
      expect.stringMatching(/farm\.json has no season plan: no column .* holds the close\.$/),
    ])
    expect(none.status).toBe(1)
    const empty = {...farm, sheets: [{...season!, rows: []}]}
    expect(await withFile(empty, (path) => run(main, [path]))).toEqual({
      out: ["The season plan has no plantings."],
      err: [],
      status: 0,
    })
    expect((await withFile(empty, (path) => run(main, [path, "--json"]))).out).toEqual(["[]"])
  })

  it.each([
    [[], "One workbook is needed. See --help."],
    [["a.json", "b.json"], "One workbook is needed. See --help."],
    [["--wide", "a.json"], "There is no option --wide. See --help."],
    [["/no/such.json"], "/no/such.json cannot be read: there is no such file."],
  ])("refuses %j", async (args, sentence) => {
    expect(await run(main, args)).toEqual({out: [], err: [sentence], status: 2})
  })

  it("refuses a file that is no workbook", async () => {
    const {err, status} = await withFile("{}", (path) => run(main, [path]))
    expect(err).toEqual([expect.stringMatching(/farm\.json: This is not a Fernledger workbook/)])
    expect(status).toBe(2)
  })
})
