import {valuesOf} from "../cropValues"
import {defineFunction} from "../define"
import {quantity} from "../parameters"

/** Mass of a spear, g: shape·(D/10)²·L, with the diameter D in mm and the length L in cm. */
export const mass = (diameter: number, length: number, shape: number): number =>
  shape * (diameter / 10) ** 2 * length

export const SPEAR_MASS = defineFunction({
  name: "SPEAR.MASS",
  summary: "Mass of a spear from its diameter and length",
  about:
    "With the default shape a spear of 12 mm and 21 cm weighs 18.1 g, inside the mean spears of two whole crops: 18.1 g in " +
    "Michigan and 19.1 g in the United Kingdom. Weigh a hundred of your own and set Spear_shape.",
  parameters: {
    diameter: quantity("Spear diameter", "mm", {above: 0, max: 60}),
    length: quantity("Spear length", "cm", {above: 0, max: 100}),
    values: valuesOf("Spear_shape"),
  },
  returns: {label: "Mass of the spear", unit: "g"},
  sources: ["planning", "michiganBoard", "times2017"],
  example: {formula: "=SPEAR.MASS(12,23)", gives: 19.9},
  calculate: ({diameter, length, values}) => mass(diameter, length, values.Spear_shape),
})
