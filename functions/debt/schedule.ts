import {outOfRange, type Refusal} from "../refusal"

/** How a loan is paid back, by the words a person types. */
export const LOAN_KINDS = [
  "level",
  "equal principal",
  "interest only, then level",
  "interest added, then level",
] as const
export type LoanKind = (typeof LOAN_KINDS)[number]

export interface Loan {
  /** Money lent. */
  readonly amount: number
  /** Interest a year, as a share; each payment takes rate/perYear of the balance. */
  readonly rate: number
  readonly years: number
  readonly kind: LoanKind
  /** Years at the start in which no principal is paid; 0 for the kinds without them. */
  readonly without: number
  readonly perYear: number
}

/** What one year of a loan asks for and leaves, money. */
export interface LoanYear {
  readonly interest: number
  readonly principal: number
  /** Owed at the end of the year. */
  readonly balance: number
}

/**
 * The years of a loan, paid at the end of each of `perYear` equal parts of a year; nothing is rounded to the cent. Interest
 * that is added in the first years raises the balance, so their principal is below 0 by as much and nothing is due.
 */
export function schedule(loan: Loan): readonly LoanYear[] | Refusal {
  const {amount, rate, years, kind, without, perYear} = loan
  const starts = kind.includes("then")
  if (!starts && without > 0)
    return outOfRange(`Years without principal are ${without}, but a loan of the kind "${kind}" has none`)
  if (starts && without >= years)
    return outOfRange(`Years without principal (${without}) must be fewer than the loan's ${years} years`)
  const share = rate / perYear
  const added = kind.startsWith("interest added")
  const payments = (years - without) * perYear
  const grown = added ? amount * (1 + share) ** (without * perYear) : amount
  const level = grown * levelShare(share, payments)
  let balance = amount
  return Array.from({length: years}, (_, year) => {
    let [interest, principal] = [0, 0]
    for (let part = 0; part < perYear; part++) {
      const due = balance * share
      const paid =
        year < without ? (added ? -due : 0) : kind === "equal principal" ? amount / payments : level - due
      interest += due
      principal += paid
      balance -= paid
    }
    if (year === years - 1) balance = 0 // a last digit left over would be owed, and due, in the years after
    return {interest, principal, balance}
  })
}

/** Level payment on 1 over some periods at a rate each: i/(1 - (1 + i)^-n), 1/n without interest. */
export const levelShare = (rate: number, periods: number): number =>
  rate === 0 ? 1 / periods : rate / -Math.expm1(-periods * Math.log1p(rate))
