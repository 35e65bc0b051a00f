import {describe, expect, it} from "vitest"
import {isRefusal} from "../../functions/refusal"
import {besideReplant} from "../../src/studies/besideReplant"
import {bestWeeks, type PlantingWeeks} from "../../src/studies/bestWeeks"
import {nearSeasons, weeksStudy, type WeeksStudy} from "../../src/studies/weeksStudy"
import {replantingOf, type ReplantField} from "../../src/workbook/replant"
import {open} from "../workbooks/shipped"

const farm = open("hollow-brook-farm.json")

it("clears every planting of the demonstration farm in the years of the sheet Replant", () => {
  const study = weeksStudy(farm) as WeeksStudy
  expect(isRefusal(study)).toBe(false)
  const {input, season, little, replanting} = study
  const {plantings} = bestWeeks(input)
  expect(plantings).toHaveLength(5)
  for (const one of plantings) {
    const field = replanting!.fields.find(({field}) => field === one.planting)!
    const [least, most] = nearSeasons(one, little)
    const isOpen = field.keepMost === field.seasons.length
    expect(least, one.planting).toBeLessThanOrEqual(isOpen ? Infinity : field.keepMost)
    expect(most, one.planting).toBeGreaterThanOrEqual(field.keepLeast)
    expect(besideReplant(one, replanting, season, little)).toBeNull()
  }
})

describe("a planting that the two would clear in other years", () => {
  const replanting = replantingOf(farm)!
  const north = replanting.fields.find(({field}) => field === "North Bench")!
  // Replant: after 2027 to 2029, two to four seasons.
  const withField = (change: Partial<ReplantField>) => ({...replanting, fields: [{...north, ...change}]})
  const kept = (keep: number[]) => ({planting: "North Bench", keep}) as unknown as PlantingWeeks
  const late = kept([0, 0, 0, 0, 0, 0, 900, 1000, 0])
  it("says what the study also counts, and which to go by", () => {
    expect(besideReplant(late, replanting, 2026, 150)).toBe(
      "North Bench: the sheet Replant clears it after 2027 to 2029, this study after 2031 to 2032. The study also counts a " +
        "chance of loss, a longer last season, and what other weeks than those of the table bring. Go by Replant for when to " +
        "clear it, and by this study for how long to cut.",
    )
    expect(besideReplant(kept([1000, 0, 0]), replanting, 2026, 150)).toContain("this study now.")
  })
  it("says where net cash was typed", () => {
    const typed = withField({seasons: north.seasons.map((one) => ({...one, crop: null}))})
    expect(besideReplant(late, typed, 2026, 150)).toContain("Replant has net cash that was typed")
  })
  it("is silent where the spans of years meet, or end where longer was not weighed", () => {
    expect(besideReplant(kept([0, 0, 0, 0, 1000, 0]), replanting, 2026, 150)).toBeNull()
    expect(besideReplant(late, withField({keepLeast: 11, keepMost: 12}), 2026, 150)).not.toBeNull()
    expect(besideReplant(kept([0, 1000]), replanting, 2026, 150)).toBeNull()
    expect(besideReplant(late, {...replanting, fields: []}, 2026, 150)).toBeNull()
    expect(besideReplant(late, null, 2026, 150)).toBeNull()
  })
  it("sends a lease to the sheet Replant, whatever the years", () => {
    const leased = withField({lease: 4})
    expect(besideReplant(kept([0, 0, 0, 1000, 0]), leased, 2026, 150)).toBe(
      "North Bench: this study knows nothing of the end of its lease. Go by the sheet Replant for when to clear it.",
    )
  })
})
