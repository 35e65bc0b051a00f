import {HyperFormula} from "hyperformula"
import {describe, expect, it} from "vitest"
import {catalogue} from "../../../functions/catalogue"
import {namedArguments} from "../../../functions/standard/argumentNames"
import {standardFunctions} from "../../../functions/standard/catalogue"
import "../../../src/workbook/workbook" // registers our functions

interface Taken {
  readonly parameters?: readonly {readonly optionalArg?: boolean; readonly defaultValue?: unknown}[]
  readonly repeatLastArgs?: number
}

const ours = new Set([...catalogue, ...standardFunctions].map(({name}) => name))
const engines = HyperFormula.getRegisteredFunctionNames("enGB").filter((name) => !ours.has(name))
/** What the engine itself says that a function takes, by the name the function goes by there. */
const taken = (name: string): Taken => {
  const plugin = HyperFormula.getFunctionPlugin(name) as unknown as {
    readonly implementedFunctions: Readonly<Record<string, Taken>>
    readonly aliases?: Readonly<Record<string, string>>
  }
  return plugin.implementedFunctions[plugin.aliases?.[name] ?? name]!
}

/** Not for formulas of a person: operators by a name, and what the engine says of itself. */
const isUnnamed = (name: string) => name.startsWith("HF.") || name === "VERSION"
/** The engine reads its arguments while it parses, and lists none. */
const isUnlisted = (name: string) => name === "OFFSET"

it("names the arguments of every function that a person may want", () => {
  expect(engines.length).toBeGreaterThan(380)
  expect(engines.filter((name) => !namedArguments(name))).toEqual(engines.filter(isUnnamed))
})

describe("as many as the engine takes", () => {
  it.each(engines.filter((name) => !isUnnamed(name) && !isUnlisted(name)))("%s", (name) => {
    const {parameters = [], repeatLastArgs = 0} = taken(name)
    const named = Object.values(namedArguments(name)!)
    const optional = parameters.filter((one) => one.optionalArg || one.defaultValue !== undefined)
    expect({
      all: named.length,
      optional: named.filter(({mayBeAbsent}) => mayBeAbsent).length,
      repeating: named.filter(({repeats}) => repeats).length,
    }).toEqual({all: parameters.length, optional: optional.length, repeating: repeatLastArgs})
    // What may be left out or repeats stands last.
    const needed = parameters.length - optional.length - repeatLastArgs
    expect(named.findIndex((one) => one.mayBeAbsent || one.repeats)).toBe(
      needed < parameters.length ? needed : -1,
    )
  })
})

it("has no word for a function that does not exist", () => {
  expect(namedArguments("NOSUCH")).toBeUndefined()
  expect(namedArguments("constructor")).toBeUndefined()
})

// OASIS (2011), OpenDocument 1.2, part 2: 6.14.12 VLOOKUP( Any Lookup ; Reference|Array DataSource ; Integer Column [ ; Logical RangeLookup ] ),
// 6.12.36 PMT( Number Rate ; Integer Nper ; Number Pv [ ; [ Number Fv ] [ ; [ Number PayType ] ] ] ), 6.12.30 NPV( Number Rate { ; NumberSequenceList Values }+ ).
it.each([
  ["VLOOKUP", ["lookup", "dataSource", "column", "rangeLookup"]],
  ["PMT", ["rate", "nper", "pv", "fv", "payType"]],
  ["NPV", ["rate", "values"]],
])("calls those of %s as the standard does", (name, expected) =>
  expect(Object.keys(namedArguments(name)!)).toEqual(expected),
)
