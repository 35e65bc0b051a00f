import {HyperFormula} from "hyperformula"
import {bench, describe} from "vitest"
import {dayOf} from "../../functions/calendar"
import {registerCatalogue} from "../../functions/plugin"
import {balanceDefaults} from "../../functions/root/balanceValues"
import {dailyBalance, driversOf, emptyCourse} from "../../functions/root/dailyBalance"
import {sites} from "../functions/root/sites"

registerCatalogue()

const {air, soil, sun} = sites.generic
const year = {first: dayOf("2026-01-01")!, days: 365}
const [open, stop, fernEnd] = [114, 170, 287]
const cutting = {open, stop, fernEnd}
const whole = new Float64Array(365).fill(1)

/** The year with its numbers typed into it: no names, no values to change, no course but the crop. */
function plainYear(structure: number, reserve: number): number {
  let [S, C, F, B, picked] = [structure, reserve, 0, 0, 0]
  for (let d = 0; d < 365; d++) {
    const T = air[d]!
    const c = (1000 * C) / (C + S)
    const rT = Math.min(2.2, Math.max(0, (T - 6) / 9))
    const m = 0.0022 * 2 ** ((soil[d]! - 20) / 10) * S
    let use = m
    let gain = 0
    if (d === 114) B = 2.2 * S * Math.min(1.15, Math.max(0, (c - 80) / 420))
    if (d >= 114 && d < 170) {
      const y = 0.0125 * rT * Math.min(1, Math.max(0, (c - 120) / 100)) * B
      B -= y
      picked += y
      use = m + y * 0.20832
    } else if (d >= 170 && d < 287) {
      const room = Math.max(0, 1 - F / Math.min(5500, 0.8 * S))
      const mob = 0.045 * rT * C * room * Math.min(1, Math.max(0, (c - 20) / 100))
      F += mob / 1.5
      use = m + mob
      const g = T <= 5 || T >= 38 ? 0 : T < 15 ? (T - 5) / 10 : T <= 28 ? 1 : (38 - T) / 10
      const A = 12 * sun[d]! * (1 - Math.exp(-0.00045 * F)) * g
      const toF = 0.6 * A * room
      const toS = 0.29 * A * Math.max(0, 1 - S / 7500)
      F += toF / 1.5
      S += toS / 1.5
      gain = (A - toF - toS) * Math.max(0, 1 - (c / 620) ** 4)
    }
    C = Math.max(0, C - use + gain)
    S *= 1 - 0.00028
  }
  return picked
}

const course = emptyCourse(365)
const modelled = (structure: number, reserve: number) => {
  const drivers = driversOf(sites.generic, year, balanceDefaults)
  return dailyBalance({structure, reserve}, drivers, cutting, whole, balanceDefaults, course).picked[364]!
}
if (Math.abs(modelled(6000, 6400) - plainYear(6000, 6400)) > 1e-6) throw new Error("The two years differ")

describe("one year of one planting", () => {
  bench("by the daily balance, its weather laid along the year anew", () => void modelled(6000, 6400))
  const drivers = driversOf(sites.generic, year, balanceDefaults)
  bench("by the daily balance, the weather laid along already", () => {
    dailyBalance({structure: 6000, reserve: 6400}, drivers, cutting, whole, balanceDefaults, course)
  })
  bench("by a plain loop with typed numbers", () => void plainYear(6000, 6400))
})

describe("1000 plantings after one day of weather has changed", () => {
  const PLANTINGS = 1000
  const cells = Array.from({length: PLANTINGS}, (_, i) => [
    ...(i < 365 ? [air[i]!, soil[i]!, sun[i]!] : [null, null, null]),
    5000 + i,
    6000 + i,
    `=ROOT.SEASON("picked",D${i + 1},E${i + 1},$A$1:$C$365,"2026-04-25","2026-06-19")`,
  ])
  const engine = HyperFormula.buildFromArray(cells, {licenseKey: "gpl-v3", precisionRounding: 14})
  let warmth = 0
  bench("in cells", () => {
    engine.setCellContents({sheet: 0, row: 120, col: 0}, air[120]! + (warmth = 1 - warmth))
  })
  bench("a plain loop over the same plantings", () => {
    for (let i = 0; i < PLANTINGS; i++) plainYear(5000 + i, 6000 + i)
  })
})
