import {wrongKind, type Refusal} from "../refusal"
import {defineStandard} from "./define"
import {number, text} from "./parameters"

/** A unit as `size` of its group's first unit, counted from `zero` of them. */
interface Unit {
  readonly group: string
  readonly size: number
  readonly zero?: number
  /** May carry a decimal prefix; in a square unit the prefix counts twice. */
  readonly power?: 1 | 2
}

const FOOT = 0.3048 // m, exactly
const MILE = 5280 * FOOT
const POUND = 453.59237 // g, exactly

const area = (size: number, power?: 2): Unit => ({group: "area", size, ...(power && {power})})
const length = (size: number, power?: 1): Unit => ({group: "length", size, ...(power && {power})})
const mass = (size: number, power?: 1): Unit => ({group: "mass", size, ...(power && {power})})
const temperature = (size: number, zero: number, power?: 1): Unit => ({
  group: "temperature",
  size,
  zero,
  ...(power && {power}),
})

/** OpenFormula 6.16.18, table 24: the groups area (m²), distance (m), mass (g) and temperature (K); symbols in its brackets too. */
const UNITS: ReadonlyMap<string, Unit> = new Map(
  Object.entries({
    uk_acre: area(4046.8564224),
    us_acre: area(4046 + 13525426 / 15499969),
    "ft2 ft^2": area(FOOT ** 2),
    ha: area(10_000),
    "in2 in^2": area(0.0254 ** 2),
    "m2 m^2": area(1, 2),
    Morgen: area(2500),
    "mi2 mi^2": area(MILE ** 2),
    "Nmi2 Nmi^2": area(1852 ** 2),
    "yd2 yd^2": area(0.9144 ** 2),
    ar: {group: "area", size: 100, power: 1},
    ell: length(45 * 0.0254),
    ft: length(FOOT),
    in: length(0.0254),
    m: length(1, 1),
    mi: length(MILE),
    Nmi: length(1852),
    survey_mi: length(6336000 / 3937),
    yd: length(0.9144),
    g: mass(1, 1),
    grain: mass(POUND / 7000),
    "cwt shweight": mass(100 * POUND),
    "uk_cwt lcwt hweight": mass(112 * POUND),
    lbm: mass(POUND),
    stone: mass(14 * POUND),
    ton: mass(2000 * POUND),
    ozm: mass(POUND / 16),
    "uk_ton LTON brton": mass(2240 * POUND),
    "C cel": temperature(1, 273.15),
    "F fah": temperature(5 / 9, 459.67),
    "K kel": temperature(1, 0, 1),
    Rank: temperature(5 / 9, 0),
    Reau: temperature(5 / 4, 273.15 * 0.8),
  } satisfies Record<string, Unit>).flatMap(([symbols, unit]) =>
    symbols.split(" ").map((symbol) => [symbol, unit] as const),
  ),
)

/** OpenFormula table 25. */
const PREFIXES: Readonly<Record<string, number>> = {
  Y: 24,
  Z: 21,
  E: 18,
  P: 15,
  T: 12,
  G: 9,
  M: 6,
  k: 3,
  h: 2,
  da: 1,
  e: 1,
  d: -1,
  c: -2,
  m: -3,
  u: -6,
  n: -9,
  p: -12,
  f: -15,
  a: -18,
  z: -21,
  y: -24,
}

/** What people write for a unit that has another symbol in the standard. */
const MEANT: Readonly<Record<string, string>> = {
  acre: 'us_acre" or "uk_acre',
  ac: 'us_acre" or "uk_acre',
  lb: "lbm",
  lbs: "lbm",
  oz: "ozm",
  t: 'Mg" (1000 kg) or "ton" (2000 lb)',
  tonne: "Mg",
  "°C": "C",
  "°F": "F",
  "m²": "m2",
}

/** A number in one unit as a number in another of the same group; the case of letters in a unit counts. */
export function convert(given: number, from: string, into: string): number | Refusal {
  const [source, target] = [unitOf(from), unitOf(into)]
  if (!source) return noUnit(from)
  if (!target) return noUnit(into)
  if (source.group !== target.group)
    return wrongKind(`"${from}" is a unit of ${source.group} and "${into}" one of ${target.group}`)
  if (source === target || from === into) return given
  return ((given + (source.zero ?? 0)) * source.size) / target.size - (target.zero ?? 0)
}

/** A unit without a prefix goes before one with: "ha" is the hectare. */
function unitOf(symbol: string): Unit | undefined {
  const plain = UNITS.get(symbol)
  if (plain) return plain
  for (const [prefix, exponent] of Object.entries(PREFIXES)) {
    const unit = symbol.startsWith(prefix) ? UNITS.get(symbol.slice(prefix.length)) : undefined
    if (unit?.power) return {...unit, size: unit.size * 10 ** (exponent * unit.power)}
  }
  return undefined
}

const noUnit = (symbol: string) =>
  wrongKind(
    MEANT[symbol]
      ? `There is no unit "${symbol}": write "${MEANT[symbol]}${MEANT[symbol].endsWith(")") ? "" : '"'}`
      : `There is no unit "${symbol}" of area, length, mass or temperature`,
  )

export const CONVERT = defineStandard({
  name: "CONVERT",
  section: "6.16.18",
  summary: "A number in one unit as a number in another",
  about:
    'Area: "ha", "us_acre", "uk_acre" (international), "m2", "ft2", "yd2", "mi2". Length: "m", "in", "ft", "yd", "mi". ' +
    'Mass: "g", "lbm" (pound), "ozm" (ounce), "cwt" (100 lb), "ton" (2000 lb), "uk_ton", "stone". Temperature: "C", "F", ' +
    '"K". Prefixes go before metric ones: "kg", "cm", "Mg" is 1000 kg. Large and small letters differ. Of the groups of ' +
    "the standard only these four are here.",
  parameters: {
    number: number("The number"),
    from: text("Unit it is in", "a unit in quotes"),
    into: text("Unit wanted", "a unit in quotes"),
  },
  returns: {label: "Number in the unit wanted", unit: "number"},
  refuses: ["units of different kinds"],
  example: {formula: '=CONVERT(1,"lbm","g")', gives: 453.59237},
  calculate: ({number: given, from, into}) => convert(given, from, into),
})
