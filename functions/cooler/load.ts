import {defineFunction} from "../define"
import {optional, quantity} from "../parameters"

/** Mean load on a cooler that takes out a heat, kWh, in some hours, with other loads of `other` kW all the while; kW. */
export const load = (heat: number, hours: number, other: number): number => heat / hours + other

export const COOLER_LOAD = defineFunction({
  name: "COOLER.LOAD",
  summary: "Mean load on the cooler while it takes out a heat",
  about:
    "A mean over the hours: the peak is higher when much comes in at once. Other loads are walls, doors, pumps, lights, " +
    "people and the breath of what is in store (COOLER.BREATH).",
  parameters: {
    heat: quantity("Heat to take out", "kWh", {min: 0}),
    hours: quantity("Hours to do it in", "h", {above: 0}),
    other: optional(quantity("Other load", "kW", {min: 0}), 0),
  },
  returns: {label: "Mean load", unit: "kW"},
  sources: ["identity"],
  example: {formula: "=COOLER.LOAD(347.1,16,6)", gives: 27.7},
  calculate: ({heat, hours, other}) => load(heat, hours, other),
})
