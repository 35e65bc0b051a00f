import {describe, expect, it} from "vitest"
import {dayOf} from "../../../functions/calendar"
import {SEASON_CROP_ON} from "../../../functions/season/cropOn"
import {SEASON_PICK_ON} from "../../../functions/season/pickOn"
import {ask, generic, number} from "../root/generic"

const OPEN = dayOf("2026-05-01")!
/** One planting of 1000 kg over so many days, evenly, in a year of one temperature. */
const evenly = (temperature: number, length: number) => {
  const climate = Array.from({length: 365}, () => [temperature, temperature, 15])
  return Array.from({length}, (_, i) =>
    number(SEASON_PICK_ON, OPEN + i, [[OPEN]], [[OPEN + length - 1]], [[1000]], [[null]], [[null]], climate),
  )
}

describe("the pickings of a season", () => {
  // The days between pickings of the handbook's table, as methods has them: 3 at 10 °C, 2 at 12 to 16, 1 from 17.6.
  it.each([
    [10, [1, 0, 0, 3, 0, 0, 3, 0, 0, 3]],
    [14, [1, 0, 2, 0, 2, 0, 2, 0, 2, 1]],
    [18, [1, 1, 1, 1, 1, 1, 1, 1, 1, 1]],
  ])("at %d °C fall on their days and bring what has grown since the last", (temperature, hundreds) =>
    expect(evenly(temperature, 10).map((kg) => Math.round(kg) / 100)).toEqual(hundreds),
  )

  it("bring the whole crop, whatever is left on the last day", () =>
    expect(evenly(10, 12).reduce((sum, kg) => sum + kg, 0)).toBeCloseTo(1000, 9))

  it("wait on days too cold to grow", () => expect(evenly(3, 4).map(Math.round)).toEqual([0, 0, 0, 1000]))

  it("bring in all the crop of the days, by the balance too", () => {
    const close = OPEN + 41
    const ranges = [[[OPEN]], [[close]], [[8000]], [[6000]], [[6400]], generic] as const
    const sum = (of: typeof SEASON_CROP_ON) =>
      Array.from({length: 42}, (_, i) => number(of, OPEN + i, ...(ranges as never as []))).reduce(
        (a, b) => a + b,
      )
    expect(sum(SEASON_PICK_ON)).toBeCloseTo(sum(SEASON_CROP_ON), 6)
  })
})

describe("a wait after spraying", () => {
  const climate = Array.from({length: 365}, () => [14, 14, 15]) // two days between pickings
  /** One planting of 1000 kg over ten days, evenly: 100 kg a day, sprayed on one of them and picked again from another. */
  const waiting = (sprayed: number, again: number, name = "Sand Piece") =>
    Array.from({length: 10}, (_, i) =>
      Math.round(
        number(
          SEASON_PICK_ON,
          ...([OPEN + i, [[OPEN]], [[OPEN + 9]], [[1000]], [[null]], [[null]], climate, null] as never as []),
          [["Sand Piece"]],
          [[name], [null]],
          [[OPEN + sprayed], [null]],
          [[OPEN + again], [null]],
        ),
      ),
    )

  it("has no picking from its day on; the first day allowed has what came up in one gap, the rest is lost", () =>
    // Picked on 0, 2; 4 is missed. On 7 the spears of days 6 and 7 sell, those of 3 to 5 are too long.
    expect(waiting(3, 7)).toEqual([100, 0, 200, 0, 0, 0, 0, 200, 0, 200]))

  it("changes nothing where no picking was missed, nor for another planting", () => {
    expect(waiting(3, 4)).toEqual([100, 0, 200, 0, 200, 0, 200, 0, 200, 100])
    expect(waiting(3, 7, "Long Acre")).toEqual(waiting(3, 4))
  })

  it("puts off the opening, and loses what stands when cutting ends in it", () => {
    expect(waiting(-5, 1)).toEqual([0, 200, 0, 200, 0, 200, 0, 200, 0, 200])
    expect(waiting(7, 20)).toEqual([100, 0, 200, 0, 200, 0, 200, 0, 0, 0])
  })

  it("refuses waits that are not as many as their plantings", () =>
    expect(
      ask(
        SEASON_PICK_ON,
        ...([OPEN, [[OPEN]], [[OPEN]], [[1]], [[null]], [[null]], generic, null] as never as []),
        [["Sand Piece"]],
        [["Sand Piece"]],
        [[OPEN], [OPEN]],
        [[OPEN]],
      ),
    ).toMatchObject({refused: "The ranges of the waits have 1, 2, 1 cells: sizes differ"}))
})
