import {describe, expect, it} from "vitest"
import {dayText} from "../../../src/editor/display"
import {seasonCalendar, type CalendarLayout} from "../../../src/views/pictures/calendarLayout"
import {
  calendarFinding,
  calendarSentence,
  calendarTable,
  weightText,
} from "../../../src/views/pictures/calendarWords"
import {day, planRow, planWith, sixWeeks} from "./plans"

const layout = seasonCalendar(sixWeeks, {width: 440, selected: 2})

describe("the sentence of a planting", () => {
  it("says its span, its days, what holds it and what would hold it next", () => {
    // 25 April to 15 June: 6 + 31 + 15 days
    const row = planRow(0, "Long Acre", ["04-25", "06-15"], "reserve", {
      reserve: "06-15",
      "weeks for its age": "06-19",
      price: "06-20",
    })
    expect(calendarSentence(row)).toBe(
      "Long Acre: 25 Apr to 15 Jun, 52 days, held by reserve; weeks for its age would hold it 4 days later.",
    )
  })

  it("knows one day, a tie, no rival, no opening and two years", () => {
    const sentence = (...args: Parameters<typeof planRow>) => calendarSentence(planRow(...args))
    expect(sentence(0, "A", ["04-25", "04-25"], "price", {price: "04-25", crew: "04-26"})).toBe(
      "A: 25 Apr to 25 Apr, 1 day, held by price; crew would hold it 1 day later.",
    )
    expect(sentence(0, "A", ["04-25", "04-26"], "price", {price: "04-26", crew: "04-26"})).toBe(
      "A: 25 Apr to 26 Apr, 2 days, held by price; crew holds it on the same day.",
    )
    expect(sentence(0, "A", [null, "04-26"], "price", {price: "04-26", crew: null})).toBe(
      "A: closes 26 Apr, opening not known yet, held by price; no other limit is known yet.",
    )
    expect(sentence(0, "A", ["2026-12-31", "2027-01-01"], "price", {price: "2027-01-01"})).toBe(
      "A: 31 Dec 2026 to 1 Jan 2027, 2 days, held by price; no other limit is known yet.",
    )
  })
})

describe("the finding", () => {
  it("names who closes next, who follows, and the crop with its range", () => {
    // 2100 + 3500, 1800 + 3000 and 2500 + 4200 kg; 17 May to 7 June: 21 days
    expect(calendarFinding(sixWeeks)).toBe(
      "Long Acre closes next, on 17 May, held by reserve; Sand Piece 21 days later, held by price. " +
        "About 5.6 t in all: 4.8 t if every planting falls low, 6.7 t if every one falls high.",
    )
  })

  it("weighs the crop in tons of 2000 lb, and in pounds below one, where measures are of the US", () => {
    // 5600 / 907.18474 = 6.17, 4800 / 907.18474 = 5.29, 6700 / 907.18474 = 7.39
    const plan = {...sixWeeks, region: {measures: "US"}} as const
    expect(calendarFinding(plan)).toContain(
      "About 6.2 tons in all: 5.3 tons if every planting falls low, 7.4 tons if every one falls high.",
    )
    expect(weightText(453.59237, {measures: "US"})).toBe("1\u202f000 lb")
    expect(weightText(907.18474, {measures: "US"})).toBe("1.0 ton")
    expect(weightText(2500, {decimal: ","})).toBe("2,5 t")
  })

  it("still counts a close on the as-of day, and not one before it", () => {
    expect(calendarFinding({...sixWeeks, asOf: day("05-17")})).toMatch(/^Long Acre closes next, on 17 May,/)
    expect(calendarFinding({...sixWeeks, asOf: day("05-18")})).toMatch(
      /^Sand Piece closes next, on 7 Jun, held by price\. /,
    )
    expect(calendarFinding({...sixWeeks, asOf: day("06-08")})).toMatch(
      /^Every planting is past its close, Sand Piece last, on 7 Jun\. /,
    )
    expect(calendarFinding({...sixWeeks, asOf: null})).toMatch(/^Long Acre closes first, on 17 May,/)
  })

  it("counts only the crops that are known, and gives no range with one missing", () => {
    const [first, second] = sixWeeks.rows
    expect(calendarFinding({...sixWeeks, rows: [first!, {...second!, crop: null}]})).toMatch(
      /About 2\.1 t from 1 of 2 plantings: /,
    )
    const unknown = {...second!, closes: null, heldBy: "", crop: null} // its close is an error, not "not cut"
    expect(calendarFinding({...sixWeeks, rows: [first!, unknown]})).toMatch(
      /About 2\.1 t from 1 of 2 plantings: /,
    )
    expect(calendarFinding({...sixWeeks, rows: [first!, {...unknown, heldBy: "young"}]})).toMatch(
      /About 2\.1 t in all: /,
    )
    expect(calendarFinding({...sixWeeks, rows: [first!, {...second!, cropLow: null}]})).toMatch(
      / About 5\.6 t in all\.$/,
    )
  })
})

describe("the table", () => {
  it("says the same as the picture", () => {
    expect(calendarTable(sixWeeks)).toMatchObject({
      headings: [
        "Planting",
        "Opens",
        "Closes",
        "Days",
        "Held by",
        "Next or passed limit",
        "reserve",
        "weeks for its age",
        "price",
        "Crop",
        "Crop, low to high",
      ],
      rows: [
        [
          "Long Acre",
          "27 Apr",
          "17 May",
          "21",
          "reserve",
          "weeks for its age, 4 days later",
          "17 May",
          "21 May",
          "not measured yet",
          "2.1 t",
          "1.8 t to 2.5 t",
        ],
        [
          "Sand Piece",
          "4 May",
          "7 Jun",
          "35",
          "price",
          "",
          "not measured yet",
          "not measured yet",
          "7 Jun",
          "3.5 t",
          "3.0 t to 4.2 t",
        ],
      ],
    })
  })

  it("has a date for each mark and a weight for each bar", () => {
    const {headings, rows, crop} = calendarTable(sixWeeks)
    expect(marksIn(layout)).toEqual(
      rows.map(([planting, , , , , , ...cells]) => [
        planting,
        cells
          .slice(0, 3)
          .flatMap((cell, at) => (cell === "not measured yet" ? [] : [`${headings[6 + at]} ${cell}`])),
      ]),
    )
    expect(crop.rows).toHaveLength(6)
    expect(crop.rows[1]).toEqual(["19", "4 May", ...Array.from({length: 7}, () => "200 kg")])
    expect(crop.rows.flatMap((week) => week.slice(2)).filter(Boolean)).toHaveLength(layout.farm.bars.length)
  })

  it("gives the years where a plan has two", () => {
    const plan = planWith([planRow(0, "A", ["2026-12-31", "2027-01-01"], "price", {price: "2027-01-01"})])
    expect(calendarTable(plan).rows[0]!.slice(1, 3)).toEqual(["31 Dec 2026", "1 Jan 2027"])
  })
})

const marksIn = ({rows}: CalendarLayout) =>
  rows.map(({planting, marks}) => [planting, marks.map((mark) => `${mark.name} ${dayText(mark.day)}`)])
