import {readFileSync} from "node:fs"
import {describe, expect, it} from "vitest"

const css = readFileSync(new URL("../../src/views/tokens.css", import.meta.url), "utf8")

/** The tokens of the first rule that begins with a selector. */
function tokensOf(selector: string): Readonly<Record<string, string>> {
  const from = css.indexOf(`${selector} {`)
  const block = css.slice(from, css.indexOf("}", from))
  return Object.fromEntries(
    [...block.matchAll(/--([\w-]+): (#[0-9a-f]{6});/g)].map(([, name, hex]) => [name!, hex!]),
  )
}

type Three = readonly [number, number, number]

/** Linear light of sRGB (IEC 61966-2-1). */
const linear = (hex: string): Three =>
  [1, 3, 5].map((i) => {
    const c = parseInt(hex.slice(i, i + 2), 16) / 255
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
  }) as never

/** Relative luminance and contrast as WCAG 2.2 defines them. */
const luminance = ([r, g, b]: Three) => 0.2126 * r + 0.7152 * g + 0.0722 * b
function contrast(one: string, other: string) {
  const [a, b] = [luminance(linear(one)), luminance(linear(other))].sort((x, y) => y - x) as [number, number]
  return (a + 0.05) / (b + 0.05)
}

const times = (m: readonly Three[], v: Three): Three =>
  m.map((row) => row[0] * v[0] + row[1] * v[1] + row[2] * v[2]) as never

/** Full colour blindness after Machado, Oliveira & Fernandes (2009), IEEE TVCG 15(6); from memory. */
const sight: Record<string, readonly Three[]> = {
  normal: [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protan: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deutan: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
  tritan: [
    [1.255528, -0.076749, -0.178779],
    [-0.078411, 0.930809, 0.147602],
    [0.004733, 0.691367, 0.3039],
  ],
}

/** CIE L*a*b* for D65 of linear sRGB. */
function lab(rgb: Three): Three {
  const clipped = rgb.map((c) => Math.max(0, Math.min(1, c))) as never as Three
  const xyz = times(
    [
      [0.4124564, 0.3575761, 0.1804375],
      [0.2126729, 0.7151522, 0.072175],
      [0.0193339, 0.119192, 0.9503041],
    ],
    clipped,
  )
  const f = (t: number) => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116)
  const [x, y, z] = [f(xyz[0] / 0.95047), f(xyz[1]), f(xyz[2] / 1.08883)]
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)]
}

/** CIEDE2000 (Sharma, Wu & Dalal, 2005, Color Research and Application 30(1), equations 2 to 22). */
function deltaE([l1, a1, b1]: Three, [l2, a2, b2]: Three) {
  const rad = Math.PI / 180
  const mean = (Math.hypot(a1, b1) + Math.hypot(a2, b2)) / 2
  const g = 0.5 * (1 - Math.sqrt(mean ** 7 / (mean ** 7 + 25 ** 7)))
  const [p1, p2] = [(1 + g) * a1, (1 + g) * a2]
  const [c1, c2] = [Math.hypot(p1, b1), Math.hypot(p2, b2)]
  const hue = (a: number, b: number) => (a === 0 && b === 0 ? 0 : (Math.atan2(b, a) / rad + 360) % 360)
  const [h1, h2] = [hue(p1, b1), hue(p2, b2)]
  const turn =
    c1 * c2 === 0 ? 0 : Math.abs(h2 - h1) <= 180 ? h2 - h1 : h2 > h1 ? h2 - h1 - 360 : h2 - h1 + 360
  const dh = 2 * Math.sqrt(c1 * c2) * Math.sin((turn / 2) * rad)
  const [l, c] = [(l1 + l2) / 2, (c1 + c2) / 2]
  const sum = h1 + h2
  const h =
    c1 * c2 === 0 ? sum : Math.abs(h1 - h2) <= 180 ? sum / 2 : sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2
  const t =
    1 -
    0.17 * Math.cos((h - 30) * rad) +
    0.24 * Math.cos(2 * h * rad) +
    0.32 * Math.cos((3 * h + 6) * rad) -
    0.2 * Math.cos((4 * h - 63) * rad)
  const sl = 1 + (0.015 * (l - 50) ** 2) / Math.sqrt(20 + (l - 50) ** 2)
  const [sc, sh] = [1 + 0.045 * c, 1 + 0.015 * c * t]
  const rt =
    -2 * Math.sqrt(c ** 7 / (c ** 7 + 25 ** 7)) * Math.sin(60 * Math.exp(-(((h - 275) / 25) ** 2)) * rad)
  const [dl, dc] = [(l2 - l1) / sl, (c2 - c1) / sc]
  return Math.sqrt(dl ** 2 + dc ** 2 + (dh / sh) ** 2 + rt * dc * (dh / sh))
}

it("measures colours as the test data of CIEDE2000 does", () => {
  // Sharma, Wu & Dalal (2005), table 1, pairs 1, 7 and 17, printed to four decimals; from memory.
  expect(deltaE([50, 2.6772, -79.7751], [50, 0, -82.7485])).toBeCloseTo(2.0425, 4)
  expect(deltaE([50, 0, 0], [50, -1, 2])).toBeCloseTo(2.3669, 4)
  expect(deltaE([50, 2.5, 0], [73, 25, -18])).toBeCloseTo(27.1492, 4)
})

const FIVE = ["ink", "river", "pine", "straw", "soil"]
const grounds = {light: tokensOf(":root"), dark: tokensOf(':root[data-ground="dark"]')}

describe.each(Object.entries(grounds))("the colours on the %s ground", (_, tokens) => {
  it("stand off the ground by 3 at least, as marks and edges", () => {
    for (const name of [...FIVE, "control", "band-edge"])
      expect(contrast(tokens[name]!, tokens["ground"]!), name).toBeGreaterThanOrEqual(3)
  })
  it("stand off the ground by 4.5 at least, as text", () => {
    for (const name of ["text", "quiet"])
      expect(contrast(tokens[name]!, tokens["ground"]!), name).toBeGreaterThanOrEqual(4.5)
    for (const name of ["ground", "sheet", "select", "over", "press"])
      expect(contrast(tokens["text"]!, tokens[name]!), name).toBeGreaterThanOrEqual(4.5)
  })
  it.each(Object.keys(sight))("are told apart by %s sight", (kind) => {
    const seen = FIVE.map((name) => lab(times(sight[kind]!, linear(tokens[name]!))))
    const apart = seen.flatMap((one, i) => seen.slice(i + 1).map((other) => deltaE(one, other)))
    expect(Math.min(...apart)).toBeGreaterThanOrEqual(14)
  })
})

it("keep the order of their lightness, for a grey printer", () => {
  const light = (name: string) => lab(linear(grounds.light[name]!))[0]
  expect(["soil", "ink", "pine", "straw", "river"].map(light)).toEqual(
    ["soil", "ink", "pine", "straw", "river"].map(light).toSorted((a, b) => a - b),
  )
})

it("are all set for paper, so that none of a dark ground is left on it", () => {
  const paper = css.slice(css.indexOf("@media print"))
  const isOnPaper = (name: string) => new RegExp(`--${name}:`).test(paper)
  // `press` is only under a finger.
  expect(Object.keys(grounds.dark).filter((name) => !isOnPaper(name))).toEqual(["press"])
})
