import type {Region} from "../workbook/document"

/** How numbers of a stored unit are shown and typed in a region: shown = stored × factor + offset. */
export interface Measure {
  /** The unit as shown; empty where there is none. */
  readonly unit: string
  readonly factor: number
  readonly offset: number
  /** Decimals that are shown beyond those of the column. */
  readonly moreDecimals: number
}

/** A piece of a unit: what it measures, and how many of the kind's first unit it is. */
interface Piece {
  readonly of: "mass" | "length" | "area" | "volume" | "temperature"
  readonly size: number
  /** The unit that takes its place in US measures. */
  readonly us?: string
  readonly moreDecimals?: number
}

/**
 * Exact by definition: pound and ton of NIST Handbook 44, Appendix C (a ton is 2000 lb); inch of 25.4 mm; gallon of 231 cubic
 * inches; the international acre of 43 560 square feet, 4046.8564224 m², as CONVERT of OpenFormula 1.2 has it (the US
 * survey acre is 4 parts in a million larger).
 */
const PIECES: Readonly<Record<string, Piece>> = {
  kg: {of: "mass", size: 1, us: "lb"},
  t: {of: "mass", size: 1000, us: "ton"},
  lb: {of: "mass", size: 0.45359237},
  ton: {of: "mass", size: 907.18474},
  "short ton": {of: "mass", size: 907.18474},
  // Chosen: two decimals more. A tenth of a millimetre is 0.004 in, and 1/16 in is 0.0625.
  mm: {of: "length", size: 0.001, us: "in", moreDecimals: 2},
  cm: {of: "length", size: 0.01, us: "in"},
  m: {of: "length", size: 1, us: "ft"},
  km: {of: "length", size: 1000, us: "mi"},
  in: {of: "length", size: 0.0254},
  ft: {of: "length", size: 0.3048},
  mi: {of: "length", size: 1609.344},
  ha: {of: "area", size: 10_000, us: "ac"},
  "m²": {of: "area", size: 1, us: "ft²"},
  ac: {of: "area", size: 4046.8564224},
  "ft²": {of: "area", size: 0.3048 ** 2},
  "m³": {of: "volume", size: 1, us: "ft³"},
  L: {of: "volume", size: 0.001, us: "US gal"},
  litre: {of: "volume", size: 0.001, us: "ft³", moreDecimals: 1}, // what crates and rooms hold; L is what tanks hold (chosen)
  "ft³": {of: "volume", size: 0.3048 ** 3},
  "US gal": {of: "volume", size: 231 * 0.0254 ** 3},
  "°C": {of: "temperature", size: 1, us: "°F"},
  "°F": {of: "temperature", size: 5 / 9},
}

/** Units of the laboratory and of physics, which stay as they are in US measures, with all that is written beside them. */
const STAYS = new Set(["g", "mg", "µg", "J", "kJ", "MJ", "W", "kW", "kWh", "Pa", "kPa", "K"])

/** Where a temperature itself is meant, and not a difference, its zero lies elsewhere: 0 °C is 32 °F. */
const ZERO_IN_CELSIUS: Readonly<Record<string, number>> = {"°C": 0, "°F": -160 / 9}

/** The number as it is shown, rounded to twelve digits, so that what was typed in other units reads back as typed. */
export function shownNumber(stored: number, {factor, offset}: Measure): number {
  if (factor === 1 && offset === 0) return stored
  const shown = Number((stored * factor + offset).toPrecision(12))
  return offset === 0 ? shown : Number(shown.toFixed(10)) + 0 // close to its zero a temperature has no twelve digits, nor a sign
}

/** The number to be stored for one that is typed in the unit of the measure, to fifteen digits: 50 °F is 10 °C. */
export const storedNumber = (shown: number, {factor, offset}: Measure): number =>
  factor === 1 && offset === 0 ? shown : Number(((shown - offset) / factor).toPrecision(15))

/** How a unit is shown; it is read once for each region. */
export function measureOf(unit: string | undefined, region: Region): Measure {
  let measures = held.get(region)
  if (!measures) held.set(region, (measures = new Map()))
  const found = measures.get(unit ?? "")
  if (found) return found
  const made = makeMeasure(unit ?? "", region)
  measures.set(unit ?? "", made)
  return made
}
const held = new WeakMap<Region, Map<string, Measure>>()

function makeMeasure(unit: string, {measures, currency}: Region): Measure {
  const named = currency === undefined ? unit : unit.replace(/(?<!\p{L})money(?!\p{L})/u, () => currency)
  const same: Measure = {unit: named, factor: 1, offset: 0, moreDecimals: 0}
  if (measures !== "US") return same
  const pieces = piecesIn(named)
  if (pieces.some(({name}) => STAYS.has(name))) return same
  const shown = pieces.map(({name, before}) => before + (PIECES[name]?.us ?? name)).join("")
  if (shown === named) return same
  const moreDecimals = pieces.reduce((sum, {name, power}) => {
    return power === 1 ? sum + (PIECES[name]?.moreDecimals ?? 0) : sum
  }, 0)
  const offset = named === "°C" ? 32 : 0
  return {unit: shown, factor: sizeOf(named).size / sizeOf(shown).size, offset, moreDecimals}
}

/**
 * A number with a unit of its own behind it, in another unit of the same kind, rounded to twelve digits: 44 kg in lb,
 * 50 °F in °C. Null where one cannot be turned into the other.
 */
export function turned(value: number, from: string, to: string): number | null {
  if (from === to) return value
  const [a, b] = [sizeOf(from), sizeOf(to)]
  if (a.kind !== b.kind || !a.isMeasured) return null
  const zero = (ZERO_IN_CELSIUS[from] ?? 0) - (ZERO_IN_CELSIUS[to] ?? 0)
  const there = (value * a.size + zero) / b.size
  return Number((zero === 0 ? there : Number(there.toFixed(10)) + 0).toPrecision(12))
}

/** A unit that a person types, with "money" for the sign of it. */
export const withMoney = (typed: string, {currency}: Region): string =>
  currency === undefined
    ? typed
    : piecesIn(typed)
        .map(({name, before}) => before + (name === currency ? "money" : name))
        .join("")

/** The unit to be stored for one that a person types: "kg/ha" for "lb/ac" where measures are of the US. */
export function storedUnit(typed: string, region: Region): string {
  const money = withMoney(typed, region)
  if (region.measures !== "US") return money
  const metric = piecesIn(money)
    .map(({name, before}) => before + (METRIC[name] ?? name))
    .join("")
  return measureOf(metric, region).unit === typed ? metric : money
}

/** By the US unit. Of several that are shown as one, the unit that sheets here use. */
const METRIC: Readonly<Record<string, string>> = {
  ...Object.fromEntries(Object.entries(PIECES).flatMap(([name, {us}]) => (us ? [[us, name]] : []))),
  in: "mm",
  "ft³": "litre",
}

/** Whether a unit means one thing in one region and another elsewhere: outside of the US a ton may be a tonne. */
export const isVague = (unit: string, {measures}: Region): boolean =>
  measures !== "US" && piecesIn(unit).some(({name}) => name === "ton")

/** Whether a unit measures something that has other units: "kg/ha" and "money/kg", but not "days" or "mg/g". */
export const isMeasured = (unit: string): boolean => sizeOf(unit).isMeasured

interface Size {
  /** What is measured, each kind with its power: "area-1 mass1". */
  readonly kind: string
  readonly size: number
  readonly isMeasured: boolean
}

function sizeOf(unit: string): Size {
  const found = sizes.get(unit)
  if (found) return found
  const powers = new Map<string, number>()
  let size = 1
  let isMeasured = false
  for (const {name, power} of piecesIn(unit)) {
    const piece = Object.hasOwn(PIECES, name) ? PIECES[name] : undefined
    const kind = piece?.of ?? name
    powers.set(kind, (powers.get(kind) ?? 0) + power)
    size *= (piece?.size ?? 1) ** power
    isMeasured ||= piece !== undefined
  }
  const kind = [...powers]
    .filter(([, power]) => power !== 0)
    .map(([kind, power]) => kind + power)
    .sort()
    .join(" ")
  const made = {kind, size, isMeasured}
  sizes.set(unit, made)
  return made
}
const sizes = new Map<string, Size>()

/** The names in a unit with what stands before each; behind "/" or "per" their power is -1. */
function piecesIn(unit: string): readonly {name: string; before: string; power: 1 | -1}[] {
  let power: 1 | -1 = 1
  return [...unit.matchAll(/([\s/·]|\bper\s)*(short ton|US gal|[^\s/·]+)/g)].map(([whole, , name = ""]) => {
    const before = whole.slice(0, whole.length - name.length)
    if (/\/|per/.test(before)) power = -1
    return {name, before, power}
  })
}
