import {wrongKind, type Refusal} from "../refusal"
import {defineStandard} from "./define"
import {optionally, text} from "./parameters"

/** The number that a text writes, with the marks given: the six steps of OpenFormula 6.13.28. */
export function numberValue(written: string, decimal: string, group: string): number | Refusal {
  if (decimal.length !== 1) return wrongKind(`The decimal mark must be one character, not "${decimal}"`)
  if (group.includes(decimal)) return wrongKind(`The decimal mark "${decimal}" must not part groups too`)
  const point = written.includes(decimal) ? written.indexOf(decimal) : written.length
  const whole = Array.from(written.slice(0, point)).filter((letter) => !group.includes(letter))
  const tidy = (whole.join("") + written.slice(point).replace(decimal, ".")).replace(/\s/g, "")
  const percents = /%*$/.exec(tidy)![0].length
  const number = tidy.slice(0, tidy.length - percents)
  // A number of XML Schema part 2, 3.2.4, that is finite.
  if (!/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(number)) return wrongKind(`"${written}" is no number`)
  return Number(number) / 100 ** percents
}

export const NUMBERVALUE = defineStandard({
  name: "NUMBERVALUE",
  section: "6.13.28",
  summary: "The number that a text writes, in any country’s marks",
  about:
    "For numbers from elsewhere that have come as text. With the group mark left out none is passed over, so that 1,5 is " +
    "not taken for 15.",
  parameters: {
    text: text("The text"),
    decimal: optionally(text("Decimal mark", "one character"), ".", '"."'),
    group: optionally(text("Marks that part groups of digits", "characters"), "", "none"),
  },
  returns: {label: "Number", unit: "number"},
  refuses: ["text that writes no number"],
  example: {formula: '=NUMBERVALUE("1.234,5",",",".")', gives: 1234.5},
  calculate: ({text: written, decimal, group}) => numberValue(written, decimal, group),
})
