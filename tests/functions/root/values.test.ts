import {describe, expect, it} from "vitest"
import type {CropValue} from "../../../functions/cropValue"
import {cropValues} from "../../../functions/cropValues"
import {fernValues} from "../../../functions/fern/values"
import {isWithin} from "../../../functions/quantity"
import {rootValues} from "../../../functions/root/values"
import {spearValues} from "../../../functions/spear/values"

const all: [string, CropValue][] = Object.entries(cropValues)

describe("cropValues", () => {
  it("has every value of spear, root and fern under a name of its own", () => {
    const parts = [spearValues, rootValues, fernValues].map((values) => Object.keys(values).length)
    expect(parts).toEqual([7, 23, 15])
    expect(all).toHaveLength(7 + 23 + 15)
  })
  it.each(all)("holds %s within its limits, named and explained", (name, {value, label, limits, from}) => {
    expect(name).toMatch(/^[A-Z][a-z]+(_[a-z0-9]+)*$/)
    expect(isWithin(value, limits)).toBe(true)
    expect(label).toMatch(/^[A-Z].{5,}[^.]$/)
    expect(from).toMatch(/^.{10,}[^.]$/)
  })
  it.each(all)("leaves room to vary %s by a fifth either way", (_, {value, limits}) => {
    if (limits.whole || value === 0) return
    expect(isWithin(value * 0.8, limits)).toBe(true)
    expect(isWithin(value * 1.2, limits)).toBe(true)
  })
  it("admits the values of a white crop", () => {
    for (const [name, value] of [
      ["Spear_dry", 0.065],
      ["Stub_share", 0.25],
      ["Ridge_gain", 3],
    ] as const)
      expect(isWithin(value, rootValues[name].limits)).toBe(true)
  })
  it("keeps pairs in order that a curve runs between", () => {
    const {Potential_zero, Potential_full, Scarce_low, Scarce_high, Growth_base, Growth_reference} =
      rootValues
    const {Fern_low, Fern_high, Leaf_cold, Leaf_warm, Leaf_hot, Leaf_stop} = fernValues
    for (const rising of [
      [Potential_zero, Potential_full],
      [Scarce_low, Scarce_high],
      [Growth_base, Growth_reference],
      [Fern_low, Fern_high],
      [Leaf_cold, Leaf_warm, Leaf_hot, Leaf_stop],
    ])
      for (let i = 1; i < rising.length; i++) expect(rising[i]!.value).toBeGreaterThan(rising[i - 1]!.value)
  })
  it("loses 10 % of the root in a year, as its turnover says", () => {
    // (1 - 0.00028)^365 = 0.9028
    expect(1 - (1 - rootValues.Root_turnover.value) ** 365).toBeCloseTo(0.1, 2)
  })
})
