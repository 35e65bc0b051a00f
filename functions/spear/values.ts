import type {CropValue} from "../cropValue"

/** Constants of spear growth (green crop), by their names on the sheet `Crop values`. */
export const spearValues = {
  Stretch_rate: {
    value: 0.05,
    label: "Relative growth of a spear per day and °C above Stretch_base",
    unit: "per day and °C",
    limits: {above: 0, max: 0.2},
    tag: "assumption",
    from: "Chosen so that growth is 0.25 a day at 10 °C and 1.00 at 25 °C, the range of Krarup & Contreras (2002): 0.22 to 1.07",
  },
  Stretch_base: {
    value: 5,
    label: "Temperature below which a spear does not grow",
    unit: "°C",
    limits: {min: -5, max: 15},
    tag: "assumption",
    from: "Chosen together with Stretch_rate",
  },
  Spear_start: {
    value: 2,
    label: "Length at which a spear counts as come up",
    unit: "cm",
    limits: {above: 0, max: 10},
    tag: "assumption",
    from: "Planning value of this planner",
  },
  Cut_shortest: {
    value: 16,
    label: "Shortest spear that is cut",
    unit: "cm",
    limits: {above: 0, max: 40},
    tag: "assumption",
    from: "Planning value of this planner; trade lengths run from 18 to 25 cm before trimming",
  },
  Cut_longest: {
    value: 30,
    label: "Longest spear that can still be sold",
    unit: "cm",
    limits: {above: 0, max: 60},
    tag: "assumption",
    from: "Planning value; tips branch at 37 cm early and 21 cm late in the season (Krarup & Contreras 2002)",
  },
  Spear_shape: {
    value: 0.6,
    label: "Mass of a spear 1 cm thick and 1 cm long",
    unit: "g",
    limits: {above: 0, max: 1},
    tag: "assumption",
    from: "Gives 18.1 g at 12 mm and 21 cm, inside the national mean spears of 18.1 and 19.1 g",
  },
  Spear_thinning: {
    value: 0.35,
    label: "How much thinner spears are once all that a season can bring have come",
    unit: "share",
    limits: {min: 0, max: 0.9},
    tag: "assumption",
    from: "Planning value of this planner: published in words only, as a fast drop after weeks 2 to 5",
  },
} as const satisfies Record<string, CropValue>
