import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {needsSentence} from "../../../src/views/pictures/NeedsByWeek"
import {pickedSentence} from "../../../src/views/pictures/PickedSoFar"
import {
  cameInWords,
  goOnWords,
  inARow,
  movedSentence,
  movedWords,
  needsFinding,
  shedFinding,
  shortTitle,
  weekFinding,
} from "../../../src/views/pictures/weekWords"
import type {PlantingWeek, SeasonWeek, WeekNeeds} from "../../../src/workbook/season"

const day = (iso: string) => dayOf(iso)!
const planting = (name: string, more: Partial<PlantingWeek> = {}): PlantingWeek => ({
  planting: name,
  area: 5,
  days: [0, 0, 0, 0, 0, 0, 0],
  picked: 0,
  planned: 0,
  pace: null,
  pickedSoFar: [],
  plannedSoFar: [],
  closeLastWeek: day("2026-06-07"),
  heldByLastWeek: "",
  close: day("2026-06-07"),
  heldBy: "reserve",
  moved: 0,
  daySells: null,
  dayWorth: null,
  paysUntil: null,
  toDo: "Keep",
  why: "",
  cells: {},
  ...more,
})
const week = (...plantings: PlantingWeek[]): SeasonWeek => ({sheet: 0, asOf: day("2026-05-25"), plantings})

describe("the words of the week", () => {
  it("name the first of many plantings and count the others", () => {
    const late = [0.8, 0.7, 0.85, 0.5, 0.6].map((pace, i) => planting(`Field ${i}`, {pace, picked: 100}))
    expect(cameInWords(week(...late)).replaceAll("\u202f", " ")).toMatch(
      /\. Field 3 stands at 50 % of its plan, Field 4 stands at 60 % of its plan, Field 1 stands at 70 % of its plan and 2 more are behind theirs\.$/,
    )
    const moved = [1, -2, 9, 3, 4].map((days, i) => planting(`Field ${i}`, {moved: days}))
    expect(movedWords(week(...moved))).toBe(
      "Field 2 closes 9 days later, held by reserve; Field 4 closes 4 days later, held by reserve; " +
        "Field 3 closes 3 days later, held by reserve; 2 more closes moved.",
    )
    const pays = [1, 1, 1, 1, 1, -1].map((dayWorth, i) => planting(`Field ${i}`, {dayWorth}))
    expect(goOnWords(week(...pays))).toBe(
      "One more day still pays on Field 0, Field 1, Field 2 and 2 more; on Field 5 it no longer does.",
    )
  })

  it("count the closes that moved, and name those that should close now", () => {
    expect(weekFinding(week(planting("A")))).toBe("Week 22, from 25 May. No close has moved since last week.")
    expect(
      weekFinding(week(planting("A", {moved: -3}), planting("B", {moved: 1, toDo: "Close to fern now"}))),
    ).toBe("Week 22, from 25 May. 2 closes moved since last week; B should close to fern.")
  })

  it("do not say that nothing moved where no week before is known", () => {
    const first = week(planting("A", {closeLastWeek: null, toDo: "Close to fern now"}))
    expect(weekFinding(first)).toBe(
      "Week 22, from 25 May. No week’s plan has been used yet; A should close to fern.",
    )
    expect(movedWords(first)).toBe("Nothing to tell it by: no week’s plan has been used yet.")
    // A planting that is not cut keeps no date, but what held it.
    expect(movedWords(week(planting("A", {closeLastWeek: null, heldByLastWeek: "young"})))).toBe(
      "No close has moved since the plan of last week.",
    )
  })

  it("say what came in against the plan, and who lags", () => {
    const words = cameInWords(
      week(
        planting("A", {picked: 1500, planned: 2000, pace: 0.81}),
        planting("B", {picked: 2500, planned: 2000, pace: 1.02}),
      ),
    )
    expect(words).toBe(
      "4.0\u202ft came in from 18 May to 24 May, 100\u202f% of plan. A stands at 81\u202f% of its plan.",
    )
    expect(cameInWords(week(planting("A")))).toBe("Nothing came in from 18 May to 24 May.")
  })

  it("weigh in tons and pounds where measures are of the US, and part decimals as the workbook does", () => {
    const us = {...week(planting("A", {picked: 4000, planned: 4000})), region: {measures: "US"}} as const
    // 4000 kg / 907.18474 = 4.409 tons; 12 787 kg / 0.45359237 = 28 190.5 lb.
    expect(cameInWords(us)).toContain("4.4\u202ftons came in")
    const picked = planting("A", {pickedSoFar: [{day: day("2026-05-24"), kg: 12_787}], pace: 0.84})
    expect(pickedSentence(picked, us.asOf, us.region)).toBe(
      "A: 28\u202f191\u00a0lb picked before 25 May, 84\u202f% of the plan.",
    )
    expect(needsSentence([{week: 22, needed: 4.5, atHand: 4, isPast: false}], 1, "kW fitted", ",")).toBe(
      "Week 22: 4,5 needed, 4,0 kW fitted, 0,5 short.",
    )
  })

  it("say how far each close moved, what held it last week and what holds it now", () => {
    const stays = planting("A", {moved: 1, heldByLastWeek: "reserve"})
    const changes = planting("B", {moved: -4, heldBy: "price", heldByLastWeek: "spear size"})
    expect(movedWords(week(stays, changes))).toBe(
      "B closes 4 days earlier, held by spear size last week, now by price; A closes 1 day later, held by reserve, as last week.",
    )
    expect(movedWords(week(planting("A", {moved: 1})))).toBe("A closes 1 day later, held by reserve.")
  })

  it("part those where a day still pays from those where it does not", () => {
    const [pays, not, unknown] = [planting("A", {dayWorth: 5}), planting("B", {dayWorth: -5}), planting("C")]
    expect(goOnWords(week(pays, not, unknown))).toBe("One more day still pays on A; on B it no longer does.")
    expect(goOnWords(week(pays))).toBe("One more day still pays everywhere that is being cut.")
    expect(goOnWords(week(not))).toBe("One more day pays nowhere.")
    expect(goOnWords(week(unknown))).toMatch(/^What one more day is worth is not known yet/)
  })

  it("name three in a row", () => expect(inARow(["A", "B", "C"])).toBe("A, B and C"))
})

const need = (weekNumber: number, more: Partial<WeekNeeds> = {}): WeekNeeds => ({
  from: day("2026-05-25") + 7 * (weekNumber - 22),
  week: weekNumber,
  cutters: 10,
  booked: 16,
  short: 0,
  busiest: null,
  heaviest: 2000,
  load: 8,
  fitted: 9,
  over: 0,
  cells: {},
  ...more,
})

describe("the finding of the packing list", () => {
  const shed = {day: day("2026-05-28"), isPast: false, comesIn: 2907, packed: 2500, crates: 185, cartons: 1}
  const plain = (text: string) => text.replaceAll(/[\u00a0\u202f]/g, " ")
  it("names its day, and what comes in on it", () => {
    expect(plain(shedFinding(shed, {}))).toBe(
      "28 May 2026: 2 907 kg come in by the plan, 2 500 kg packed: 185 crates or 1 carton.",
    )
    expect(plain(shedFinding({...shed, isPast: true}, {}))).toMatch(/2 907 kg came in, 2 500 kg packed/)
    // 2907 / 0.45359237 = 6408.8 lb
    expect(plain(shedFinding(shed, {measures: "US"}))).toMatch(/6 409 lb come in/)
  })
  it("is that nothing comes in on a day without pickings", () => {
    const nothing = {...shed, comesIn: 0, packed: 0, crates: 0, cartons: 0}
    expect(shedFinding(nothing, {})).toBe("28 May 2026: nothing comes in by the plan.")
    expect(shedFinding({...nothing, isPast: true}, {})).toBe("28 May 2026: nothing came in.")
  })
  it("says what of it is not known, and counts nothing that is not", () => {
    const said = (unknown: object) => plain(shedFinding({...shed, ...unknown}, {}))
    expect(said({comesIn: null})).toBe("28 May 2026: what comes in is not known yet.")
    expect(said({packed: null, crates: null, cartons: null})).toBe(
      "28 May 2026: 2 907 kg come in by the plan, what is packed of it is not known yet.",
    )
    expect(said({cartons: null})).toMatch(/2 500 kg packed: 185 crates\.$/)
  })
})

describe("the finding of the needs", () => {
  const asOf = day("2026-05-25")
  it("names the plantings that are not counted, and calls nothing enough beside them", () => {
    expect(needsFinding([need(22)], asOf, ".", ["Long Acre"])).toBe(
      "Long Acre is not counted: its crop is not known yet.",
    )
    expect(needsFinding([need(22, {short: 2})], asOf, ".", ["Long Acre", "Home Strip"])).toMatch(
      /2 cutters short .* Long Acre and Home Strip are not counted: their crops are not known yet\.$/,
    )
  })
  it("is that all is enough, whatever past weeks lacked", () =>
    expect(needsFinding([need(20, {short: 9}), need(22)], asOf)).toBe(
      "People and cold are enough for every week to come.",
    ))
  it("is never that all is enough where that is not known", () => {
    expect(needsFinding([need(20, {short: null}), need(22)], asOf)).toBe(
      "People and cold are enough for every week to come.", // week 20 is past
    )
    expect(needsFinding([need(22, {short: null, over: null}), need(23)], asOf)).toBe(
      "Whether people and cold are enough is not known yet: Days of cutting says what is missing.",
    )
    expect(needsFinding([need(22, {short: 3, over: null})], asOf)).toBe(
      "Week 22 is 3 cutters short on its worst day. Whether the cold is enough is not known yet: Days of cutting says what is missing.",
    )
  })
  it("names the worst week of each, and counts the others", () =>
    expect(
      needsFinding([need(22, {short: 3}), need(23, {over: 1.25, short: 1}), need(24, {over: 0.5})], asOf),
    ).toBe(
      "Week 22 is 3 cutters short on its worst day; week 23 is 1.3 kW over what is fitted; 1 more week is short of one or the other.",
    ))
  it("names a week once that lacks both, and no week for less than is shown", () =>
    expect(needsFinding([need(22, {short: 2, over: 1.8}), need(23, {over: 0.04})], asOf)).toBe(
      "Week 22 is 2 cutters short on its worst day and 1.8 kW over what is fitted.",
    ))
})

it("names the weeks that are short in the title, and counts those after two", () => {
  const title = (...short: (number | null)[]) =>
    shortTitle(
      short.map((one, i) => ({week: 22 + i, short: one})),
      (one) => `${one} cutters short`,
      String,
      "Cutters enough",
    )
  expect(title(0, 0)).toBe("Cutters enough")
  expect(title(0, null)).toBe("Cutters enough: not known yet")
  expect(title(0, 3)).toBe("3 cutters short in week 23")
  expect(title(3, 1)).toBe("3 cutters short in week 22, 1 in week 23")
  const whole = (one: number) => String(Math.round(one))
  expect(shortTitle([{week: 22, short: 0.04}], whole, whole, "Cold enough")).toBe("Cold enough")
  expect(title(3, 0, 1, 2, 5)).toBe("3 cutters short in week 22, 1 in week 24 and some in 2 more")
})

describe("the sentences of the pictures", () => {
  it("read what they draw", () => {
    const one = planting("A", {pickedSoFar: [{day: day("2026-05-20"), kg: 12787}], pace: 0.84})
    expect(pickedSentence(one, day("2026-05-25"))).toBe(
      "A: 12\u202f787\u00a0kg picked before 25 May, 84\u202f% of the plan.",
    )
    const moved = {closeLastWeek: day("2026-06-06"), heldByLastWeek: "price"}
    expect(movedSentence(planting("A", moved))).toBe(
      "A: from 6 Jun to 7 Jun, held by price last week, now by reserve.",
    )
    expect(needsSentence([{week: 22, needed: 19, atHand: 16, isPast: false}], 0, "booked")).toBe(
      "Week 22: 19 needed, 16 booked, 3 short.",
    )
    const unknown = [
      {week: 22, needed: 19, atHand: null, isPast: false},
      {week: 23, needed: null, atHand: 16, isPast: false},
    ]
    expect(needsSentence(unknown, 0, "booked")).toBe(
      "Week 22: 19 needed, not known what is booked. Week 23: not known what is needed, 16 booked.",
    )
  })
})
