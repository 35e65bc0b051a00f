import type {ModelYear} from "../calendar"
import {alongYear, type Climate} from "../climate/climate"
import type {BalanceValues} from "./balanceValues"
import {draw} from "./draw"

/** A field's crowns in dormancy, kg/ha. */
export interface Crowns {
  /** Dry root without its sugar, S. */
  readonly structure: number
  /** Sugar in the store, C. */
  readonly reserve: number
}

/** What the weather of a model year does by the crop values, one entry a day. */
export interface Drivers {
  /** Pace of spears while cutting, rT with the warmth of the ridge: 1 at Growth_reference. */
  readonly spears: Float64Array
  /** Pace of fern growth, rT. */
  readonly fern: Float64Array
  /** Sugar that a kg of structure breathes, kg. */
  readonly breath: Float64Array
  /** Sugar that fern would make if it took in all the light, kg/ha: 10·eps·I·g(T). */
  readonly light: Float64Array
}

/** Days counted from 0 at the start of the model year. */
export interface Cutting {
  /** First day of cutting. */
  readonly open: number
  /** First day after cutting, the close + 1. Equal to `open` in a year without cutting. */
  readonly stop: number
  /** First day without green fern. */
  readonly fernEnd: number
}

/** The course of one model year: the state at the end of each day, kg/ha. */
export interface Course {
  readonly structure: Float64Array
  readonly reserve: Float64Array
  /** Dry fern; after the fern's end it stays as it was. */
  readonly fern: Float64Array
  /** Saleable spears cut so far. */
  readonly picked: Float64Array
  /** Spears that the season could bring at most, and what was left of them at the stop. */
  potential: number
  potentialLeft: number
  /** First day that begins with less than a tenth of the room for fern, or -1. */
  fullFern: number
}

/** Where the sugar went, day by day, kg/ha. In total, the change of the reserve is gained + short - breathed - drawn - built. */
export interface Ledger {
  readonly breathed: Float64Array
  /** By spears. */
  readonly drawn: Float64Array
  /** Into fern from the store. */
  readonly built: Float64Array
  readonly gained: Float64Array
  /** Use that an empty store could not meet. */
  readonly short: Float64Array
}

export const emptyCourse = (days: number): Course => ({
  structure: new Float64Array(days),
  reserve: new Float64Array(days),
  fern: new Float64Array(days),
  picked: new Float64Array(days),
  potential: 0,
  potentialLeft: 0,
  fullFern: -1,
})

export const emptyLedger = (days: number): Ledger => ({
  breathed: new Float64Array(days),
  drawn: new Float64Array(days),
  built: new Float64Array(days),
  gained: new Float64Array(days),
  short: new Float64Array(days),
})

/** The pace of growth at an air temperature: rT of physiology 8.2. */
const pace = (air: number, {Growth_base, Growth_reference, Growth_cap}: BalanceValues) =>
  clamp((air - Growth_base) / (Growth_reference - Growth_base), 0, Growth_cap)

/** How well leaf works at an air temperature, 0 to 1: g(T). */
function leafPace(air: number, {Leaf_cold, Leaf_warm, Leaf_hot, Leaf_stop}: BalanceValues): number {
  if (air <= Leaf_cold || air >= Leaf_stop) return 0
  if (air < Leaf_warm) return (air - Leaf_cold) / (Leaf_warm - Leaf_cold)
  return air <= Leaf_hot ? 1 : (Leaf_stop - air) / (Leaf_stop - Leaf_hot)
}

/** m² in a hectare and g in a kg: MJ/m² times g/MJ gives 10 kg/ha. */
const KG_HA = 10

type FourArrays = [Float64Array, Float64Array, Float64Array, Float64Array]

/** Lays a climate along a model year and turns it into what the balance is driven by. */
export function driversOf(climate: Climate, year: ModelYear, values: BalanceValues): Drivers {
  const air = alongYear(climate.air, year)
  const {Upkeep_rate, Upkeep_q10, Light_gain, Ridge_gain} = values
  const soil = alongYear(climate.soil, year)
  const sun = alongYear(climate.sun, year)
  const [spears, fern, breath, light] = [0, 1, 2, 3].map(() => new Float64Array(year.days)) as FourArrays
  const perDegree = Math.log(Upkeep_q10) / 10
  for (let day = 0; day < year.days; day++) {
    const degrees = air[day]!
    spears[day] = pace(degrees + Ridge_gain, values)
    fern[day] = pace(degrees, values)
    breath[day] = Upkeep_rate * Math.exp(perDegree * (soil[day]! - 20))
    // Monthly means of a dark winter can bring a line below 0 for some days.
    light[day] = KG_HA * Light_gain * Math.max(0, sun[day]!) * leafPace(degrees, values)
  }
  return {spears, fern, breath, light}
}

/**
 * The daily reserve balance of one hectare through a model year, in the order of its published steps: every right-hand
 * side takes the values at the start of the day. Fills `course` and gives it back.
 *
 * While cutting, each day brings a share of the spears still to come, by warmth, and each kg of them draws on the store.
 * From the stop on, the store builds fern while there is room, and the fern's own sugar goes to fern, to root and into the
 * store. The root breathes and a small share of it dies, all year round.
 *
 * `healthy` is the green share of the fern, day by day.
 */
export function dailyBalance(
  crowns: Crowns,
  drivers: Drivers,
  {open, stop, fernEnd}: Cutting,
  healthy: Float64Array,
  values: BalanceValues,
  course: Course,
  ledger: Ledger | null = null,
): Course {
  const {Potential_zero, Potential_full, Potential_cap, Spear_potential, Cut_rate, Scarce_low} = values
  const {Fern_build, Fern_cost, Fern_low, Fern_per_root, Fern_most, Light_spread, Leaf_area} = values
  const {To_fern, To_root, Root_cost, Root_most, Sugar_most} = values
  const scarceSpan = values.Scarce_high - Scarce_low
  const fernSpan = values.Fern_high - Fern_low
  const drawOfKg = draw(1, values)
  const shade = -Light_spread * Leaf_area
  const stays = 1 - values.Root_turnover
  const length = drivers.breath.length
  let {structure, reserve} = crowns
  let fern = 0
  let left = 0
  let picked = 0
  course.potential = 0
  course.potentialLeft = 0
  course.fullFern = -1

  for (let day = 0; day < length; day++) {
    const sugar = (1000 * reserve) / (reserve + structure)
    const breathed = drivers.breath[day]! * structure
    let drawn = 0
    let built = 0
    let gained = 0
    let rootGain = 0
    if (day === open) {
      const fill = clamp((sugar - Potential_zero) / (Potential_full - Potential_zero), 0, Potential_cap)
      left = Spear_potential * structure * fill
      course.potential = course.potentialLeft = left
    }
    if (day >= open && day < stop) {
      const cut = Cut_rate * drivers.spears[day]! * clamp((sugar - Scarce_low) / scarceSpan, 0, 1) * left
      left -= cut
      course.potentialLeft = left
      picked += cut
      drawn = cut * drawOfKg
    } else if (day >= stop && day < fernEnd) {
      const most = Math.min(Fern_most, Fern_per_root * structure)
      const room = Math.max(0, 1 - fern / most)
      if (course.fullFern < 0 && room < FULL) course.fullFern = day
      built = Fern_build * drivers.fern[day]! * reserve * room * clamp((sugar - Fern_low) / fernSpan, 0, 1)
      fern += built / Fern_cost
      const made = drivers.light[day]! * (1 - Math.exp(shade * fern * healthy[day]!))
      const toFern = To_fern * made * room
      const toRoot = To_root * made * Math.max(0, 1 - structure / Root_most)
      fern += toFern / Fern_cost
      rootGain = toRoot / Root_cost
      const fill = sugar / Sugar_most
      gained = (made - toFern - toRoot) * Math.max(0, 1 - fill * fill * fill * fill)
    }
    const next = reserve - breathed - drawn - built + gained
    if (ledger) {
      ledger.breathed[day] = breathed
      ledger.drawn[day] = drawn
      ledger.built[day] = built
      ledger.gained[day] = gained
      ledger.short[day] = next < 0 ? -next : 0
    }
    reserve = next > 0 ? next : 0
    structure = (structure + rootGain) * stays
    course.structure[day] = structure
    course.reserve[day] = reserve
    course.fern[day] = fern
    course.picked[day] = picked
  }
  return course
}

/** Fern counts as full once less than a tenth of its room is left (methods: full fern date). */
const FULL = 0.1

const clamp = (value: number, low: number, high: number) => (value < low ? low : value > high ? high : value)
