import type {CashYear, YieldEvidence} from "../../../src/workbook/lender"

/** A year of cash and debt with what is not of interest left at rest. */
export const cashYear = (
  year: number,
  capacity: number,
  due: number,
  more: Partial<CashYear> = {},
): CashYear => ({
  year,
  capacity,
  due,
  cover: due > 0 ? capacity / due : null,
  short: Math.max(0, due - capacity),
  cause: "",
  breakPrice: null,
  price: null,
  stressed: null,
  cells: {},
  ...more,
})

/** The case of a lender's question: five years with 104 000 due in each, and a replanting in the second. */
export const fiveYears = [182000, 96000, 118000, 171000, 205000].map((capacity, i) =>
  cashYear(2026 + i, capacity, 104000, i === 1 ? {cause: "replanting North Bench", stressed: 0.13} : {}),
)

export const evidence = (planting: string, more: Partial<YieldEvidence> = {}): YieldEvidence => ({
  planting,
  age: 9,
  record: [
    {age: 6, kg: 4150, isDisaster: false},
    {age: 7, kg: 3820, isDisaster: false},
    {age: 8, kg: 4460, isDisaster: false},
  ],
  mean: 12430 / 3,
  atThisAge: null,
  projection: 4900,
  low: null,
  high: null,
  gap: 4900 / (12430 / 3) - 1,
  gapAtThisAge: null,
  reason: "no reason given",
  cells: {},
  ...more,
})
