import {describe, expect, it} from "vitest"
import {normalQuantile} from "../../../functions/root/normalQuantile"
import {cell} from "../cell"

// NIST/SEMATECH, e-Handbook of Statistical Methods, 1.3.6.7.2, last row (infinite degrees of freedom).
const nist = [
  {confidence: 0.8, printed: 1.282},
  {confidence: 0.9, printed: 1.645},
  {confidence: 0.95, printed: 1.96},
  {confidence: 0.98, printed: 2.326},
  {confidence: 0.99, printed: 2.576},
]
// SciPy, scipy.stats.norm.ppf of 0.75, 0.8, 0.975 and 0.999.
const scipy = [
  {confidence: 0.5, z: 0.6744897501960817},
  {confidence: 0.6, z: 0.8416212335729143},
  {confidence: 0.95, z: 1.959963984540054},
  {confidence: 0.998, z: 3.090232306167813},
]

describe("normalQuantile", () => {
  it.each(nist)("is $printed at $confidence as printed", ({confidence, printed}) => {
    expect(Math.abs(normalQuantile(confidence) - printed)).toBeLessThanOrEqual(0.0005)
  })
  it.each(scipy)("is $z at $confidence", ({confidence, z}) => {
    expect(Math.abs(normalQuantile(confidence) - z)).toBeLessThan(1e-12)
  })
  it("agrees with the engine's own NORM.S.INV", () => {
    for (const confidence of [0.001, 0.1, 0.5, 0.7, 0.9, 0.99, 0.9999]) {
      const theirs = cell(`=NORM.S.INV(${(1 + confidence) / 2})`) as number
      expect(Math.abs(normalQuantile(confidence) - theirs)).toBeLessThan(1e-11)
    }
  })
})
