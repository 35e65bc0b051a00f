import {defineFunction} from "../define"
import {quantity} from "../parameters"
import {roundUp} from "../rounding"
import {aboutCutting, area, cutting} from "./area"

/** People needed to cut `ground`, ha, once in a day, rounded up; what one of them cuts is by weight or by walking. */
export const cutters = (ground: number, kgHa: number, rate: number, shift: number, walk: number): number =>
  roundUp(ground / area(kgHa, rate, shift, walk))

export const CREW_CUTTERS = defineFunction({
  name: "CREW.CUTTERS",
  summary: "People needed to cut a piece of ground once in a day, rounded up",
  about: `On a thin picking the walk sets the number, on a heavy one the weight. ${aboutCutting}`,
  parameters: {area: quantity("Ground to cut that day", "ha", {min: 0}), ...cutting},
  returns: {label: "People needed", unit: "people"},
  sources: ["planning", "ruralNews"],
  example: {formula: "=CREW.CUTTERS(6.4,200,20,8)", gives: 8},
  calculate: ({area, kg_ha, rate, shift, walk}) => cutters(area, kg_ha, rate, shift, walk),
})
