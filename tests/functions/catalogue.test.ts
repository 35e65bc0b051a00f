import {describe, expect, it} from "vitest"
import {catalogue} from "../../functions/catalogue"
import {sources} from "../../functions/sources"
import {cell} from "./cell"
import {dayOf} from "../../functions/calendar"

it("lists each name once", () => {
  const names = catalogue.map(({name}) => name)
  expect(new Set(names).size).toBe(names.length)
})

describe.each(catalogue)("$name", ({summary, name, parameters, returns, sources: cited, example}) => {
  it("is named in capitals under a dotted prefix and summed up in one line without a full stop", () => {
    expect(name).toMatch(
      /^(ROOT|FERN|SPEAR|SEASON|CROP|STAND|CREW|PACK|COOLER|DEBT|CLIMATE)\.[A-Z][A-Z_0-9]*$/,
    )
    expect(summary).toMatch(/^[A-Z][^\n]{10,99}[^.\n]$/)
  })
  it("gives every argument and the result a label, a unit and what it takes", () => {
    for (const {label, unit} of [...Object.values(parameters), returns]) {
      expect(label).toMatch(/^[A-Z].*[^.]$/)
      expect(unit).not.toBe("")
    }
    for (const {takes} of Object.values(parameters)) expect(takes).not.toBe("")
  })
  it("lets only the last arguments be left out", () => {
    const needed = Object.values(parameters).map(({absent}) => !absent)
    expect(needed).toEqual([...needed].sort((a, b) => Number(b) - Number(a)))
  })
  it("cites sources that are listed", () => {
    for (const key of cited) expect(sources[key].work).not.toBe("")
  })
  it("has an example that computes, to the digits printed", () => {
    const given = cell(example.formula)
    const printed =
      typeof example.gives === "string" ? (dayOf(example.gives) ?? example.gives) : example.gives
    if (typeof printed === "string") expect(given).toBe(printed)
    else {
      const decimals = /\.(\d+)$/.exec(String(printed))?.[1]?.length ?? 0
      expect(given).toBeTypeOf("number")
      expect(Math.abs((given as number) - printed)).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-9)
    }
  })
})
