import {HyperFormula} from "hyperformula"
import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {described, parameterFor, worksOf} from "../../../functions/described"
import {standardFunctions} from "../../../functions/standard/catalogue"
import {worked} from "./sheet"

it("lists each name once, in the order of the alphabet, and none of ours", () => {
  const names = standardFunctions.map(({name}) => name)
  expect(names).toEqual([...new Set(names)].sort())
  expect(new Set(described.map(({name}) => name)).size).toBe(described.length)
})

describe.each(standardFunctions)("$name", (definition) => {
  const {name, summary, parameters, returns, example, section} = definition
  it("is known to the engine and summed up in one line without a full stop", () => {
    expect(HyperFormula.getRegisteredFunctionNames("enGB")).toContain(name)
    expect(summary).toMatch(/^[A-Z][^\n]{10,99}[^.\n]$/)
  })
  it("says what every argument and the result are, and where the standard has it", () => {
    for (const {label, takes} of Object.values(parameters)) {
      expect(label).toMatch(/^[A-Z].*[^.]$/)
      expect(takes).not.toBe("")
    }
    expect(returns.label).toMatch(/^[A-Za-z].*[^.]$/)
    expect(worksOf(definition)[0]!.work).toMatch(new RegExp(`OpenFormula.*; section ${section}$`))
  })
  it("has an example that computes, to the digits printed", () => {
    const given = worked(example.formula)
    const printed = dayOf(String(example.gives)) ?? (example.gives as number)
    const decimals = /\.(\d+)$/.exec(String(printed))?.[1]?.length ?? 0
    expect(given).toBeTypeOf("number")
    expect(Math.abs((given as number) - printed)).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-9)
  })
  it("passes on an error that comes in", () => {
    if (name === "ERROR.TYPE") return
    const count = Object.values(parameters).length
    const args = Array.from({length: count}, () => "NA()")
    expect(worked(`=${name}(${args.join(",")})`)).toMatchObject({code: "#N/A", reason: ""})
  })
  it("refuses a wrong count of arguments", () => {
    expect(worked(`=${name}()`)).toMatchObject({reason: "Wrong number of arguments."})
  })
})

describe("the parameter an argument is for", () => {
  const named = (name: string) => described.find((one) => one.name === name)!
  it("is the one in its place, and none beyond the last", () => {
    expect([0, 1, 2, 3].map((i) => parameterFor(named("RANK").parameters, i))).toEqual([0, 1, 2, null])
    expect([3, 4].map((i) => parameterFor(named("SPEAR.HEAT").parameters, i))).toEqual([3, null])
  })
  it("comes round again where the last repeat", () => {
    expect([0, 1, 2, 3, 4, 5, 6].map((i) => parameterFor(named("AVERAGEIFS").parameters, i))).toEqual([
      0, 1, 2, 1, 2, 1, 2,
    ])
    expect([0, 1, 9].map((i) => parameterFor(named("MODE").parameters, i))).toEqual([0, 0, 0])
  })
})
