import {describe, expect, it} from "vitest"
import {plants} from "../../../functions/stand/plants"
import {cell} from "../cell"

const FOOT = 0.3048 // m
const ACRE = 0.40468564224 // ha

describe("plants", () => {
  it("counts one plant to each rectangle of the two gaps", () => {
    expect(plants(1, 1, 1)).toBe(10_000)
    // 10 000 / 0.45 = 22 222.2; 10 000 / (2.5·0.2) = 20 000
    expect(plants(1.5, 0.3, 1)).toBeCloseTo(22_222.2, 1)
    expect(plants(2.5, 0.2, 1)).toBeCloseTo(20_000, 6)
  })
  it("agrees with a crown nursery's 15 to 16 thousand an acre at 4 ft by 8 to 9 in", () => {
    // Sandy Shore Farms, Ontario, planting advice. The middle, 8.5 in: 43 560 / (4·8.5/12) = 15 374 an acre.
    const anAcre = plants(4 * FOOT, (8.5 / 12) * FOOT, 1) * ACRE
    expect(anAcre).toBeCloseTo(15_374.1, 1)
    expect(anAcre).toBeGreaterThan(15_000)
    expect(anAcre).toBeLessThan(16_000)
  })
  it("agrees with the spacings of two other states", () => {
    // New Mexico State University: 5 ft by 12 in; Feibert, E.B.G. and others (1997), Malheur Experiment Station, Oregon
    // State University: 5 ft by 8 in. 43 560 / 5 = 8 712 an acre; 43 560 / (5·8/12) = 13 068.
    expect(plants(5 * FOOT, FOOT, 1) * ACRE).toBeCloseTo(8712, 1)
    expect(plants(5 * FOOT, (8 / 12) * FOOT, 1) * ACRE).toBeCloseTo(13_068, 1)
  })
  it("counts the metres of row on a hectare at a plant a metre", () => {
    // Dubon, G. (2022), Asparagus World: 5 000 m in rows of 2 m; 3 300 m is printed for 3.3 m, where 10 000 / 3.3 = 3 030.
    expect(plants(2, 1, 1)).toBe(5000)
    expect(plants(3.3, 1, 1)).toBeCloseTo(3030.3, 1)
  })
  it("takes the share alive, and is not rounded", () => {
    // 10 000 / 0.495·0.92 = 18 585.858...
    expect(plants(1.5, 0.33, 0.92)).toBeCloseTo(9200 / 0.495, 6)
  })
})

describe("STAND.PLANTS", () => {
  it("takes all plants as alive where no share is given, and a share as counted by STAND.ALIVE", () => {
    expect(cell("=STAND.PLANTS(2.5,0.2,T!A1)")).toBeCloseTo(20_000, 6)
    // 55 found where 10/0.2 = 50 were set: 1.1 times 20 000
    expect(cell("=STAND.PLANTS(2.5,0.2,STAND.ALIVE(55,10,0.2))")).toBeCloseTo(22_000, 6)
  })
  it.each([
    ["0,0.33", "Gap between rows must be above 0 and up to 20 m, not 0 m"],
    ["150,33", "Gap between rows must be above 0 and up to 20 m, not 150 m"],
    ["1.5,33", "Gap between plants in the row must be above 0 and up to 10 m, not 33 m"],
    ["1.5,0.33,92", "Share of plants alive must be from 0 to 1.2, not 92"],
  ])("refuses %s", (given, reason) => {
    expect(cell(`=STAND.PLANTS(${given})`)).toEqual({code: "#NUM!", reason})
  })
})
