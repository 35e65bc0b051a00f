import {sentenceOf} from "../faults"
import type {Fault} from "../value"
import type {CellAddress} from "../document"
import {keyOf, type Checked} from "./checked"
import type {Finding} from "./finding"

/**
 * Errors, each told once where it began, with how many cells show it. What is not available yet (#N/A) is none, unless
 * something was looked up and not found.
 */
export function errors({faults, words}: Checked): Finding[] {
  const origins = new Map<string, {at: CellAddress; fault: Fault; shown: number}>()
  for (const {at, fault} of faults) {
    if (!isSlip(fault)) continue
    const began = fault.began ?? at
    const held = origins.get(keyOf(began))
    if (held) held.shown++
    else origins.set(keyOf(began), {at: began, fault, shown: 1})
  }
  return [...origins.values()].map(({at, fault, shown}) => ({
    rule: "error",
    cells: [at],
    sentence: `${words.name(at)}, ${fault.code}: ${sentenceOf(fault)}${shown > 1 ? `; ${shown} cells show it` : ""}`,
    alike: "show an error of their own",
  }))
}

const isSlip = ({code, reason}: Fault) =>
  code !== "#CYCLE!" && (code !== "#N/A" || reason === "Value not found.")
