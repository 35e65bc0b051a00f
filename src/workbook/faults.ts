import {HyperFormula} from "hyperformula"
import {catalogue} from "../../functions/catalogue"
import type {Fault} from "./value"

/**
 * What a fault says to a person, without a full stop. Sentences of our own functions pass through;
 * what the engine says, or leaves unsaid, is put into plain words.
 */
export function sentenceOf({code, reason}: Fault): string {
  if (reason === "") return CODES[code] ?? `This cannot be worked out (${code})`
  if (reason.startsWith("Parsing error.")) return UNREADABLE
  const unknownFunction = /^Function name (.*) not recognized\.$/.exec(reason)?.[1]
  if (unknownFunction !== undefined) return noFunction(unknownFunction)
  const unknownName = /^Named expression (.*) not recognized\.$/.exec(reason)?.[1]
  if (unknownName !== undefined) return `There is no named value ${unknownName}`
  return REASONS[reason] ?? reason
}

const UNREADABLE = "This formula cannot be read"

/** By code, where the engine gives no reason. */
const CODES: Readonly<Record<string, string>> = {
  "#DIV/0!": "Divides by zero",
  "#N/A": "Not available yet",
  "#NAME?": "This formula uses a name that does not exist",
  "#NUM!": "There is no such number",
  "#REF!": "Points at a cell that was deleted",
  "#VALUE!": "A value is of the wrong kind",
  "#CYCLE!": "Goes round in a ring",
  "#SPILL!": "There is no room for all the values: a cell beside or below is not empty",
  "#ERROR!": UNREADABLE,
}

/** By the engine's reason. */
const REASONS: Readonly<Record<string, string>> = {
  "Distinct signs.": "The number and its step must both be above or both be below zero",
  "Wrong number of arguments.": "Too few or too many arguments",
  "Empty function argument.": "An argument is missing",
  "Empty array not allowed.": "Nothing there yet",
  "Array dimensions are not compatible.": "The ranges do not fit together: their sizes differ",
  "Range dimensions are not compatible with the window size and the stride.":
    "The range does not divide into windows of this size",
  "No space for array result.": "There is no room for all the values: a cell beside or below is not empty",
  "Value too small.": "A number is too small here",
  "Value too large.": "A number is too large here",
  "Incorrect criterion.": "A condition cannot be read",
  "Range spans more than one sheet.": "A range must lie on one sheet",
  "Cell range expected.": "A range of cells is needed here",
  "Wrong range dimension.": "The range has the wrong size here",
  "Cell range not allowed.": "One value is needed here, not a range",
  "Value cannot be coerced to number.": "A number is needed here, not text",
  "Number argument expected.": "A number is needed here",
  "Value needs to be an integer.": "A whole number is needed here",
  "Mode not recognized.": "An argument that chooses the way of working has no such choice",
  "Date outside of bounds.": "The date is outside the years that can be used",
  "Resulting reference is out of the sheet.": "Points outside the sheet",
  "Wrong type of argument.": "An argument is of the wrong kind",
  "NaN or infinite value encountered.": "There is no such number",
  "Ranges need to be of equal length.": "The ranges must be of one length",
  "Value cannot be negative.": "A number must not be below zero here",
  "String does not represent a binary number.": "The text is not a binary number",
  "String does not represent an octal number.": "The text is not an octal number",
  "String does not represent a hexadecimal number.": "The text is not a hexadecimal number",
  "End period needs to be at least start period.": "The last period comes before the first",
  "Cell reference expected.": "A cell is needed here",
  "Empty range not allowed.": "Nothing there yet",
  "Address is not correct.": "Points at no cell",
  "Number-only range expected.": "A range of numbers alone is needed here",
  "Value not found.": "The value looked for is not there",
  "Value in base too large.": "The number is too large in this base",
  "Value in base too small.": "The number is too small in this base",
  "Value in base too long.": "The number has too many digits in this base",
  "Length cannot be negative.": "A length must not be below zero",
  "Pattern not found.": "The text looked for is not there",
  "Needs at least one value.": "Nothing there yet: at least one value is needed",
  "Range needs to contain at least two elements.": "At least two values are needed",
  "Range needs to contain at least three elements.": "At least three values are needed",
  "All x values are equal.": "All x values are equal",
  "Index out of bounds.": "There is no row or column of this number",
  "Index too large.": "There is no row or column of this number",
  "Expected formula.": "The cell holds no formula",
  "Count cannot be negative.": "A count must not be below zero",
  "Sheet does not exist.": "There is no sheet of this name",
  "Period number cannot exceed life length.": "The period lies after the end of the life",
  "Invalid date.": "There is no such date",
  "Result of bitshift is too long.": "The result is too large",
  "Empty-string argument not allowed.": "A text must not be empty here",
  "Length out of bounds.": "A length is too small or too large here",
  "Time cannot be negative.": "A time must not be below zero",
  "No default option.": "No choice matches, and none stands for the rest",
  "None of the conditions were met.": "None of the conditions holds",
  "Selector cannot exceed the number of arguments.": "There is no choice of this number",
  "Start date needs to be earlier than end date.": "The first date must come before the last",
  "String does not represent correct DateTime.": "The text is not a date such as 2026-04-25",
  "Character code out of bounds.": "There is no character of this number",
  "Argument cannot be 0.": "A number must not be zero here",
  "Argument cannot be less than 1.": "A number must be at least 1 here",
  "Incorrect weekend bitmask string.": "The free days of the week cannot be read",
  "Invalid roman numeral.": "The text is not a Roman number",
  "Wrong order of values.": "The lower value must come before the upper",
  "Complex number expected.": "A complex number is needed here",
  "Should be 'i' or 'j'.": "The sign of a complex number must be i or j",
  "Array dimensions mismatched.": "The ranges do not fit together: their sizes differ",
  "Result exceeds the maximum allowed length.": "The text grows too long",
}

/** Says that there is no such function, and which one was probably meant. */
export function noFunction(name: string): string {
  const near = nearestFunction(name)
  return `There is no function ${name}${near === null ? "" : ` (did you mean ${near}?)`}`
}

/**
 * The function whose name differs least: by two letters at most among our own, once a word that people also use
 * is put into ours, by one among the long names of the engine, whose short names are too much alike to guess.
 */
function nearestFunction(name: string): string | null {
  const ours = name.replace(/[A-Z]+/g, (word) => OUR_WORDS[word] ?? word)
  const own = catalogue.map((one) => ({
    name: one.name,
    distance: Math.min(lettersApart(one.name, name), lettersApart(one.name, ours)),
  }))
  const others = HyperFormula.getRegisteredFunctionNames("enGB")
    .filter((one) => one.length > 4)
    .map((one) => ({name: one, distance: lettersApart(one, name)}))
  const close = [
    ...own.filter(({distance}) => distance <= 2),
    ...others.filter(({distance}) => distance <= 1),
  ]
  return close.sort((a, b) => a.distance - b.distance)[0]?.name ?? null
}

/** Words that people may type for those in the names of our functions; chosen. */
const OUR_WORDS: Readonly<Record<string, string>> = {
  AVERAGE: "MEAN",
  AVG: "MEAN",
  WEIGHT: "MASS",
  SLOPE: "TREND",
  RATE: "GROWTH",
  BOXES: "CARTONS",
  STOCK: "RESERVE",
}

/** How many letters must be put in, left out, changed or swapped with their neighbour to get from one word to the other. */
function lettersApart(a: string, b: string): number {
  const rows = [Array.from({length: b.length + 1}, (_, j) => j)]
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    for (let j = 1; j <= b.length; j++) {
      const changed = rows[i - 1]![j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1)
      const swaps = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]
      const swapped = swaps ? rows[i - 2]![j - 2]! + 1 : Infinity
      row.push(Math.min(changed, swapped, rows[i - 1]![j]! + 1, row[j - 1]! + 1))
    }
    rows.push(row)
  }
  return rows[a.length]![b.length]!
}
