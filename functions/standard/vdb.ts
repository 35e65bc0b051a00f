import {outOfRange, type Refusal} from "../refusal"
import {defineStandard} from "./define"
import {logical, number, optionally} from "./parameters"

/**
 * What an asset loses in worth from one time to another of its life, by the declining balance: each period the
 * `factor / life` part of what is left, never below the salvage value. It goes over to equal parts of the rest once
 * those are more, unless `keepsDeclining`. A part of a period takes its share of what the whole period loses.
 */
export function vdb(
  {cost, salvage, life, factor}: {cost: number; salvage: number; life: number; factor: number},
  from: number,
  to: number,
  keepsDeclining: boolean,
): number {
  let [left, lost] = [cost, 0]
  for (let period = 0; period < to; period++) {
    const length = Math.min(1, life - period)
    const declining = ((left * factor) / life) * length
    const evenly = ((left - salvage) / (life - period)) * length
    const allowance = Math.min(
      keepsDeclining ? declining : Math.max(declining, evenly),
      Math.max(0, left - salvage),
    )
    lost += (allowance * Math.max(0, Math.min(to, period + 1) - Math.max(from, period))) / length
    left -= allowance
  }
  return lost
}

const MOST_PERIODS = 12_000 // a thousand years of months; chosen, since each period is worked out

export const VDB = defineStandard({
  name: "VDB",
  section: "6.12.50",
  summary: "What an asset loses in worth between two times, by declining balance",
  about:
    "Goes over to equal parts of the rest once those are more, unless told to keep declining. A part of a period takes its " +
    "share of what the whole period loses. Tax offices have rules of their own: ask your tax adviser.",
  parameters: {
    cost: number("Cost of the asset", {min: 0}),
    salvage: number("Worth at the end of its life", {min: 0}),
    life: number("Periods of its life", {above: 0}),
    from: number("Time from which it counts, in periods", {min: 0}),
    to: number("Time up to which it counts, in periods", {min: 0}),
    factor: optionally(number("How many times the even rate", {above: 0}), 2),
    keeps: optionally(logical("Whether it keeps declining to the end"), false, "FALSE"),
  },
  returns: {label: "Loss in worth", unit: "number"},
  refuses: ["times that are not in order within its life", `a life of more than ${MOST_PERIODS} periods`],
  example: {formula: "=VDB(1000,0,5,3,4)", gives: 108},
  calculate: ({cost, salvage, life, from, to, factor, keeps}): number | Refusal => {
    if (life > MOST_PERIODS)
      return outOfRange(`Periods of its life must be up to ${MOST_PERIODS}, not ${life}`)
    if (from > to || to > life)
      return outOfRange(`Times must be in order and up to ${life} periods, not ${from} and ${to}`)
    return vdb({cost, salvage, life, factor}, from, to, keeps)
  },
})
