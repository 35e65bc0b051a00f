import {describe, expect, it} from "vitest"
import {catalogue} from "../../functions/catalogue"
import {callAt, offersAt, withOffer, type Offer} from "../../src/editor/completion"

const named = [
  {name: "Spear_price", gives: "money/kg"},
  {name: "As_of", gives: ""},
]
const standard = ["SUM", "SUMIF", "SUMPRODUCT", "SPEAR.HEAT", "AVERAGE", "IF"]

/** The text with the caret where "|" stands. */
const at = (marked: string) => [marked.replace("|", ""), marked.indexOf("|")] as const
const offers = (marked: string) => offersAt(...at(marked), named, standard)
const names = (marked: string) => offers(marked).map(({name}) => name)
const take = (marked: string, offer: Partial<Offer> & {name: string}) => {
  const {text, caret} = withOffer(...at(marked), {kind: "function", gives: "", ...offer})
  return `${text.slice(0, caret)}|${text.slice(caret)}`
}

describe("names that complete what is typed", () => {
  it("are our functions, then named values, then standard functions, each once", () => {
    const found = offers("=sp|")
    const ours = catalogue.filter(({name}) => name.startsWith("SP"))
    expect(ours.length).toBeGreaterThan(1)
    expect(found.slice(0, ours.length + 1)).toEqual([
      ...ours.map(({name, returns}) => ({name, kind: "our function", gives: returns.unit})),
      {name: "Spear_price", kind: "named value", gives: "money/kg"},
    ])
    expect(names("=sum|")).toEqual(["SUM", "SUMIF", "SUMPRODUCT"])
    expect(offers("=sum|")[0]).toEqual({name: "SUM", kind: "function", gives: "standard"})
    expect(names("=spear.heat|").filter((name) => name === "SPEAR.HEAT")).toHaveLength(1)
  })

  it("begin with what is typed whole, then with the standard functions that are typed most", () => {
    const many = ["SUMX2MY2", "SUBSTITUTE", "SUMIF", "SUM", "MINUTE", "MIN", "MINIFS", "INDEX", "INT"]
    const found = (marked: string) =>
      offersAt(...at(marked), [{name: "Sugar", gives: "mg/g"}], many).map(({name}) => name)
    expect(found("=su|").slice(0, 5)).toEqual(["SUM", "SUMIF", "Sugar", "SUBSTITUTE", "SUMX2MY2"])
    expect(found("=min|")).toEqual(["MIN", "MINIFS", "MINUTE"])
    expect(found("=int|")[0]).toBe("INT")
    expect(found("=sugar|")[0]).toBe("Sugar")
  })

  it("leave out what the engine has for itself", () => {
    expect(offersAt(...at("=hf|"), [], ["HF.ADD"])).toEqual([])
    expect(offersAt(...at("=versi|"), [], ["VERSION"])).toEqual([])
  })

  it("come after those that begin so, when they only hold it", () => {
    expect(names("=heat|")).toEqual(["SPEAR.HEAT", "COOLER.HEAT"])
    expect(names("=price|").at(-1)).toBe("Spear_price")
    expect(names("=umif|")).toEqual([]) // standard functions are many: by their beginning alone
  })

  it("are found wherever a name may stand", () => {
    expect(names("=1+sumi|")).toEqual(["SUMIF"])
    expect(names("=SUM(A1,sumi|")).toEqual(["SUMIF"])
    expect(names("=sumi|(A1)")).toEqual(["SUMIF"])
    expect(names("=su|mproduct(A1)").slice(0, 3)).toEqual(["SUM", "SUMIF", "SUMPRODUCT"]) // up to the caret
  })

  it.each(["sum|", "|=sum", "=|", "=sum(|", "=A1+|", '="sum|', "=12|", "=$A$1|", "=A1:B2|", "=TRUE()|"])(
    "are not offered at %s",
    (marked) => expect(names(marked)).toEqual([]),
  )
})

describe("taking an offer", () => {
  it.each([
    ["=su|", "SUM", "=SUM(|"],
    ["=1+su|*2", "SUM", "=1+SUM(|*2"],
    ["=su|(A1)", "SUM", "=SUM|(A1)"],
    ["=su|mif(A1)", "SUMPRODUCT", "=SUMPRODUCT|(A1)"],
    ["=SPE|AR.ME+1", "SPEAR.MEAN", "=SPEAR.MEAN(|+1"],
    ["=su|A1", "SUM", "=SUM(|A1"], // the cell was there before
    ["=su|Rate", "SUM", "=SUM(|Rate"],
    ['="a,b"&su|', "SUM", '="a,b"&SUM(|'],
    ["=heat|", "SPEAR.HEAT", "=SPEAR.HEAT(|"],
  ])("puts it in place: %s with %s gives %s", (marked, name, result) =>
    expect(take(marked, {name})).toBe(result),
  )

  it("puts no bracket behind a named value", () => {
    expect(take("=2*as|", {name: "As_of", kind: "named value"})).toBe("=2*As_of|")
  })

  it("leaves the text alone where no name is typed", () => {
    expect(take("=A1+|", {name: "SUM"})).toBe("=A1+|")
  })
})

describe("the call at the caret", () => {
  const call = (marked: string) => {
    const found = callAt(...at(marked))
    return found && [found.name, found.argument]
  }

  it.each([
    ["=SUM(|", ["SUM", 0]],
    ["=SUM(A1|", ["SUM", 0]],
    ["=SUM(A1,|", ["SUM", 1]],
    ["=SUM(A1|,B1)", ["SUM", 0]],
    ["=SUM(A1,B1|)", ["SUM", 1]],
    ["=sum (A1,|", ["SUM", 1]],
    ["=IF(SUM(A1,B1)|>0,2,3)", ["IF", 0]],
    ["=IF(SUM(A1,|B1)>0,2,3)", ["SUM", 1]],
    ["=IF(SUM(A1,B1)>0,2,|3)", ["IF", 2]],
    ["=IF((A1+|B1)*2,1)", ["IF", 0]],
    ["=IF((A1+B1)*2,|1)", ["IF", 1]],
    ['=IF(A1="a,b(",|', ["IF", 1]],
    ['=IF(A1="a,|b",1)', ["IF", 0]],
    ["=SUM({1,2;3,4},|", ["SUM", 1]],
    ["=SUM({1,2,|", ["SUM", 0]],
    ["=SUM(IF(A1,{1,2}),|", ["SUM", 1]],
    ["=SUM('Root (old), 2025'!A1,|", ["SUM", 1]],
  ])("of %s is %j", (marked, expected) => expect(call(marked)).toEqual(expected))

  it.each(["=SU|M(A1)", "=SUM|(A1)", "=SUM(A1)|", "=(A1+|", "=A1|", "|", "=))|"])("is none at %s", (marked) =>
    expect(call(marked)).toBeNull(),
  )

  it("has the definition of one of our functions", () => {
    const heat = catalogue.find(({name}) => name === "SPEAR.HEAT")!
    expect(callAt(...at("=spear.heat(20,|"))).toEqual({name: "SPEAR.HEAT", argument: 1, definition: heat})
    expect(callAt(...at("=SUM(|"))!.definition).toBeUndefined()
  })
  it("has the names of the arguments of one of the engine's", () => {
    expect(Object.keys(callAt(...at("=if(A1>0,|"))!.named!)).toEqual(["condition", "ifTrue", "ifFalse"])
    expect(callAt(...at("=nosuch(|"))!.named).toBeUndefined()
  })
  it("has the definition of a standard function that was added", () => {
    const {definition} = callAt(...at('=averageifs(A:A,B:B,">5",|'))!
    expect(definition).toMatchObject({name: "AVERAGEIFS", section: "6.18.6"})
    expect(Object.keys(definition!.parameters)).toEqual(["averaged", "range", "condition"])
  })
  it("offers it among the standard functions", () => {
    expect(offersAt(...at("=forec|"), [], ["FORECAST"])).toEqual([
      {name: "FORECAST", kind: "function", gives: "standard"},
    ])
  })
})
