import {defineFunction} from "../define"
import {optional, quantity} from "../parameters"

/** Height above the tips beyond the room to keep for growth, mm; below 0 the tips will meet the lid. */
export const headSpace = (inside: number, spear: number, room: number): number => inside - spear - room

export const PACK_HEAD_SPACE = defineFunction({
  name: "PACK.HEAD_SPACE",
  summary: "Height above the tips in a crate beyond the room to keep for growth",
  about:
    "Cut spears go on growing in the box, fast when warm; tips that touch the lid bend. A room of 75 mm (3 inches) is common " +
    "practice for tapered crates; 25 to 40 mm is the other figure in the trade. How much they grow at each temperature was " +
    "not found: a check, no model. Below 0 there is too little room.",
  parameters: {
    inside: quantity("Inside height of the crate, less the pad", "mm", {above: 0, max: 2000}),
    spear: quantity("Length of the packed spears", "mm", {above: 0, max: 1000}),
    room: optional(quantity("Room to keep above the tips", "mm", {min: 0, max: 1000}), 75),
  },
  returns: {label: "Spare height", unit: "mm"},
  sources: ["practice"],
  example: {formula: "=PACK.HEAD_SPACE(305,230)", gives: 0},
  calculate: ({inside, spear, room}) => headSpace(inside, spear, room),
})
