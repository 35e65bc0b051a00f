import * as fc from "fast-check"
import {describe, expect, it} from "vitest"
import {seasonCalendar} from "../../../src/views/pictures/calendarLayout"
import {calendarFinding, calendarSentence, calendarTable} from "../../../src/views/pictures/calendarWords"
import {textWidth} from "../../../src/views/pictures/placing"
import {day, everyDay, planRow, planWith, sixWeeks} from "./plans"

const layout = seasonCalendar(sixWeeks, {width: 440, selected: 2})
const [longAcre, sandPiece] = layout.rows

describe("the axis", () => {
  it("runs over whole weeks, 10 px free at both ends", () => {
    // (440 - 2 * 10) / 42 days
    expect(layout.axis).toEqual({first: day("04-27"), end: day("06-08"), perDay: 10})
    expect(layout.weeks.map(({x}) => x)).toEqual([10, 80, 150, 220, 290, 360])
  })

  it("names each week by its Monday and its number, and each month once", () => {
    expect(layout.weeks.map(({date}) => date)).toEqual(["27", "4", "11", "18", "25", "1"])
    expect(layout.weeks.map(({number}) => number)).toEqual(["w18", "19", "20", "21", "22", "23"])
    expect(layout.weeks.map(({month}) => month)).toEqual(["Apr", "May", null, null, null, "Jun"])
  })

  it("thins out the words of a narrow picture, never the weeks", () => {
    const {weeks} = seasonCalendar(sixWeeks, {width: 140})
    // 120 px / 6 weeks = 20 px a week, less than "w18" and its gap take
    expect(weeks.map(({date}) => date)).toEqual(["27", null, "11", null, "25", null])
    expect(weeks).toHaveLength(6)
  })

  it("spans a winter, and says which January where there is room", () => {
    const plan = planWith([
      planRow(0, "Bush Block", ["2026-09-07", "2027-01-10"], "reserve", {reserve: "2027-01-10"}),
    ])
    const months = (width: number) =>
      seasonCalendar(plan, {width}).weeks.flatMap(({month}) => (month === null ? [] : [month]))
    const {weeks, axis} = seasonCalendar(plan, {width: 500})
    expect(axis).toMatchObject({first: day("2026-09-07"), end: day("2027-01-11")})
    expect(weeks.at(-1)).toMatchObject({day: day("2027-01-04"), week: 1})
    expect(months(500)).toEqual(["Sep 2026", "Oct", "Nov", "Dec", "Jan"])
    expect(months(1300)).toEqual(["Sep 2026", "Oct", "Nov", "Dec", "Jan 2027"])
  })

  it("stops after 30 weeks and keeps a mark beyond it at the edge", () => {
    const plan = planWith([
      planRow(0, "A", ["04-27", "06-06"], "reserve", {reserve: "06-06", "last date": "2062-06-01"}),
      planRow(1, "B", ["04-28", "06-07"], "price", {price: "06-07"}),
    ])
    const {axis, rows} = seasonCalendar(plan, {width: 440})
    expect(axis).toMatchObject({first: day("04-27"), end: day("04-27") + 210})
    expect(rows[0]!.marks.find(({name}) => name === "last date")).toMatchObject({x: 430, beyond: "after"})
    expect(rows[0]!.marks.find(({binding}) => binding)).toMatchObject({beyond: null})
  })
})

describe("a planting's bar", () => {
  it("is filled before the as-of day and outlined from it to the end of the last day of cutting", () => {
    // 27 April to 10 May: 14 days; 11 to 17 May: 7 days
    expect(longAcre).toMatchObject({past: {x: 10, width: 140}, toCome: {x: 150, width: 70}})
    expect(sandPiece).toMatchObject({past: {x: 80, width: 70}, toCome: {x: 150, width: 280}})
    expect(layout.asOf).toMatchObject({x: 150, beyond: false, words: {text: "as of 11 May"}})
  })

  it("keeps the height of its row in the sheet, blank rows too", () => {
    // 70 px head, 36 px a row
    expect(layout.rows.map(({y}) => y)).toEqual([70, 142])
    expect(layout.height).toBe(70 + 4 * 36)
    expect(seasonCalendar(sixWeeks, {width: 440, sheetRows: 9}).height).toBe(70 + 10 * 36)
  })

  it("closes the gaps and prints its name where the picture stands alone", () => {
    const {rows, height} = seasonCalendar(sixWeeks, {
      width: 440,
      labels: "inside",
      headHeight: 80,
      rowHeight: 40,
    })
    expect(rows.map(({y, name}) => [y, name?.text])).toEqual([
      [80, "Long Acre"],
      [120, "Sand Piece"],
    ])
    expect(rows[0]!.words!.text).toBe("17 May, reserve")
    expect(height).toBe(200)
  })

  it("marks the selected row", () => {
    expect(layout.rows.map(({selected}) => selected)).toEqual([false, true])
  })

  it("is outlined as a whole without an as-of day", () => {
    const {rows, asOf} = seasonCalendar({...sixWeeks, asOf: null}, {width: 440})
    expect(rows[0]).toMatchObject({past: null, toCome: {x: 10, width: 210}})
    expect(asOf).toBeNull()
  })

  it("says where the as-of day is when the season is over or has not begun", () => {
    const at = (asOf: string) =>
      seasonCalendar({...sixWeeks, asOf: day(asOf)}, {width: 440, labels: "inside"})
    expect(at("07-01").asOf).toMatchObject({beyond: true, words: {text: "as of 1 Jul \u2192", end: true}})
    expect(at("03-01").asOf).toMatchObject({beyond: true, words: {text: "\u2190 as of 1 Mar"}})
    expect(at("07-01").rows[0]).toMatchObject({past: {x: 10, width: 210}, toCome: null})
    expect(at("07-01").rows[0]!.words!.text).toBe("past its close 17 May, reserve")
  })

  it("has the width of a day in a season of one day", () => {
    const one = planWith([planRow(0, "A", ["04-29", "04-29"], "frost")])
    // one week, 70 px: Wednesday is its third day
    const {rows, axis} = seasonCalendar(one, {width: 90})
    expect(axis?.perDay).toBe(10)
    expect(rows[0]).toMatchObject({toCome: {x: 30, width: 10}, marks: [{x: 35, name: "frost"}]})
  })
})

describe("the marks", () => {
  it("stand in the middle of their days, the one that holds at the close", () => {
    // 17 May: 20 days after the first, 10 + 205 px; 21 May: 10 + 245 px
    expect(longAcre!.marks.map(({name, x, binding}) => [name, x, binding])).toEqual([
      ["reserve", 215, true],
      ["weeks for its age", 255, false],
    ])
    expect(longAcre!.tail).toEqual({x: 215, width: 40})
    expect(longAcre!.words).toMatchObject({text: "reserve", x: 217, end: false})
  })

  it("name the limit to the left where the right has no room", () => {
    // the mark stands at 425 of 440 px
    expect(sandPiece!.words).toMatchObject({text: "price", x: 427, end: true})
    expect(sandPiece!.tail).toBeNull()
  })

  it("say that a close before the as-of day is past", () => {
    const {rows} = seasonCalendar({...sixWeeks, asOf: day("05-18")}, {width: 440})
    expect(rows.map(({words}) => words!.text)).toEqual(["past its close, reserve", "price"])
    const closed = {...sixWeeks, rows: sixWeeks.rows.map((row) => ({...row, isClosed: true}))}
    const words = seasonCalendar({...closed, asOf: day("05-18")}, {width: 440}).rows.map(
      ({words}) => words!.text,
    )
    expect(words).toEqual(["closed to fern, reserve", "price"])
    // On the day of the close itself there is still cutting to come.
    const onTheDay = seasonCalendar({...sixWeeks, asOf: day("05-17")}, {width: 440}).rows[0]!
    expect(onTheDay).toMatchObject({words: {text: "reserve"}, toCome: {width: 10}})
  })

  it("give a close that was typed over to you, and keep what it passes", () => {
    const row = planRow(0, "Well Field", ["04-27", "06-01"], "reserve", {
      reserve: "05-20",
      crew: "06-05",
      price: null,
    })
    const [season] = seasonCalendar(planWith([row]), {width: 440}).rows
    expect(season!.marks.map(({name, binding}) => [name, binding])).toEqual([
      ["you", true],
      ["reserve", false],
      ["crew", false],
    ])
    // The bar is under 20 May: its mark moved off the line, on its own day.
    const reserve = season!.marks[1]!
    expect(reserve.x).toBe(reserve.dayX)
    expect(reserve.y).not.toBe(season!.middle)
    expect(calendarSentence(row)).toBe(
      "Well Field: 27 Apr to 1 Jun, 36 days, held by you; reserve would hold it 12 days sooner.",
    )
  })

  it("keep the sheet's own words for what holds, and know names by their text", () => {
    const holders = (heldBy: string, limits: Record<string, string>) =>
      seasonCalendar(planWith([planRow(0, "A", ["04-27", "05-17"], heldBy, limits)]), {width: 440})
        .rows[0]!.marks.filter(({binding}) => binding)
        .map(({name}) => name)
    expect(holders("storm", {reserve: "05-30"})).toEqual(["storm"])
    expect(holders(" Reserve ", {reserve: "05-17"})).toEqual(["reserve"])
    expect(holders("", {price: "05-20", reserve: "05-17"})).toEqual(["reserve"])
    expect(holders("", {price: "05-20"})).toEqual(["you"])
  })

  const NAMES = ["reserve", "spear size", "fern days", "price", "crew", "last date", "weeks for its age", "x"]
  const offset = fc.option(fc.integer({min: -5, max: 40}), {nil: null})

  it("never hide each other, leave the picture or lose one, whatever falls together", () => {
    fc.assert(
      fc.property(
        fc.array(offset, {minLength: 8, maxLength: 8}),
        fc.integer({min: 300, max: 700}),
        fc.constantFrom("inside" as const, "beside" as const),
        (offsets, width, labels) => {
          const at = (days: number) => new Date(Date.UTC(2026, 3, 27 + days)).toISOString().slice(0, 10)
          const limits = Object.fromEntries(
            NAMES.map((name, index) => [name, offsets[index] === null ? null : at(offsets[index]!)]),
          )
          const row = planRow(0, "Long Acre", ["04-27", "06-01"], "storm", limits)
          const {rows, height} = seasonCalendar(planWith([row], "05-11"), {width, labels})
          const {marks, words} = rows[0]!
          expect(marks).toHaveLength(1 + offsets.filter((days) => days !== null).length)
          for (const [index, one] of marks.entries()) {
            expect(one.x).toBeGreaterThanOrEqual(0)
            expect(one.x).toBeLessThanOrEqual(width)
            expect(one.y).toBeLessThan(height - 36)
            for (const other of marks.slice(0, index))
              expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThan(3)
          }
          const left = words!.end ? words!.x - textWidth(words!.text) : words!.x
          expect(left).toBeGreaterThanOrEqual(0)
          expect(left + textWidth(words!.text)).toBeLessThanOrEqual(width)
        },
      ),
      {numRuns: 200, seed: 7},
    )
  })
})

describe("a planting that is not cut", () => {
  const plan = planWith([
    planRow(0, "Top Corner", [null, null], "young"),
    planRow(1, "Brook End", [null, null], ""),
    planRow(2, "Mill Bank", ["05-11", "05-01"], "crew", {crew: "05-01"}),
  ])

  it("says why in its row, without a bar", () => {
    const {rows} = seasonCalendar(plan, {width: 440})
    expect(rows.map(({words, cut}) => [words!.text, cut])).toEqual([
      ["young", false],
      ["close not known yet", false],
      ["closes before it opens", false],
    ])
    expect(rows.every(({past, toCome, tail}) => !past && !toCome && !tail)).toBe(true)
    expect(rows[2]!.marks.map(({name, binding}) => [name, binding])).toEqual([["crew", false]])
  })

  it("says so in its sentence", () => {
    expect(plan.rows.map(calendarSentence)).toEqual([
      "Top Corner: not cut, young.",
      "Brook End: close not known yet.",
      "Mill Bank: closes 1 May, before it opens, 11 May; crew.",
    ])
  })

  it("leaves a plan without closes readable", () => {
    const none = planWith(plan.rows.slice(0, 2), "05-25")
    expect(seasonCalendar(none, {width: 440})).toMatchObject({axis: null, weeks: [], asOf: null})
    expect(calendarFinding(none)).toBe(
      "No planting has a close yet: type the first day of cutting under Open.",
    )
    const opened = {...plan.rows[1]!, opens: day("04-27")}
    expect(calendarFinding({...none, rows: [{...opened, age: null}]})).toMatch(/: type the year as Season on/)
    expect(calendarFinding({...none, rows: [plan.rows[0]!]})).toBe("No planting has a close yet.")
  })
})

describe("an empty plan", () => {
  const empty = planWith([], "05-25")

  it("is a head and a row for the farm", () => {
    const {rows, height, farm} = seasonCalendar(empty, {width: 440})
    expect({rows, height, bars: farm.bars}).toEqual({rows: [], height: 106, bars: []})
  })

  it("says so, and has an empty table", () => {
    expect(calendarFinding(empty)).toBe("No plantings in this plan yet. Begin with “Add a planting”.")
    expect(calendarTable(empty)).toMatchObject({rows: [], crop: {rows: []}})
  })
})

describe("the farm's crop", () => {
  it("stands on the base line, as high as its weight, the fullest run of days named", () => {
    // The row begins at 70 + 3 * 36 = 178 px. Its base is 3 px above its end; the words and the 5 px under them
    // leave 16 px for 200 kg, so 8 px for 100 kg.
    const {bars, base, peak} = layout.farm
    expect(base).toBe(211)
    expect(bars).toHaveLength(42)
    expect(bars[0]).toMatchObject({day: day("04-27"), x: 10, width: 9, y: 203, height: 8, past: true})
    expect(bars[7]).toMatchObject({day: day("05-04"), x: 80, y: 195, height: 16, past: true})
    expect(bars[14]).toMatchObject({day: day("05-11"), past: false})
    expect(peak?.text).toBe("at most 200 kg grow a day, 4 May to 17 May")
  })

  it("names a single fullest day alone", () => {
    const daily = [...everyDay("04-27", "05-03", 900), {day: day("05-04"), kg: 4040}]
    const {farm} = seasonCalendar({...sixWeeks, daily}, {width: 440})
    expect(farm.peak?.text).toBe("at most 4.0 t grow a day, 4 May")
  })
})
