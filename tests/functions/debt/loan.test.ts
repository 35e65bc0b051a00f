import {describe, expect, it} from "vitest"
import {cell} from "../cell"

const ask = (what: string, year: number, rest = "") =>
  cell(`=DEBT.LOAN("${what}",200000,0.07,10,${year}${rest})`)

describe("DEBT.LOAN", () => {
  it("gives interest, principal, their sum and what is owed", () => {
    expect(ask("interest", 1)).toBeCloseTo(14000, 9)
    expect(ask("principal", 1)).toBeCloseTo(14475.5, 2)
    expect(ask("due", 1)).toBeCloseTo(28475.5, 2)
    expect(ask("balance", 5)).toBeCloseTo(116755.17, 2)
  })
  it("has nothing due and nothing owed outside its years", () => {
    for (const what of ["interest", "principal", "due", "balance"])
      for (const year of [-1, 0, 11]) expect(ask(what, year)).toBe(0)
  })
  it("counts added interest as interest, but not as due", () => {
    const added = ',"interest added, then level",3'
    expect(ask("interest", 2, added)).toBeCloseTo(14980, 6) // 0.07 × 214 000
    expect(ask("principal", 2, added)).toBeCloseTo(-14980, 6)
    expect(ask("due", 2, added)).toBeCloseTo(0, 6)
    expect(ask("due", 4, added)).toBeCloseTo(45462.13, 2)
  })
  it("takes a level loan with yearly payments where nothing else is given", () => {
    expect(ask("due", 1, ",T!A1,T!A1,T!A1")).toBeCloseTo(28475.5, 2)
    expect(ask("due", 1, ',"equal principal",,4')).toBeCloseTo(20000 + 13475, 6) // 0.0175·(200+195+190+185) thousand
  })
  it.each([
    [',"level",2', 'Years without principal are 2, but a loan of the kind "level" has none', "#NUM!"],
    [
      ',"balloon"',
      'Kind of loan must be one of "level", "equal principal", "interest only, then level", "interest added, then level", not the text "balloon"',
      "#VALUE!",
    ],
    [",,,0", "Payments a year must be a whole number from 1 to 366, not 0", "#NUM!"],
  ])("refuses %s", (rest, reason, code) => expect(ask("due", 1, rest)).toEqual({code, reason}))
  it.each(["-1,0.07,10,1", "1,-0.07,10,1", "1,0.07,0,1", "1,0.07,2.5,1", "1,0.07,10,1.5"])(
    "refuses %s",
    (given) => expect(cell(`=DEBT.LOAN("due",${given})`)).toMatchObject({code: "#NUM!"}),
  )
})
