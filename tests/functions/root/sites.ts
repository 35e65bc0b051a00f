import type {Climate} from "../../../functions/climate/climate"

/**
 * Sites of the trials, as sine curves round the year: an assumed stand-in for their weather. Soil has three quarters of
 * the air's swing, 20 days later. Degrees above the mean, light in MJ/m²/day.
 */
const site = (air: number, swing: number, light: number, lightSwing: number): Climate => {
  const days = (f: (day: number) => number) => Float64Array.from({length: 365}, (_, i) => f(i + 1))
  const wave = (day: number, shift: number) => Math.cos((2 * Math.PI * (day + shift)) / 365)
  return {
    air: days((day) => air - swing * wave(day, -20)),
    soil: days((day) => air - 0.75 * swing * wave(day, -40)),
    sun: days((day) => light - lightSwing * wave(day, 10)),
  }
}

export const sites = {
  generic: site(10, 9.5, 12, 8.5),
  iowa: site(9.3, 15.5, 14.8, 8.3),
  germany: site(10.3, 9.4, 11.5, 8.8),
  warmdry: site(12, 12.5, 16, 9.5),
}
