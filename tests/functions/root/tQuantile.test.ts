import {describe, expect, it} from "vitest"
import {normalQuantile} from "../../../functions/root/normalQuantile"
import {tQuantile} from "../../../functions/root/tQuantile"
import {cell} from "../cell"

// NIST/SEMATECH, e-Handbook of Statistical Methods, 1.3.6.7.2: upper critical values of Student's t, printed to 3
// decimals. Columns are the probability of exceeding the value, so the two-sided confidence is 1 less twice that.
const exceeding = [0.1, 0.05, 0.025, 0.01, 0.005]
const nist: Record<number, number[]> = {
  1: [3.078, 6.314, 12.706, 31.821, 63.657],
  2: [1.886, 2.92, 4.303, 6.965, 9.925],
  3: [1.638, 2.353, 3.182, 4.541, 5.841],
  4: [1.533, 2.132, 2.776, 3.747, 4.604],
  5: [1.476, 2.015, 2.571, 3.365, 4.032],
  9: [1.383, 1.833, 2.262, 2.821, 3.25],
  10: [1.372, 1.812, 2.228, 2.764, 3.169],
  19: [1.328, 1.729, 2.093, 2.539, 2.861],
  20: [1.325, 1.725, 2.086, 2.528, 2.845],
  30: [1.31, 1.697, 2.042, 2.457, 2.75],
  60: [1.296, 1.671, 2, 2.39, 2.66],
  100: [1.29, 1.66, 1.984, 2.364, 2.626],
}
// Taylor, B.N., Kuyatt, C.E. (1994). NIST Technical Note 1297, Table B.1: t for the central 90, 95 and 99 %.
const technicalNote: Record<number, number[]> = {
  7: [1.89, 2.36, 3.5],
  15: [1.75, 2.13, 2.95],
  25: [1.71, 2.06, 2.79],
  45: [1.68, 2.01, 2.69],
}
const degrees = [1, 2, 3, 4, 5, 8, 9, 19, 30, 101, 1000]
const confidences = [0.01, 0.5, 0.8, 0.95, 0.99, 0.9999]
const each = degrees.flatMap((df) => confidences.map((confidence) => ({df, confidence})))

describe("tQuantile", () => {
  it("gives the printed values of the e-Handbook", () => {
    const cells = Object.entries(nist).flatMap(([df, row]) =>
      row.map((printed, i) => Math.abs(tQuantile(1 - 2 * exceeding[i]!, Number(df)) - printed)),
    )
    expect(cells).toHaveLength(60)
    expect(Math.max(...cells)).toBeLessThanOrEqual(0.0005)
  })
  it("gives the printed values of Technical Note 1297", () => {
    const cells = Object.entries(technicalNote).flatMap(([df, row]) =>
      row.map((printed, i) => Math.abs(tQuantile([0.9, 0.95, 0.99][i]!, Number(df)) - printed)),
    )
    expect(cells).toHaveLength(12)
    expect(Math.max(...cells)).toBeLessThanOrEqual(0.005)
  })
  it.each(confidences)("meets the closed forms for 1, 2 and 4 degrees of freedom at %s", (confidence) => {
    // 1: the Cauchy distribution. 2: share = t/√(2 + t²). 4: a cubic, solved with the cosine of a third of an angle.
    const a = Math.sqrt((1 - confidence) * (1 + confidence))
    const forms = {
      1: Math.tan((Math.PI * confidence) / 2),
      2: confidence * Math.sqrt(2 / (1 - confidence ** 2)),
      4: 2 * Math.sqrt(Math.cos(Math.acos(a) / 3) / a - 1),
    }
    for (const [df, form] of Object.entries(forms))
      expect(Math.abs(tQuantile(confidence, Number(df)) / form - 1)).toBeLessThan(1e-11)
  })
  it("encloses the confidence, by Simpson's rule on the distribution itself", () => {
    // With x = √df·tan θ the density of Student's t is in proportion to cos^(df-1) θ.
    const area = (to: number, df: number) => {
      const panels = 4000
      let sum = 0
      for (let i = 0; i <= panels; i++)
        sum += (i === 0 || i === panels ? 1 : i % 2 ? 4 : 2) * Math.cos((to * i) / panels) ** (df - 1)
      return (sum * to) / panels / 3
    }
    for (const {df, confidence} of each) {
      const θ = Math.atan(tQuantile(confidence, df) / Math.sqrt(df))
      expect(Math.abs(area(θ, df) / area(Math.PI / 2, df) - confidence)).toBeLessThan(1e-11)
    }
    expect(each).toHaveLength(66)
  })
  it("agrees with the engine's own T.INV, which is good to some 1e-7", () => {
    for (const {df, confidence} of each) {
      const theirs = cell(`=T.INV(${(1 + confidence) / 2},${df})`) as number
      expect(Math.abs(tQuantile(confidence, df) / theirs - 1)).toBeLessThan(1e-7)
    }
  })
  it("rises with confidence, falls with the degrees of freedom, and nears the normal", () => {
    for (const {df, confidence} of each) {
      const t = tQuantile(confidence, df)
      expect(tQuantile(confidence + 0.00005, df)).toBeGreaterThan(t)
      expect(tQuantile(confidence, df + 1)).toBeLessThan(t)
      expect(t).toBeGreaterThan(normalQuantile(confidence))
    }
    // The gap to the normal is (z³ + z)/(4·df) at first: 2.4e-5 at 0.95 and 100 000.
    expect(tQuantile(0.95, 100000) - normalQuantile(0.95)).toBeCloseTo((1.96 ** 3 + 1.96) / 4e5, 7)
  })
})
