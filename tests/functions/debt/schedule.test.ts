import {describe, expect, it} from "vitest"
import {LOAN_KINDS, levelShare, schedule, type Loan, type LoanYear} from "../../../functions/debt/schedule"
import others from "../../reference/loans.json"

// Level payment on 200 000 at 7 % over 10 years, worked out by hand from i/(1 - (1 + i)^-n) = 0.1423775027.
const loan: Loan = {amount: 200000, rate: 0.07, years: 10, kind: "level", without: 0, perYear: 1}
const years = (change: Partial<Loan>) => schedule({...loan, ...change}) as readonly LoanYear[]
const due = (year: LoanYear) => year.interest + year.principal

describe("a level loan", () => {
  const paid = years({})
  it("asks for the same each year, to the cent", () => {
    for (const year of paid) expect(due(year)).toBeCloseTo(28475.5, 2)
  })
  it("pays mostly interest first and mostly principal last", () => {
    expect(paid[0]!.interest).toBeCloseTo(14000, 9) // 0.07 × 200 000
    expect(paid[0]!.principal).toBeCloseTo(14475.5, 2)
    expect(paid[4]!.balance).toBeCloseTo(116755.17, 2) // five payments to come: 28 475.50 × 4.1001974
    expect(paid[9]!.interest).toBeCloseTo(1862.88, 2) // 28 475.50 × 0.07/1.07
  })
  it.each([
    // P·(i/m)/(1 - (1 + i/m)^(-m·n))
    [2, 14072.22],
    [4, 6994.42],
    [12, 2322.17],
  ])("asks %s times a year for %s", (perYear, payment) => {
    for (const year of years({perYear})) expect(due(year) / perYear).toBeCloseTo(payment, 2)
  })
  it("without interest parts the loan evenly", () => {
    expect(years({rate: 0}).map(due)).toEqual(Array.from({length: 10}, () => 20000))
  })
})

describe("a loan of equal principal", () => {
  it("pays the same principal, and interest on what is left", () => {
    for (const [row, year] of years({kind: "equal principal"}).entries()) {
      expect(year.principal).toBeCloseTo(20000, 9)
      expect(year.interest).toBeCloseTo(0.07 * (200000 - 20000 * row), 8)
    }
  })
  it("costs less interest in all than a level one", () => {
    const interest = (kind: Loan["kind"]) => years({kind}).reduce((sum, year) => sum + year.interest, 0)
    // 0.07·20 000·(10 + 9 + ... + 1) = 77 000; level 284 755.00 - 200 000
    expect(interest("equal principal")).toBeCloseTo(77000, 6)
    expect(interest("level")).toBeCloseTo(84755.0, 1)
  })
})

describe("a loan with years without principal", () => {
  it("pays interest only, then level over the years that are left", () => {
    const paid = years({kind: "interest only, then level", without: 3})
    for (const year of paid.slice(0, 3)) {
      expect(year).toMatchObject({principal: 0, balance: 200000})
      expect(year.interest).toBeCloseTo(14000, 9)
    }
    // 200 000 × 0.1855532 (7 %, 7 years)
    for (const year of paid.slice(3)) expect(due(year)).toBeCloseTo(37110.64, 2)
  })
  it("adds the interest to the debt, then pays it level", () => {
    const paid = years({kind: "interest added, then level", without: 3})
    for (const year of paid.slice(0, 3)) expect(due(year)).toBeCloseTo(0, 9)
    expect(paid[2]!.balance).toBeCloseTo(245008.6, 2) // 200 000 × 1.07³
    for (const year of paid.slice(3)) expect(due(year)).toBeCloseTo(45462.13, 2)
  })
  it.each([1, 12])(
    "has nothing due, to the last digit, while interest is added %s times a year",
    (perYear) => {
      const paid = years({kind: "interest added, then level", without: 3, perYear, amount: 60000.1})
      expect(paid.slice(0, 3).map(due)).toEqual([0, 0, 0])
    },
  )
  it("is level where those years are none", () => {
    for (const kind of LOAN_KINDS.filter((kind) => kind !== "equal principal"))
      for (const [row, year] of years({kind}).entries())
        expect(year.balance).toBeCloseTo(years({})[row]!.balance, 6)
  })
  it("refuses as many of them as the loan has years, and any of them for a kind without", () => {
    expect(schedule({...loan, kind: "interest only, then level", without: 10})).toEqual({
      refused: "Years without principal (10) must be fewer than the loan's 10 years",
      code: "#NUM!",
    })
    expect(schedule({...loan, without: 1})).toEqual({
      refused: 'Years without principal are 1, but a loan of the kind "level" has none',
      code: "#NUM!",
    })
  })
})

describe.each(LOAN_KINDS)("every loan, here %s", (kind) => {
  const without = kind.includes("then") ? 2 : 0
  it.each([1, 2, 12])("pays back what was lent with %s payments a year, and ends at 0", (perYear) => {
    const paid = years({kind, without, perYear})
    expect(paid.reduce((sum, {principal}) => sum + principal, 0)).toBeCloseTo(200000, 5)
    expect(paid.at(-1)!.balance).toBe(0)
  })
  it("is worth what was lent when its payments are brought back to the start", () => {
    const worth = years({kind, without}).reduce((sum, year, row) => sum + due(year) / 1.07 ** (row + 1), 0)
    expect(worth).toBeCloseTo(200000, 5)
  })
})

it("shares a loan level over the periods", () => {
  expect(levelShare(0.06, 15)).toBeCloseTo(0.102963, 6) // 6 %, 15 years: 0.1029628
  expect(levelShare(0.08, 15)).toBeCloseTo(0.116829545, 9)
  expect(levelShare(0, 8)).toBe(0.125)
  expect(levelShare(1e-12, 8)).toBeCloseTo(0.125, 9)
})

describe("twenty loans of all kinds, by another program", () => {
  it.each(others.loans)(
    "$amount at $rate over $years years, $kind, $perYear times a year",
    ({of, kind, ...given}) => {
      const paid = schedule({...given, kind: kind as Loan["kind"]}) as readonly LoanYear[]
      for (const [year, interest, principal, balance] of of) {
        const own = paid[year! - 1]!
        expect(own.interest).toBeCloseTo(interest!, 2)
        expect(own.principal).toBeCloseTo(principal!, 2)
        expect(own.balance).toBeCloseTo(balance!, 2)
      }
      expect(of.length).toBeGreaterThanOrEqual(3)
    },
  )
  it("are twenty, of every kind", () => {
    expect(others.loans).toHaveLength(20)
    expect(new Set(others.loans.map(({kind}) => kind))).toEqual(new Set(LOAN_KINDS))
  })
})
