import {describe, expect, it} from "vitest"
import type {Risk} from "../../../src/studies/risk"
import {
  cashSentence,
  cashTitle,
  leftOutWords,
  lenderFinding,
  riskWords,
  tightYear,
  yieldFinding,
  yieldSentence,
  yieldTitle,
} from "../../../src/views/pictures/lenderWords"
import {cashYear, evidence, fiveYears} from "./lenders"

describe("the words of the lender's page", () => {
  it("name the year with the lowest cover, what it lacks and why", () => {
    expect(tightYear(fiveYears)!.year).toBe(2027)
    expect(lenderFinding({years: fiveYears, region: {}})).toBe(
      "As planned, nothing left to chance, 4 of 5 years pay what is due; 2027 is short by 8\u202f000, with replanting North Bench.",
    )
    expect(cashTitle(fiveYears)).toBe(
      "Lowest cover 0.92 in 2027, 8\u202f000 short; as planned every other year pays",
    )
  })

  it("name the tightest year where every year pays, and the first of equals", () => {
    const years = [cashYear(2026, 150, 100), cashYear(2027, 110, 100), cashYear(2028, 110, 100)]
    expect(lenderFinding({years, region: {}})).toBe(
      "As planned, nothing left to chance, every year pays what is due; 2027 is the tightest with cover 1.10.",
    )
    expect(cashTitle(years)).toBe("Lowest cover 1.10 in 2027; as planned every year pays")
  })

  it("count one paying year, and none, as one says it", () => {
    const of = (...able: number[]) =>
      lenderFinding({years: able.map((one, i) => cashYear(2026 + i, one, 100)), region: {}})
    expect(of(120, 60, 70)).toMatch(/, 1 of 3 years pays what is due; 2027 is short by 40/)
    expect(of(80, 60)).toMatch(/, no year pays what is due; 2027 is short by 40/)
  })

  it("name years that follow each other by the first and the last", () => {
    const years = [70, 120, 80, 75, 60, 120, 90, 80].map((able, i) => cashYear(2026 + i, able, 100))
    expect(cashTitle(years)).toMatch(/; as planned short in 2026, 2028 to 2030, 2032 and 2033$/)
  })

  it("carry what chance does once that was worked out, and say before that it is not in them", () => {
    const years = [cashYear(2026, 150, 100), cashYear(2027, 110, 100), cashYear(2028, 500, 0)]
    const below = [0.4525, 0.523, null]
    const found = {
      plans: [{years: years.map(({year}, i) => ({year, below1: below[i] && {share: below[i]}}))}],
    } as unknown as Risk
    expect(lenderFinding({years, region: {}}, null, found)).toBe(
      "As planned every year pays what is due; 2027 is the tightest with cover 1.10. By chance in 52 runs of 100 the cover is below 1 in 2027, the most of all years.",
    )
    expect(lenderFinding({years, region: {}})).toMatch(/^As planned, nothing left to chance, every year pays/)
    const only = {plans: [{years: [{year: 2026, below1: {share: 0.998}}]}]} as unknown as Risk
    expect(riskWords(only)).toBe("In over 99 runs of 100 the cover is below 1 in 2026")
    expect(riskWords(found, true)).toMatch(/below 1 in 2027, the most of the years that are known$/)
    const nothingDue = {plans: [{years: [{year: 2026, below1: null}]}]} as unknown as Risk
    expect(riskWords(nothingDue)).toBeNull()
  })

  it("say what the season covers at the pace so far, where that is another cover than planned", () => {
    const years = [cashYear(2026, 150, 100), cashYear(2027, 110, 100)]
    const asPlanned =
      "As planned, nothing left to chance, every year pays what is due; 2027 is the tightest with cover 1.10."
    expect(lenderFinding({years, region: {}}, 1.3)).toBe(
      `${asPlanned} At the pace so far 2026 covers 1.30, not the 1.50 planned.`,
    )
    expect(lenderFinding({years, region: {}}, 1.07)).toBe(
      `${asPlanned} At the pace so far 2026 covers 1.07, not the 1.50 planned, which makes it the tightest.`,
    )
    expect(lenderFinding({years, region: {}}, 1.5004)).toBe(asPlanned)
    expect(lenderFinding({years: years.slice(0, 1), region: {decimal: ","}}, 1.07)).toMatch(
      /2026 is the tightest with cover 1,50\. At the pace so far 2026 covers 1,07, not the 1,50 planned\.$/,
    )
    const found = {plans: [{years: [{year: 2026, below1: {share: 0.41}}]}]} as unknown as Risk
    expect(lenderFinding({years, region: {}}, 1.3, found)).toMatch(
      /1\.10\. At the pace so far 2026 covers 1\.30, not the 1\.50 planned; by chance in 41 runs of 100 the cover is below 1 in 2026\.$/,
    )
  })

  it("leave a year without debt out of account, even one that loses money", () => {
    const years = [cashYear(2026, 120, 100), cashYear(2027, -5000, 0)]
    expect(cashTitle(years)).toBe("Lowest cover 1.20 in 2026; as planned every year pays")
    expect(cashTitle([...years, cashYear(2028, 60, 100)])).toBe(
      "Lowest cover 0.60 in 2028, 40 short; as planned every other year pays",
    )
  })

  it("are not moved by a cover that is typed over", () => {
    const years = fiveYears.map((one) => (one.year === 2027 ? {...one, cover: 1.3} : one))
    expect(lenderFinding({years, region: {}})).toBe(lenderFinding({years: fiveYears, region: {}}))
    expect(cashTitle(years)).toBe(cashTitle(fiveYears))
    expect(cashSentence(years.slice(1, 2))).toMatch(/, cover 0\.92, typed over as 1\.30, short by/)
  })

  it("stay words where the cover of a year is emptied", () => {
    expect(cashSentence([{...cashYear(2026, 150, 100), cover: null}])).toBe(
      "2026: 150 money for 100 due, no cover known.",
    )
  })

  it("say which years the picture leaves out, since nothing is due in them", () => {
    const years = [cashYear(2026, 150, 100), cashYear(2027, 90, 0)]
    expect(leftOutWords(years)).toBe("Nothing is due in 2027: not drawn.")
    expect(leftOutWords([...years, cashYear(2028, -5, 0)])).toBe(
      "Nothing is due in 2027 and 2028: not drawn.",
    )
    expect(leftOutWords(fiveYears)).toBe("")
    expect(leftOutWords([cashYear(2027, 90, 0)])).toBe("") // the title says that nothing falls due
  })

  it("say that the lowest cover lies under the one that is wanted", () => {
    const years = [cashYear(2026, 120, 100), cashYear(2027, 130, 100)]
    expect(cashTitle(years, {}, 1.25)).toBe(
      "Lowest cover 1.20 in 2026, under the 1.25 wanted; as planned every year pays",
    )
    expect(cashTitle(years, {}, 1.2)).toBe("Lowest cover 1.20 in 2026; as planned every year pays")
  })

  it("call no year tight while others cannot be worked out", () => {
    const page = {years: [cashYear(2026, 150, 100)], unknown: [2027, 2028, 2029], region: {}}
    expect(lenderFinding(page)).toBe(
      "The tight year is not known: 2027 to 2029 cannot be worked out. Of the others 2026 has the lowest cover, 1.50.",
    )
    expect(cashTitle(page.years, {}, null, page.unknown)).toBe(
      "Cover 1.50 in 2026, the lowest known; 2027 to 2029 cannot be worked out",
    )
    expect(cashTitle([], {}, null, [2027, 2029])).toBe(
      "No cover is known; 2027 and 2029 cannot be worked out",
    )
    expect(lenderFinding({years: [], unknown: [2026], region: {}})).toBe(
      "The tight year is not known: 2026 cannot be worked out.",
    )
  })

  it("say so when nothing is due", () => {
    const years = [cashYear(2026, 150, 0)]
    expect(tightYear(years)).toBeNull()
    expect(lenderFinding({years, region: {}})).toBe("No loan falls due in these years.")
    expect(cashSentence(years)).toBe("2026: nothing due.")
    expect(cashTitle(years)).toBe("Nothing falls due")
  })

  it("tell each year with the stress beside it", () => {
    expect(cashSentence(fiveYears.slice(0, 2))).toBe(
      "2026: 182\u202f000 money for 104\u202f000 due, cover 1.75. " +
        "2027: 96\u202f000 money for 104\u202f000 due, cover 0.92, short by 8\u202f000, under the stress 0.13.",
    )
  })

  it("tell a projection beside the record of three years", () => {
    expect(yieldSentence(evidence("Long Acre"))).toBe(
      "Long Acre: projection for age 9 is 4\u202f900 kg/ha, 18\u202f% above the three-year record of 4\u202f143.",
    )
    expect(
      yieldSentence(evidence("Home Strip", {mean: null, gap: null, record: [], age: 2, projection: 625})),
    ).toBe("Home Strip: projection for age 2 is 625 kg/ha; no year on record.")
    expect(yieldSentence(evidence("Top Corner", {projection: 0}))).toBe(
      "Top Corner: no crop is projected this season.",
    )
  })

  it("name those that are projected above their record", () => {
    expect(yieldTitle([evidence("A"), evidence("B", {gap: -0.1})])).toBe("A stands above its own record")
    expect(yieldTitle([evidence("A"), evidence("B")])).toBe("A and B stand above their own record")
    expect(yieldTitle([evidence("B", {gap: -0.1})])).toBe("No projection stands above its own record")
    expect(yieldTitle([evidence("C", {gap: null})])).toBe("No planting has three years on record")
  })

  it("tell of the yields the planting furthest above its record, with the reason for it", () => {
    const tight = evidence("North Bench", {gap: -0.3})
    const far = evidence("Well Field", {gap: 0.5, projection: 6215, reason: "record of ages 2 to 4."})
    expect(yieldFinding([tight, evidence("Long Acre")])).toMatch(
      /^Long Acre: projection for age 9 is 4.900.kg\/ha, 18.% above the three-year record of 4.143\. No reason is given\.$/,
    )
    expect(yieldFinding([evidence("Long Acre"), far, tight])).toMatch(
      /^Well Field: .*, 50.% above .* Reason given: record of ages 2 to 4\. 2 plantings stand above their own record\.$/,
    )
    expect(yieldFinding([tight])).toBe("No projection stands above its own record.")
  })
})
