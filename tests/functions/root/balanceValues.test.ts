import {describe, expect, it} from "vitest"
import {cropValues} from "../../../functions/cropValues"
import {balanceDefaults, balanceNames, balanceValues} from "../../../functions/root/balanceValues"
import {isRefusal} from "../../../functions/refusal"

describe("the crop values of the daily balance", () => {
  it("are the defaults where none is given", () => {
    expect(balanceValues.read([[null, null]])).toEqual(balanceDefaults)
    expect(balanceValues.absent!.value).toEqual(balanceDefaults)
    expect(Object.keys(balanceDefaults)).toEqual([...balanceNames])
    for (const name of balanceNames) expect(balanceDefaults[name]).toBe(cropValues[name].value)
  })
  it("are those given, the others as they were", () => {
    expect(balanceValues.read([["Fern_end", 260]])).toEqual({...balanceDefaults, Fern_end: 260})
  })

  const pairs = [
    ["Potential_zero", "Potential_full", 300],
    ["Growth_base", "Growth_reference", 12],
    ["Scarce_low", "Scarce_high", 200],
    ["Fern_low", "Fern_high", 100],
    ["Leaf_cold", "Leaf_warm", 15],
    ["Leaf_warm", "Leaf_hot", 28],
    ["Leaf_hot", "Leaf_stop", 38],
  ] as const
  it.each(pairs)("refuse %s at %s or above, and take it below", (lower, higher, at) => {
    const read = (low: number, high: number) =>
      balanceValues.read([
        [lower, low],
        [higher, high],
      ])
    expect(read(at, at)).toEqual({
      refused: `Crop value ${lower} (${at}) must be below ${higher} (${at})`,
      code: "#NUM!",
    })
    expect(read(at + 0.5, at)).toMatchObject({code: "#NUM!"})
    expect(isRefusal(read(at - 0.5, at))).toBe(false)
  })
  it("refuse one that contradicts a default", () => {
    expect(balanceValues.read([["Growth_base", 15]])).toEqual({
      refused: "Crop value Growth_base (15) must be below Growth_reference (15)",
      code: "#NUM!",
    })
  })
  it("refuse more of the day's sugar for fern and root than there is", () => {
    const read = (fern: number, root: number) =>
      balanceValues.read([
        ["To_fern", fern],
        ["To_root", root],
      ])
    expect(read(0.8, 0.3)).toEqual({
      refused: "Crop values To_fern (0.8) and To_root (0.3) share the day's sugar: together at most 1",
      code: "#NUM!",
    })
    expect(isRefusal(read(0.75, 0.25))).toBe(false)
    expect(isRefusal(read(1, 0))).toBe(false)
  })
  it("take a year from January or July and no other", () => {
    for (const month of [1, 7]) expect(isRefusal(balanceValues.read([["Year_start", month]]))).toBe(false)
    expect(balanceValues.read([["Year_start", 3]])).toEqual({
      refused: "Crop value Year_start must be 1 (January) or 7 (July), not 3",
      code: "#NUM!",
    })
    expect(balanceValues.read([["Year_start", 1.5]])).toMatchObject({code: "#NUM!"})
  })
  it("refuse what no crop values are", () => {
    expect(balanceValues.read(7)).toEqual({
      refused: "Crop values must be a range of two columns, name and number",
      code: "#VALUE!",
    })
    expect(balanceValues.read([["Fern_ends", 260]])).toEqual({
      refused: "There is no crop value named Fern_ends",
      code: "#VALUE!",
    })
  })
})
