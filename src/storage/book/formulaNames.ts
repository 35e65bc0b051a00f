import {catalogue} from "../../../functions/catalogue"
import {tokens} from "../../workbook/formula"

/** The functions that are ours alone, by name. */
const own: ReadonlySet<string> = new Set(catalogue.map(({name}) => name))

/** Who defined a function that no standard has, as OpenFormula 5.6 asks a document to say. */
const DEFINER = "FERNLEDGER."

/** Dotted names that ECMA-376 has from its first edition on, or writes without a prefix. */
const FIRST_DOTTED = new Set(["ERROR.TYPE", "NETWORKDAYS.INTL", "WORKDAY.INTL", "ISO.CEILING"])

/** Functions that came after the first edition of ECMA-376, which are written with a prefix in its files. */
const LATER = new Set(
  (
    "ACOT ACOTH ARABIC BASE BITAND BITLSHIFT BITOR BITRSHIFT BITXOR COMBINA COT COTH CSC CSCH DAYS DECIMAL FORMULATEXT " +
    "GAMMA GAUSS HSTACK IFNA IFS IMCOSH IMCOT IMCSC IMCSCH IMSEC IMSECH IMSINH IMTAN ISFORMULA ISOWEEKNUM MAXIFS MINIFS " +
    "NUMBERVALUE PDURATION PHI RRI SEC SECH SEQUENCE SHEET SHEETS SWITCH TEXTJOIN UNICHAR UNICODE UNIQUE VSTACK XLOOKUP XOR"
  ).split(" "),
)
const SORTING = new Set(["FILTER", "SORT"])

/** The formula with its functions named as in .xlsx: our own by their short names. */
export const namedForXlsx = (formula: string) =>
  renamed(formula, (name) => {
    if (own.has(name)) return name
    if (SORTING.has(name)) return `_xlfn._xlws.${name}`
    return LATER.has(name) || (name.includes(".") && !FIRST_DOTTED.has(name)) ? `_xlfn.${name}` : name
  })

/** The formula with its functions named as in .ods: our own with the definer before them. */
export const namedForOds = (formula: string) =>
  renamed(formula, (name) => (own.has(name) ? DEFINER + name : name))

/** The formula with what a file puts before the names of functions taken off, ours and others', where a known name is left. */
export const namedHere = (formula: string, known: ReadonlySet<string>) =>
  renamed(formula, (name) => {
    if (known.has(name)) return name
    for (let at = name.indexOf("."); at >= 0; at = name.indexOf(".", at + 1))
      if (known.has(name.slice(at + 1))) return name.slice(at + 1)
    return name
  })

const renamed = (formula: string, name: (upper: string) => string) =>
  tokens(formula)
    .map(({kind, text}) => (kind === "function" ? name(text.toUpperCase()) : text))
    .join("")
