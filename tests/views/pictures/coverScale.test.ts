import {describe, expect, it} from "vitest"
import {coverScale} from "../../../src/views/pictures/coverScale"

const always = {least: 0, most: 1.2}
const years = (...ends: readonly (readonly [least: number, most: number])[]) =>
  ends.map(([least, most]) => ({least, most}))

describe("the scale of covers", () => {
  it("holds everything where no year stands far out, and 0 and the wanted cover", () => {
    expect(coverScale(years([0.9, 1.1], [0.8, 1], [0.9, 1]), always)).toEqual({...always, isCut: false})
    expect(coverScale(years([-0.2, 1.9], [-0.1, 2.1], [-0.3, 2], [0, 2.2], [-0.2, 1.8]), always)).toEqual({
      least: -0.3,
      most: 2.2,
      isCut: false,
    })
  })

  it("leaves out what lies beyond the inner fences, each end by itself", () => {
    // Highs 2, 2.2, 2.4, 2.6, 9: quartiles 2.2 and 2.6, fences 1.6 and 3.2. Lows -0.4, -0.3, -0.2, -0.1, -3: quartiles -0.4 and
    // -0.2, fences -0.7 and 0.1.
    const ends = years([-0.4, 2], [-0.3, 2.2], [-0.2, 2.4], [-0.1, 2.6], [-3, 9])
    expect(coverScale(ends, always)).toEqual({least: -0.4, most: 2.6, isCut: true})
    expect(coverScale([...ends.slice(0, 4), {least: -0.2, most: 9}], always)).toEqual({
      least: -0.4,
      most: 2.6,
      isCut: true,
    })
  })

  it("takes the fences at 1.5 times the quartiles' distance", () => {
    // Highs 0.4, 0.5, 1, 1.5 and one more: quartiles 0.5 and 1.5, so that the fence lies at 3.
    const ends = (last: number) => years([0, 0.4], [0, 0.5], [0, 1], [0, 1.5], [0, last])
    expect(coverScale(ends(2.9), always)).toEqual({least: 0, most: 2.9, isCut: false})
    expect(coverScale(ends(3.1), always)).toEqual({least: 0, most: 1.5, isCut: true})
  })

  it("is not cut for a year beyond the fences that hardly flattens the others, nor for fewer than five years", () => {
    const alike = years([0, 2], [0, 2], [0, 2], [0, 2], [0, 2.5])
    expect(coverScale(alike, always)).toEqual({least: 0, most: 2.5, isCut: false})
    expect(coverScale(years([0, 1], [0, 1], [0, 1], [0, 9]), always)).toEqual({
      least: 0,
      most: 9,
      isCut: false,
    })
  })

  it("stands without years", () => {
    expect(coverScale([], always)).toEqual({...always, isCut: false})
  })
})
