import {describe, expect, it} from "vitest"
import {normalShare} from "../../functions/normalShare"
import {normalAt} from "../../src/studies/normalAt"

describe("the z below which the normal distribution has a share", () => {
  it.each([
    // Wichura, M.J. (1988). Algorithm AS 241. Applied Statistics 37, 477-484, table of checks (from memory).
    [0.25, -0.6744897501960817],
    [0.001, -3.090232306167814],
    [1e-20, -9.26234008979841],
  ])("%s is at %s", (share, z) => {
    expect(Math.abs(normalAt(share) - z)).toBeLessThan(1e-12)
  })
  it("is 0 at a half and mirrors itself about it", () => {
    expect(normalAt(0.5)).toBe(0)
    for (const share of [0.4, 0.1, 0.05, 1e-3, 2 ** -33])
      expect(normalAt(1 - share)).toBeCloseTo(-normalAt(share), 6)
  })
  it("undoes the share on each of its three stretches", () => {
    for (let z = -6; z <= 6; z += 0.25) expect(normalAt(normalShare(z))).toBeCloseTo(z, 5)
    for (let z = -3; z <= 3; z += 0.25) expect(normalAt(normalShare(z))).toBeCloseTo(z, 12)
  })
})
