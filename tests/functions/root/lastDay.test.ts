import {describe, expect, it} from "vitest"
import {lastDayThat} from "../../../functions/root/lastDay"

describe("lastDayThat", () => {
  it("finds the last day that holds, wherever in the week it lies", () => {
    for (let last = 100; last <= 130; last++) expect(lastDayThat(100, 150, (day) => day <= last)).toBe(last)
  })
  it("is the last day asked about where all hold, and the day before the first where none does", () => {
    for (const last of [100, 106, 107, 108, 150]) expect(lastDayThat(100, last, () => true)).toBe(last)
    expect(lastDayThat(100, 150, () => false)).toBe(99)
  })
  it("stops at the first stretch of a week that does not hold, even if later days do", () => {
    for (let bad = 101; bad <= 140; bad++)
      expect(lastDayThat(100, 150, (day) => day < bad || day > bad + 6)).toBe(bad - 1)
  })
  it("asks of no day outside, and of few inside", () => {
    const asked: number[] = []
    const holds = (day: number) => {
      asked.push(day)
      return day <= 265
    }
    expect(lastDayThat(100, 300, holds)).toBe(265)
    expect(Math.min(...asked)).toBe(100)
    expect(Math.max(...asked)).toBeLessThanOrEqual(300)
    expect(asked.length).toBeLessThanOrEqual(Math.ceil(201 / 7) + 1 + 3) // weeks, then halves of one week
  })
  it("asks of none where there is none", () => {
    const never = () => {
      throw new Error("asked")
    }
    expect(lastDayThat(100, 99, never)).toBe(99)
  })
})
