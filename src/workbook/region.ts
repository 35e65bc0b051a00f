import type {Document, Region} from "./document"

/** The sign before decimals. */
export type Decimal = "." | ","

/** What holds where a workbook says nothing: decimal point, metric, ambiguous dates asked about. */
export const PLAIN_REGION: Region = {}

export const regionOf = ({region}: Pick<Document, "region">): Region => region ?? PLAIN_REGION

export const decimalOf = ({region}: Pick<Document, "region">): Decimal => region?.decimal ?? "."

/** The document with another region; without one where all of it is plain. */
export function withRegion(document: Document, region: Region): Document {
  const {region: _, sheets, ...rest} = document
  const said = Object.entries(region).filter(([, value]) => value !== undefined)
  return {...rest, ...(said.length ? {region: Object.fromEntries(said)} : {}), sheets}
}

/** Why a word or sign cannot stand for money, or null: it must not run into the number or the unit beside it. */
export function currencyRefused(currency: string | undefined): string | null {
  if (currency === undefined) return null
  if (/[\d\s/.,;·%]/.test(currency) || currency === "")
    return `“${currency}” cannot stand for money: type a sign or a word such as € or USD, without digits, spaces or “/”`
  if (currency.length > 12) return `“${currency}” is too long for a sign of money: 12 letters at most`
  return null
}
