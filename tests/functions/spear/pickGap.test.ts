import {describe, expect, it} from "vitest"
import {daysToLength} from "../../../functions/spear/daysToLength"
import {pickGap} from "../../../functions/spear/pickGap"
import {cell} from "../cell"

const values = {Stretch_rate: 0.05, Stretch_base: 5, Cut_shortest: 16, Cut_longest: 30}

describe("pickGap", () => {
  it.each([
    // ln(30/16) = 0.62861; growth 0.25, 0.5 and 0.75 a day
    {temperature: 10, days: 2.5144},
    {temperature: 15, days: 1.2572},
    {temperature: 20, days: 0.8381},
  ])("is $days days at $temperature °C", ({temperature, days}) => {
    expect(pickGap(temperature, values)).toBeCloseTo(days, 4)
  })
  // Common practice: every 3 days at 8 to 12 °C, every 2 at 12 to 16 °C, daily from about 17.6 °C.
  it.each([
    [10, 3],
    [12, 2],
    [15.9, 2],
    [17.6, 1],
    [22, 1],
  ])("rounded up to whole days at %s °C it is what growers do: %s", (temperature, days) => {
    expect(Math.ceil(pickGap(temperature, values) as number)).toBe(days)
  })
  it("is the time from the shortest length to the longest", () => {
    expect(pickGap(13, values)).toBe(daysToLength(13, 30, 16, values))
  })
  it("is never at the base or below", () => {
    expect(pickGap(5, values)).toEqual({
      refused: "Never: at 5 °C a spear does not grow, its base is 5 °C",
      code: "#N/A",
    })
  })
  it.each([16, 15])("refuses a longest length of %s cm where the shortest is 16", (Cut_longest) => {
    expect(pickGap(15, {...values, Cut_longest})).toEqual({
      refused: `Cut_longest (${Cut_longest} cm) must be above Cut_shortest (16 cm)`,
      code: "#NUM!",
    })
  })
})

describe("SPEAR.PICK_GAP", () => {
  it("follows the crop values given", () => {
    // Late in the season tips branch at 21 cm (Krarup & Contreras 2002, abstract): ln(21/16) / 0.5 = 0.5439.
    expect(cell("=SPEAR.PICK_GAP(15,T!A1:B1)", [["Cut_longest", 21]])).toBeCloseTo(0.5439, 4)
    expect(cell("=SPEAR.PICK_GAP(15,T!A1:B1)", [["Cut_longest", 12]])).toMatchObject({code: "#NUM!"})
  })
})
